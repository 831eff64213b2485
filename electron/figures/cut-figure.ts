import type { CutFigure } from '../../shared-types/coating-cut.ts'
import { coatingMeasures } from '../../shared-types/coating-measures.ts'
import type { CoatingSectionAnswer } from '../../shared-types/coating-section.ts'
import { type CoatingUnit, type LengthUnit, MM_PER_INCH, UM_PER_MIL } from '../../shared-types/units.ts'
import { evenMarks } from './even-marks.ts'

/** Marks beside nought along the line, and up. */
const MARKS_ALONG = 8
const MARKS_UP = 5
/** Room above the highest thing drawn, so that the arrow of a reading beyond the gauge has its place. */
const HEADROOM = 1.12

interface CutDrawn {
  /** Numbers of the spots by their place in the question. */
  readonly spots: readonly number[]
  readonly thresholdUm: number
  readonly lengthUnit: LengthUnit
  readonly coatingUnit: CoatingUnit
}

/** The section of a panel as plain geometry, in shares of a box whose left lower corner is the first end and no coating at all. */
export function cutFigure(section: CoatingSectionAnswer, drawn: CutDrawn): CutFigure {
  const { lengthMm, places, paintUm, readings } = section
  const { thresholdUm, lengthUnit, coatingUnit, spots } = drawn
  const { length, thickness } = coatingMeasures(drawn)
  const perLength = lengthUnit === 'mm' ? 1 : MM_PER_INCH
  const perUm = coatingUnit === 'µm' ? 1 : UM_PER_MIL
  const highest = Math.max(
    thresholdUm,
    paintUm.high,
    ...places.flatMap(({ um }) => (um === null ? [] : [um.high])),
    ...readings.map(({ um }) => um),
  )
  const topUm = HEADROOM * highest
  const x = (alongMm: number): number => rounded(alongMm / lengthMm)
  const y = (um: number): number => rounded(Math.max(0, um) / topUm)
  const stretches = assessedStretches(places)
  return {
    stretches: stretches.map((own) => ({
      band: [
        ...own.map(({ alongMm, um }) => ({ x: x(alongMm), y: y(um.low) })),
        ...own.toReversed().map(({ alongMm, um }) => ({ x: x(alongMm), y: y(um.high) })),
      ],
      middle: own.map(({ alongMm, um }) => ({ x: x(alongMm), y: y(um.middle) })),
    })),
    blanks: blanksOf(places).map(({ from, to }) => ({ from: x(from), to: x(to) })),
    paint: { low: y(paintUm.low), middle: y(paintUm.middle), high: y(paintUm.high) },
    threshold: y(thresholdUm),
    readings: readings.map(({ reading, alongMm, um, orMore }) => ({
      spot: spots[reading] ?? 0,
      x: x(alongMm),
      y: y(um),
      orMore,
    })),
    along: evenMarks(lengthMm / perLength, MARKS_ALONG),
    up: evenMarks(topUm / perUm, MARKS_UP),
    lengthUnit,
    thicknessUnit: coatingUnit,
    textAlternative:
      `Thickness along the line. ${section.words} ${readings.map(({ reading, um, orMore, alongMm }) => `Spot ${spots[reading] ?? 0} at ${length.text(alongMm)}: ${orMore ? 'more than ' : ''}${thickness.text(um)}`).join('; ')}`.trim(),
  }
}

const rounded = (share: number): number => Math.round(share * 1e5) / 1e5

type Place = CoatingSectionAnswer['places'][number]
type AssessedPlace = Place & { readonly um: NonNullable<Place['um']> }

/** Runs of places that were assessed, of two or more. */
function assessedStretches(places: CoatingSectionAnswer['places']): readonly (readonly AssessedPlace[])[] {
  const runs: AssessedPlace[][] = []
  let open: AssessedPlace[] | null = null
  for (const { alongMm, um } of places) {
    if (um === null) open = null
    else if (open === null) {
      open = [{ alongMm, um }]
      runs.push(open)
    } else open.push({ alongMm, um })
  }
  return runs.filter(({ length }) => length > 1)
}

/** Runs that were not assessed, each up to the places beside it that were. */
function blanksOf(places: CoatingSectionAnswer['places']): readonly { readonly from: number; readonly to: number }[] {
  const blanks: { from: number; to: number }[] = []
  let from: number | null = null
  places.forEach(({ alongMm, um }, at) => {
    if (um === null && from === null) from = places[Math.max(0, at - 1)]?.alongMm ?? 0
    if (um !== null && from !== null) {
      blanks.push({ from, to: alongMm })
      from = null
    }
  })
  if (from !== null) blanks.push({ from, to: places.at(-1)?.alongMm ?? from })
  return blanks
}
