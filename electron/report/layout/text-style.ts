import type { FaceName } from '../document/typeface.ts'

/** Inks of the printed page. The accent marks numbers of sections, findings and callouts, and nothing else. */
export const inks = {
  ink: '#16191D',
  soft: '#4D5359',
  hair: '#8D9298',
  accent: '#005B7A',
  paper: '#FFFFFF',
} as const

export interface TextStyle {
  readonly face: FaceName
  readonly sizePt: number
  readonly colour: string
}

const style = (face: FaceName, sizePt: number, colour: string = inks.ink): TextStyle => ({ face, sizePt, colour })

/** Code is set a little smaller than the words around it, because its letters are wider. */
const MONO_SHARE = 0.91

/** Every style of the report: size in points; lines are 4 mm unless a block says otherwise. */
export const styles = {
  title: style('light', 34),
  subtitle: style('text', 13),
  subtitleSoft: style('text', 13, inks.soft),
  section: style('light', 20),
  sectionNumber: style('light', 20, inks.accent),
  text: style('text', 9),
  soft: style('text', 9, inks.soft),
  strong: style('strong', 9),
  emphasis: style('italic', 9),
  reference: style('strong', 9, inks.accent),
  mono: style('mono', 9 * MONO_SHARE),
  sideHead: style('strong', 9),
  sideNote: style('italic', 7.6, inks.soft),
  opinion: style('text', 11),
  opinionStrong: style('strong', 11),
  cell: style('text', 7.8),
  cellSoft: style('text', 7.8, inks.soft),
  cellStrong: style('strong', 7.8),
  cellReference: style('strong', 7.8, inks.accent),
  cellMono: style('mono', 7.8 * MONO_SHARE),
  tableHead: style('italic', 7.8, inks.soft),
  caption: style('text', 7.8),
  captionStrong: style('strong', 7.8),
  running: style('text', 7.4, inks.soft),
  runningInk: style('text', 7.4),
  lettering: style('text', 7),
  letteringStrong: style('strong', 7.4),
  ring: style('strong', 6.6, inks.accent),
} as const
