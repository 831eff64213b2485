import type { CoatingFieldAnswer, CoatingFieldInput } from '../../../shared-types/coating.ts'
import { askedMeasures, type CoatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { CoatingField } from './drawn-panel.ts'
import type { WorthwhileSpot } from './next-reading.ts'

/** Readings looked ahead for the stopping line, and spots named. */
export const STEPS_AHEAD = 10
const SPOTS_NAMED = 3
/** A next reading that takes away less than this share of the doubt is not worth the walk. */
const WORTH_READING = 0.01

/** The best spots with their reasons, and what another ten readings would bring. */
export function nextReadingAnswer(
  input: CoatingFieldInput,
  { readable, readings }: CoatingField,
  spots: readonly WorthwhileSpot[],
  volume: CoatingFieldAnswer['fillerVolumeCm3'],
  chance: Float64Array,
): CoatingFieldAnswer['next'] {
  const measures = askedMeasures(input)
  const named = spots.slice(0, SPOTS_NAMED).map(({ node, reduction }) => {
    const at = readable[node] as number
    const { xMm, yMm } = input.nodes[at] as CoatingFieldInput['nodes'][number]
    const nearest = Math.min(...readings.map((reading) => Math.hypot(reading.xMm - xMm, reading.yMm - yMm)))
    return {
      node: at,
      xMm,
      yMm,
      words: `${reasonFor(chance[node] as number, nearest, measures)} ${shareWords(reduction)}`,
    }
  })
  return { spots: named, words: stoppingWords(spots, volume, measures) }
}

const shareWords = (reduction: number): string =>
  `Expected to take away ${Math.max(1, Math.round(100 * reduction))} % of the doubt about the volume.`

function reasonFor(chance: number, nearestMm: number, { length }: CoatingMeasures): string {
  const away = `${length.text(nearestMm)} away`
  const far = `the nearest reading is ${away}`
  if (chance > 0.9) return `Filler lies here, but how deep is open; ${far}.`
  if (chance > 0.1) return `Filler may or may not reach here (${Math.round(100 * chance)} %); ${far}.`
  return `Filler is unlikely here, but no reading is near enough to rule it out: the nearest reading is ${away}.`
}

function stoppingWords(
  spots: readonly WorthwhileSpot[],
  { low, high }: CoatingFieldAnswer['fillerVolumeCm3'],
  { roughVolume }: CoatingMeasures,
) {
  const [first] = spots
  if (first === undefined || first.reduction < WORTH_READING)
    return 'No single reading would narrow the volume by much: this panel can be left.'
  const left = Math.max(0, 1 - spots.reduce((sum, { reduction }) => sum + reduction, 0))
  const width = high - low
  return `Another ${STEPS_AHEAD} readings at the best places would narrow the interval of the volume from ${roughVolume.text(width)} to about ${roughVolume.text(width * Math.sqrt(left))}.`
}
