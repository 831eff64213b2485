import { PRINTED_CODE_SHARE, printedInks, printedType } from '../../../shared-types/tokens.ts'
import type { FaceName } from '../document/typeface.ts'

/** Inks of the printed page. The accent marks numbers of sections, findings and callouts, and nothing else. */
export const inks = printedInks

export interface TextStyle {
  readonly face: FaceName
  readonly sizePt: number
  readonly colour: string
}

const style = (face: FaceName, size: keyof typeof printedType, colour: string = inks.ink): TextStyle => ({
  face,
  sizePt: printedType[size] * (face === 'mono' ? PRINTED_CODE_SHARE : 1),
  colour,
})

/** Every style of the report. */
export const styles = {
  title: style('light', 'title'),
  subtitle: style('text', 'subtitle'),
  subtitleSoft: style('text', 'subtitle', inks.soft),
  section: style('light', 'section'),
  sectionNumber: style('light', 'section', inks.accent),
  text: style('text', 'text'),
  soft: style('text', 'text', inks.soft),
  strong: style('strong', 'text'),
  emphasis: style('italic', 'text'),
  reference: style('strong', 'text', inks.accent),
  mono: style('mono', 'text'),
  sideHead: style('strong', 'text'),
  sideNote: style('italic', 'sideNote', inks.soft),
  opinion: style('text', 'opinion'),
  opinionStrong: style('strong', 'opinion'),
  cell: style('text', 'table'),
  cellSoft: style('text', 'table', inks.soft),
  cellStrong: style('strong', 'table'),
  cellReference: style('strong', 'table', inks.accent),
  cellMono: style('mono', 'table'),
  tableHead: style('italic', 'table', inks.soft),
  caption: style('text', 'table'),
  captionStrong: style('strong', 'table'),
  running: style('text', 'running', inks.soft),
  runningInk: style('text', 'running'),
  lettering: style('text', 'lettering'),
  letteringStrong: style('strong', 'viewName'),
  ring: style('strong', 'ring', inks.accent),
} as const
