import type { PageCanvas } from '../document/page-canvas.ts'
import type { ReportDocument } from '../document/report-document.ts'
import type { ReportContent } from '../report-content.ts'
import { daysText } from '../wording/dates.ts'
import { breakLines, measure, type Rich, type TextLine } from './line-breaking.ts'
import { FIELD_WIDTH_MM, type PageGeometry } from './page-geometry.ts'
import { drawLine } from './text-block.ts'
import { styles } from './text-style.ts'

export interface RunningMatter {
  readonly lines: RunningLines
  /** Number and title of the section; empty on the title page. */
  readonly section: string
  readonly pages: number
}

/** What every page says alike, set once. */
export interface RunningLines {
  readonly name: TextLine
  readonly title: TextLine
  readonly relates: TextLine
}

const HEAD_BASELINE_MM = 14.2
const FOOT_FROM_BOTTOM_MM = 14.6
const SHORTEST_HEAD_MM = 34
const TITLE_MM = 40
/** Widest the name of the edition may run, and what keeps a line just as wide as its text from being broken. */
const MOST_NAME_MM = 100
const SLACK_MM = 0.5

/** "WM 26-0117-2, edition 2", or that it is a preview. */
export function editionName({ edition }: ReportContent): string {
  return edition.number === null
    ? `${edition.reportNumber}, preview, not issued`
    : `${edition.reportNumber}, edition ${edition.number}`
}

/** The sentence that bounds what the report speaks of. */
export function relatesOnly({ record }: ReportContent): string {
  const days = daysText(record.visits.map(({ beganAt }) => beganAt))
  return days === ''
    ? 'No examination is recorded. Not to be copied except in full.'
    : `Relates only to this car as seen on ${days}. Not to be copied except in full.`
}

/** Sets what the head and foot of every page say alike. */
export function runningLines(content: ReportContent): RunningLines {
  const nameWidth = Math.min(MOST_NAME_MM, measure(editionName(content), styles.running)) + SLACK_MM
  return {
    name: firstLine([{ text: editionName(content), style: styles.running }], nameWidth),
    title: firstLine([{ text: 'Originality and condition', style: styles.running }], TITLE_MM),
    relates: firstLine([{ text: relatesOnly(content), style: styles.running }], FIELD_WIDTH_MM - 28),
  }
}

const firstLine = (rich: Rich, width: number): TextLine => breakLines(rich, width)[0] ?? { parts: [], width: 0 }

/** Head and foot of a page: title, section, report number and edition; what it relates to, page n of N. */
export function furnish(
  document: ReportDocument,
  page: PageCanvas,
  geometry: PageGeometry,
  { lines, section, pages }: RunningMatter,
): void {
  if (document.onlyMeasured) return
  const right = geometry.leftMm + FIELD_WIDTH_MM
  const foot = geometry.heightMm - FOOT_FROM_BOTTOM_MM
  const set = (line: TextLine, left: number, baseline: number) =>
    drawLine(document, page, line, left, baseline, 'artifact')
  set(lines.name, right - lines.name.width, HEAD_BASELINE_MM)
  if (section !== '') {
    set(lines.title, geometry.leftMm, HEAD_BASELINE_MM)
    const room = Math.max(SHORTEST_HEAD_MM, right - Math.min(MOST_NAME_MM, lines.name.width) - 4 - geometry.mainLeftMm)
    set(firstLine([{ text: section, style: styles.running }], room), geometry.mainLeftMm, HEAD_BASELINE_MM)
  }
  set(lines.relates, geometry.leftMm, foot)
  const number: Rich = [
    { text: 'page ', style: styles.running },
    { text: String(page.index + 1), style: styles.runningInk },
    { text: ` of ${pages}`, style: styles.running },
  ]
  const numberLine = firstLine(number, 26)
  set(numberLine, right - numberLine.width, foot)
}
