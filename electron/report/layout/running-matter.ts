import type { PageCanvas } from '../document/page-canvas.ts'
import type { ReportDocument } from '../document/report-document.ts'
import type { ReportContent } from '../report-content.ts'
import { daysText } from '../wording/dates.ts'
import { breakLines, measure, type Rich } from './line-breaking.ts'
import { FIELD_WIDTH_MM, type PageGeometry } from './page-geometry.ts'
import { drawLine } from './text-block.ts'
import { styles } from './text-style.ts'

export interface RunningMatter {
  readonly content: ReportContent
  /** Number and title of the section; empty on the title page. */
  readonly section: string
  readonly pages: number
}

const HEAD_BASELINE_MM = 14.2
const FOOT_FROM_BOTTOM_MM = 14.6
const SHORTEST_HEAD_MM = 34

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

/** Head and foot of a page: title, section, report number and edition; what it relates to, page n of N. */
export function furnish(
  document: ReportDocument,
  page: PageCanvas,
  geometry: PageGeometry,
  { content, section, pages }: RunningMatter,
): void {
  const right = geometry.leftMm + FIELD_WIDTH_MM
  const foot = geometry.heightMm - FOOT_FROM_BOTTOM_MM
  const set = (rich: Rich, left: number, width: number, baseline: number, toRight = false) => {
    const [line] = breakLines(rich, width)
    if (line === undefined) return
    drawLine(document, page, line, toRight ? right - line.width : left, baseline, 'artifact')
  }
  const name = [{ text: editionName(content), style: styles.running }]
  const nameWidth = Math.min(100, measure(editionName(content), styles.running))
  set(name, right - nameWidth - 0.5, nameWidth + 0.5, HEAD_BASELINE_MM, true)
  if (section !== '') {
    set([{ text: 'Originality and condition', style: styles.running }], geometry.leftMm, 40, HEAD_BASELINE_MM)
    const room = Math.max(SHORTEST_HEAD_MM, right - nameWidth - 4 - geometry.mainLeftMm)
    set([{ text: section, style: styles.running }], geometry.mainLeftMm, room, HEAD_BASELINE_MM)
  }
  set([{ text: relatesOnly(content), style: styles.running }], geometry.leftMm, FIELD_WIDTH_MM - 28, foot)
  const number: Rich = [
    { text: 'page ', style: styles.running },
    { text: String(page.index + 1), style: styles.runningInk },
    { text: ` of ${pages}`, style: styles.running },
  ]
  set(number, right - 26, 26, foot, true)
}
