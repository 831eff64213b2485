import type { CarFilmRow, CoatingCar } from '../../../shared-types/coating-car.ts'
import { coatingFigure } from '../../../shared-types/coating-measures.ts'
import { lineWeights, printedMarks } from '../../../shared-types/tokens.ts'
import type { PageCanvas } from '../document/page-canvas.ts'
import type { StructureElement } from '../document/structure-tree.ts'
import type { Composer } from '../layout/composer.ts'
import type { Piece } from '../layout/flow.ts'
import { breakLines } from '../layout/line-breaking.ts'
import { BASELINE_MM, FIELD_WIDTH_MM } from '../layout/page-geometry.ts'
import { drawLine, textPieces } from '../layout/text-block.ts'
import { inks, styles } from '../layout/text-style.ts'

/** Left edges of the columns and width of the scale, mm from the left edge of the field. */
const COLUMNS = { scaleLeft: 44, scaleWidth: 70, median: 121, spread: 134, chance: 160 } as const
const MEDIAN_MM = 0.9

/** Every panel read on one scale, and what the films are compatible with in words. */
export function composeCoatingCar(composer: Composer): void {
  const car = composer.content.coatingCar
  if (car.rows.length === 0) return
  composer.flow.place(figurePieces(composer, car))
  composer.block({ title: 'The whole car', note: 'films compared' }, (owner) => {
    const lines = (label: string, texts: readonly string[]) =>
      texts.flatMap((text, index) =>
        composer.labelled(owner, index === 0 ? label : '', [{ text, style: styles.text }], 32),
      )
    return [
      ...lines('paint jobs', car.films),
      ...lines('left and right', car.sides),
      ...lines('at seams', car.seams),
      ...lines('cannot tell', [car.cannotTell]),
    ]
  })
}

function figurePieces(composer: Composer, car: CoatingCar): Piece[] {
  const { section, document, geometry, content } = composer
  const unit = content.record.commission.coatingUnit
  const figure = section.add('Figure', { alternative: car.textAlternative })
  const axisAt = (at: number) => geometry.leftMm + COLUMNS.scaleLeft + at * COLUMNS.scaleWidth
  const set = (page: PageCanvas, text: string, leftMm: number, baselineMm: number) =>
    cellText(composer, page, figure, text, geometry.leftMm + leftMm, baselineMm)
  const head: Piece = {
    lines: 1,
    keep: true,
    draw: (page, topMm) => {
      page.belongTo(figure)
      for (const { um, at } of car.ticks)
        set(page, coatingFigure(um, unit), COLUMNS.scaleLeft + at * COLUMNS.scaleWidth - 2, topMm + BASELINE_MM)
      set(page, 'median', COLUMNS.median, topMm + BASELINE_MM)
      set(page, 'spread', COLUMNS.spread, topMm + BASELINE_MM)
      set(page, 'other', COLUMNS.chance, topMm + BASELINE_MM)
    },
  }
  const rows = car.rows.map(
    (row): Piece => ({
      lines: 1,
      keep: true,
      draw: (page, topMm) => {
        page.belongTo(figure)
        const y = topMm + BASELINE_MM - 1
        for (const { at } of car.ticks)
          page.line(axisAt(at), y - 2, axisAt(at), y + 2, { weightMm: printedMarks.axis, colour: inks.hair })
        page.line(axisAt(row.at.least), y, axisAt(row.at.most), y, {
          weightMm: lineWeights.inHand.mm,
          colour: inks.ink,
        })
        const open = (row.otherChance ?? 0) >= 0.5
        const ring = { weightMm: printedMarks.ringLine, colour: inks.ink }
        page.circle(axisAt(row.at.middle), y, MEDIAN_MM, ring, open ? inks.paper : inks.ink)
        set(page, row.name, 0, topMm + BASELINE_MM)
        set(page, coatingFigure(row.middleUm, unit), COLUMNS.median, topMm + BASELINE_MM)
        set(page, spreadWords(row, unit), COLUMNS.spread, topMm + BASELINE_MM)
        set(page, chanceWords(row.otherChance), COLUMNS.chance, topMm + BASELINE_MM)
      },
    }),
  )
  const caption = [
    { text: `${composer.nextFigure()} `, style: styles.captionStrong },
    {
      text: `Panels read, by median (mark) and thinnest to thickest spot (line), ${unit}; the scale is logarithmic. “Other”: chance of another paint job than that of most panels; an open mark where that is likelier than not.`,
      style: styles.caption,
    },
  ]
  return [
    head,
    ...rows,
    ...textPieces(document, caption, {
      leftMm: geometry.leftMm,
      widthMm: FIELD_WIDTH_MM,
      owner: section.add('Caption'),
    }).map((piece) => ({ ...piece, keep: true })),
  ]
}

function cellText(
  { document }: Composer,
  page: PageCanvas,
  owner: StructureElement,
  text: string,
  leftMm: number,
  baselineMm: number,
): void {
  const [line] = breakLines([{ text, style: styles.cell }], FIELD_WIDTH_MM)
  if (line !== undefined) drawLine(document, page, line, leftMm, baselineMm, owner)
}

const spreadWords = ({ leastUm, mostUm, mostOrMore }: CarFilmRow, unit: 'µm' | 'mil'): string =>
  `${coatingFigure(leastUm, unit)} to ${mostOrMore ? '> ' : ''}${coatingFigure(mostUm, unit)}`

function chanceWords(chance: number | null): string {
  if (chance === null) return '—'
  if (chance > 0.995) return '> 99 %'
  return chance < 0.005 ? '< 1 %' : `${Math.round(100 * chance)} %`
}
