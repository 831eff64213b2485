import { printedMarks } from '../../../shared-types/tokens.ts'
import type { PageCanvas } from '../document/page-canvas.ts'
import type { StructureElement } from '../document/structure-tree.ts'
import type { Composer } from '../layout/composer.ts'
import type { Piece } from '../layout/flow.ts'
import { breakLines, type Rich } from '../layout/line-breaking.ts'
import { BASELINE_MM } from '../layout/page-geometry.ts'
import { drawLine, textPieces } from '../layout/text-block.ts'
import { inks, styles, type TextStyle } from '../layout/text-style.ts'
import { shareBounds } from '../wording/numbers.ts'
import { drawHatch, rectangleOperators } from './hatching.ts'

export interface ShareBar {
  readonly label: string
  readonly basis: string
  readonly lowPercent: number
  readonly highPercent: number
}

const COLUMNS = { basisRight: 62, barLeft: 64, barWidth: 46 } as const
const BAR_HEIGHT_MM = 2

/** Bars on one axis of 0 to 100 %: solid seen and original, open not seen, hatched seen and not original. */
export function shareBars(
  composer: Composer,
  owner: StructureElement,
  bars: readonly ShareBar[],
  caption: Rich,
): Piece[] {
  const figure = owner.add('Figure', {
    alternative: bars
      .map((bar) => `${bar.label}, ${bar.basis}: ${shareBounds(bar.lowPercent, bar.highPercent)} as it left the works`)
      .join('; '),
  })
  const { mainLeftMm, mainWidthMm } = composer.geometry
  const barLeft = mainLeftMm + COLUMNS.barLeft
  const set = (page: PageCanvas, text: string, style: TextStyle, left: number, baseline: number, right?: number) => {
    const [line] = breakLines([{ text, style }], right === undefined ? 60 : right - left)
    if (line === undefined) return
    drawLine(composer.document, page, line, right === undefined ? left : right - line.width, baseline, figure)
  }
  const at = (percent: number) => barLeft + (percent / 100) * COLUMNS.barWidth
  const axis: Piece = {
    lines: 1,
    keep: true,
    draw: (page, topMm) => {
      page.belongTo(figure)
      const y = topMm + 3.8
      page.line(at(0), y, at(100), y, { weightMm: printedMarks.axis, colour: inks.ink })
      for (const tick of [0, 25, 50, 75, 100]) {
        page.line(at(tick), y - 0.8, at(tick), y, { weightMm: printedMarks.axis, colour: inks.ink })
        set(page, tick === 100 ? '100 %' : String(tick), styles.lettering, at(tick) - (tick === 0 ? 0.6 : 1.3), y - 1.3)
      }
    },
  }
  const rows = bars.map(
    (bar): Piece => ({
      lines: 1,
      keep: true,
      draw: (page, topMm) => {
        const baseline = topMm + BASELINE_MM
        const top = topMm + 1
        page.belongTo(figure)
        set(page, bar.label, styles.text, mainLeftMm, baseline)
        set(page, bar.basis, styles.running, mainLeftMm + 24, baseline, mainLeftMm + COLUMNS.basisRight)
        drawBar(page, at, bar, top)
        set(
          page,
          shareBounds(bar.lowPercent, bar.highPercent),
          styles.strong,
          at(100) + 1,
          baseline,
          mainLeftMm + mainWidthMm,
        )
      },
    }),
  )
  const key: Piece = {
    lines: 1,
    keep: true,
    draw: (page, topMm) => {
      let left = mainLeftMm
      page.belongTo(figure)
      for (const [word, low, high] of [
        ['seen, as it left the works', 100, 100],
        ['not seen', 0, 100],
        ['seen, not as it left the works', 0, 0],
      ] as const) {
        const start = left
        drawBar(page, (percent) => start + (percent / 100) * 6, { lowPercent: low, highPercent: high }, topMm + 1)
        set(page, word, styles.lettering, left + 7.5, topMm + BASELINE_MM)
        left += 42
      }
    },
  }
  const captionPieces = textPieces(composer.document, caption, {
    leftMm: mainLeftMm,
    widthMm: mainWidthMm,
    owner: owner.add('Caption'),
  })
  return [axis, ...rows, key, ...captionPieces]
}

function drawBar(
  page: PageCanvas,
  at: (percent: number) => number,
  bar: { readonly lowPercent: number; readonly highPercent: number },
  top: number,
): void {
  const style = { weightMm: printedMarks.dimension, colour: inks.ink }
  if (bar.lowPercent > 0) page.rectangle(at(0), top, at(bar.lowPercent) - at(0), BAR_HEIGHT_MM, null, inks.ink)
  if (bar.highPercent > bar.lowPercent) {
    page.rectangle(at(bar.lowPercent), top, at(bar.highPercent) - at(bar.lowPercent), BAR_HEIGHT_MM, style)
  }
  if (bar.highPercent < 100) {
    const box = { left: at(bar.highPercent), right: at(100), top, bottom: top + BAR_HEIGHT_MM }
    drawHatch(page, 'repaired', rectangleOperators(page, box), box)
  }
}
