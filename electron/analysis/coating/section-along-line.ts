import type { CoatingFieldInput } from '../../../shared-types/coating.ts'
import { askedMeasures, type CoatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { CoatingSectionAnswer, CoatingSectionInput, SectionLine } from '../../../shared-types/coating-section.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { seededDraw } from '../sampling/seeded-draws.ts'
import { shuffled } from '../sampling/shuffled.ts'
import { HALF_OF_NINETY, normalQuantile } from '../statistics/quantiles.ts'
import { fieldPrior } from './field-prior.ts'
import { quantileOfSorted } from './field-summary.ts'
import { filmOfPanel, filmWithoutReference } from './film-reference.ts'
import { drawFiller } from './latent-field.ts'
import type { PaintFilm } from './latent-sites.ts'
import { usableReadings } from './usable-readings.ts'

/** Places along a line: as far apart as this, but no more of them than that. */
const APART_MM = 5
const MOST_PLACES = 160
const SHORTEST_MM = 10
/** Square of the distance to the corner of a node's square by its area, one half, and a little for squares that are not quite square. */
const REACH = 0.6

type Place = SectionLine['from']

/**
 * Thickness along a straight line across one panel: film and filler at each place of the line, drawn from the same
 * posterior as the panel's map (the same seed draws the same values at the readings), with the film's own spread from place
 * to place. The middle is the median of the draws, the band holds their middle nine tenths, place by place. Where the panel
 * cannot be read, or the line lies beside it, nothing is said.
 * @throws ProblemError when the line is too short or nothing can be drawn from.
 */
export function sectionAlongLine({ field, line }: CoatingSectionInput): CoatingSectionAnswer {
  const { from, to, nearMm } = line
  const lengthMm = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)
  const measures = askedMeasures(field)
  if (lengthMm < SHORTEST_MM)
    throw new ProblemError(
      'rule-of-the-trade',
      `The ends of the line are less than ${measures.smallLength.text(SHORTEST_MM)} apart: move one of them further away.`,
      { field: 'line' },
    )
  const { readings } = usableReadings(field)
  const film = filmOfPanel(readings, field.reference ?? filmWithoutReference(readings))
  const places = placesAlong(from, to, lengthMm)
  const assessed = places.filter(({ at }) => isAssessed(field.nodes, at))
  const nodes = {
    x: Float64Array.from(assessed, ({ at }) => at.xMm),
    y: Float64Array.from(assessed, ({ at }) => at.yMm),
  }
  const drawn = drawFiller(readings, nodes, film, fieldPrior, {
    draws: field.draws,
    seed: field.seed,
    keepOn: () => undefined,
  })
  const paint = filmDraws(film, drawn.draws, field.seed)
  const spreads = new Map(
    assessed.map(({ alongMm }, node) => {
      const own = paint.map((um, d) => um + (drawn.fillerUm[node * drawn.draws + d] as number)).sort()
      return [alongMm, spreadOf(own)] as const
    }),
  )
  const shown = places.map(({ alongMm }) => ({ alongMm, um: spreads.get(alongMm) ?? null }))
  return {
    lengthMm,
    nearMm,
    places: shown,
    paintUm: {
      low: film.medianUm * Math.exp(-HALF_OF_NINETY * film.logDeviation),
      middle: film.medianUm,
      high: film.medianUm * Math.exp(HALF_OF_NINETY * film.logDeviation),
    },
    readings: readingsNear(field.readings, line, lengthMm),
    words: sectionWords(shown, lengthMm, measures),
  }
}

function placesAlong(from: Place, to: Place, lengthMm: number): { readonly alongMm: number; readonly at: Place }[] {
  const steps = Math.min(MOST_PLACES, Math.ceil(lengthMm / APART_MM))
  return Array.from({ length: steps + 1 }, (_, step) => {
    const share = step / steps
    return {
      alongMm: share * lengthMm,
      at: { xMm: from.xMm + share * (to.xMm - from.xMm), yMm: from.yMm + share * (to.yMm - from.yMm) },
    }
  })
}

/** A place is assessed where the nearest node is readable and no further than the corner of the square it stands for. */
function isAssessed(nodes: CoatingFieldInput['nodes'], { xMm, yMm }: Place): boolean {
  let least = Number.POSITIVE_INFINITY
  let nearest = nodes[0]
  for (const node of nodes) {
    const square = (node.xMm - xMm) ** 2 + (node.yMm - yMm) ** 2
    if (square >= least) continue
    least = square
    nearest = node
  }
  return nearest?.readable === true && least <= REACH * nearest.areaMm2
}

/** Film at any one place, draw by draw: evenly spread quantiles of its lognormal spread, in an order of their own. */
function filmDraws({ medianUm, logDeviation }: PaintFilm, count: number, seed: string): Float64Array {
  const even = Float64Array.from({ length: count }, (_, at) => normalQuantile((at + 0.5) / count))
  const quantiles = shuffled(even, seededDraw(`${seed} film`))
  return quantiles.map((quantile) => medianUm * Math.exp(logDeviation * quantile))
}

const spreadOf = (sorted: Float64Array) => ({
  low: quantileOfSorted(sorted, 0.05),
  middle: quantileOfSorted(sorted, 0.5),
  high: quantileOfSorted(sorted, 0.95),
})

/** Readings with a value whose foot falls on the line or which lie near one of its ends, in the order along it. */
function readingsNear(
  readings: CoatingFieldInput['readings'],
  { from, to, nearMm }: SectionLine,
  lengthMm: number,
): CoatingSectionAnswer['readings'] {
  const [along, across] = [(to.xMm - from.xMm) / lengthMm, (to.yMm - from.yMm) / lengthMm]
  return readings
    .flatMap(({ xMm, yMm, value }, reading) => {
      const foot = (xMm - from.xMm) * along + (yMm - from.yMm) * across
      const alongMm = Math.min(lengthMm, Math.max(0, foot))
      const besideMm = Math.hypot(xMm - from.xMm - alongMm * along, yMm - from.yMm - alongMm * across)
      if (value.kind === 'no reading' || besideMm > nearMm) return []
      return [{ reading, alongMm, besideMm, um: value.um, orMore: value.kind === 'more than' }]
    })
    .sort((one, other) => one.alongMm - other.alongMm)
}

function sectionWords(
  places: CoatingSectionAnswer['places'],
  lengthMm: number,
  { length, thickness }: CoatingMeasures,
): string {
  const read = places.flatMap(({ alongMm, um }) => (um === null ? [] : [{ alongMm, um }]))
  const [first] = read
  if (first === undefined)
    return 'Nothing along this line was assessed: it lies beside the panel, or where no gauge reads.'
  const thickest = read.reduce((most, place) => (place.um.middle > most.um.middle ? place : most), first)
  const { low, middle, high } = thickest.um
  const blank = places.length - read.length
  const left =
    blank === 0 ? '' : ` About ${length.span((blank * lengthMm) / places.length, lengthMm, 'of')} were not assessed.`
  return `Thickest ${length.text(thickest.alongMm)} from the first end: ${thickness.text(middle)}, between ${thickness.span(low, high, 'and')} in nine draws of ten.${left}`
}
