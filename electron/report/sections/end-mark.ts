import { printedMarks } from '../../../shared-types/tokens.ts'
import type { Composer } from '../layout/composer.ts'
import type { Piece } from '../layout/flow.ts'
import { breakLines } from '../layout/line-breaking.ts'
import { BASELINE_MM, FIELD_WIDTH_MM, LINE_MM } from '../layout/page-geometry.ts'
import { editionName } from '../layout/running-matter.ts'
import { drawLine } from '../layout/text-block.ts'
import { inks, styles } from '../layout/text-style.ts'

const MARK_MIDDLE_MM = 4.9

/** The end of the report: a washer off the shadow it left, and the report's number. */
export function endMark(composer: Composer): Piece[] {
  const words = composer.section.add('P')
  return [
    {
      lines: 3,
      draw: (page, topMm) => {
        const middle = composer.geometry.leftMm + FIELD_WIDTH_MM / 2
        const y = topMm + MARK_MIDDLE_MM
        const thin = { weightMm: printedMarks.dimension, colour: inks.ink }
        page.belongTo('artifact')
        page.circle(middle - 0.35, y + 0.35, 1.6, { ...thin, dashMm: [0.4, 0.3] })
        page.circle(middle, y, 1.5, thin, inks.paper)
        page.circle(middle, y, 0.7, thin)
        page.line(middle - 7, y, middle - 2.6, y, thin)
        page.line(middle + 2.6, y, middle + 7, y, thin)
        const [line] = breakLines(
          [{ text: `End of report ${editionName(composer.content)}`, style: styles.running }],
          FIELD_WIDTH_MM,
        )
        if (line !== undefined)
          drawLine(composer.document, page, line, middle - line.width / 2, topMm + 2 * LINE_MM + BASELINE_MM, words)
      },
    },
  ]
}
