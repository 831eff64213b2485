import type { CoatingPrinciple, CoatingSubstrate, SubstrateReach } from '../../../shared-types/coating.ts'
import type { CoatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { PlaceLine } from '../../../shared-types/coating-place.ts'
import type { Gauge, Spot } from '../../../shared-types/reading.ts'
import { probeWarning, substrateReading } from './substrate-reading.ts'

const PRACTICE = 'common practice, no source'
const BOTH_METALS = ['magnetic induction', 'eddy current'] as const
/** Surface over its drawing from which a panel is said to turn away. Common practice, no source. */
const TURNS_AWAY = 1.25
const FLAT_MM = 1e6
/** Diameter of a probe that was not measured. Common practice, no source. */
const SUPPOSED_PROBE_MM = 10

const byMode: Readonly<Record<Spot['mode'], CoatingPrinciple | null>> = {
  magnetic: 'magnetic induction',
  'eddy current': 'eddy current',
  ultrasonic: 'ultrasonic',
  'not noted': null,
}
const modeOf: Readonly<Record<CoatingPrinciple, string>> = {
  'magnetic induction': 'magnetic',
  'eddy current': 'eddy-current',
  ultrasonic: 'ultrasonic',
}

type Principle = Gauge['principle'] | null

/** Principle a gauge works by in a mode; null where neither says it, `impossible` where the gauge has no such mode. */
export function principleOf(principle: Principle, mode: Spot['mode']): CoatingPrinciple | null | 'impossible' {
  const set = byMode[mode]
  if (principle === null) return set
  if (principle === 'dual') return set === 'ultrasonic' ? 'impossible' : set
  return set === null || set === principle ? principle : 'impossible'
}

/** What the gauge in hand reads over a substrate in its mode, and what the wrong mode of a gauge that has two would show. */
export function substrateLines(
  table: readonly SubstrateReach[],
  gauge: Principle,
  mode: Spot['mode'],
  substrate: CoatingSubstrate,
  { thickness }: CoatingMeasures,
): readonly PlaceLine[] {
  const principle = principleOf(gauge, mode)
  if (principle === 'impossible')
    return [
      {
        words: `This gauge has no ${mode} mode: look what it was set to, a number noted so says nothing.`,
        source: PRACTICE,
        weight: 'cannot',
      },
    ]
  const line = (own: CoatingPrinciple, words: string): PlaceLine => {
    const { reads, source } = substrateReading(table, own, substrate)
    return { words, source, weight: reads === 'yes' ? 'plain' : reads === 'no' ? 'cannot' : 'care' }
  }
  const shows = (own: CoatingPrinciple) => {
    const { shows: words, adds } = substrateReading(table, own, substrate)
    if (adds === undefined) return words
    return `${words.replace(/\.$/, '')}; ${adds.what} adds some ${thickness.span(adds.fromUm, adds.toUm)}.`
  }
  const over = substrate === 'unknown' ? 'where nothing is known of what lies below' : `over ${substrate}`
  if (principle === null)
    return BOTH_METALS.map((own) => line(own, `In ${modeOf[own]} mode ${over}: ${lower(shows(own))}`))
  const own = line(principle, `In ${modeOf[principle]} mode ${over}: ${lower(shows(principle))}`)
  if (gauge !== 'dual') return [own]
  const other = BOTH_METALS.find((one) => one !== principle) ?? 'eddy current'
  // What the other mode would show is no fault of the mode in hand, and never weighs more than a note.
  return [own, { ...line(other, `In the wrong mode, ${modeOf[other]}: ${lower(shows(other))}`), weight: 'plain' }]
}

/** Warnings of the place itself: an edge too near for the probe, and a panel that turns away from the eye. */
export function placeLines(
  probeDiameterMm: number | null,
  edgeMm: number | null,
  surfaceByDrawing: number,
  { smallLength }: CoatingMeasures,
): readonly PlaceLine[] {
  const lines: PlaceLine[] = []
  const probeMm = probeDiameterMm ?? SUPPOSED_PROBE_MM
  const supposed =
    probeDiameterMm === null
      ? ` (${smallLength.text(SUPPOSED_PROBE_MM)} supposed: note the probe’s diameter with the gauge)`
      : ''
  if (edgeMm !== null && probeWarning(probeMm, edgeMm, FLAT_MM) !== null)
    lines.push({
      words: `Too near an edge: ${smallLength.text(Math.round(edgeMm))} from the outline as drawn, and the probe is ${smallLength.text(probeMm)} across${supposed}. Move in by ${smallLength.text(Math.ceil(probeMm - edgeMm))}, or check the gauge on bare metal at such an edge.`,
      source: PRACTICE,
      weight: 'care',
    })
  if (surfaceByDrawing >= TURNS_AWAY)
    lines.push({
      words: `This panel turns away from the eye. Where its curve is tighter than a radius of ${smallLength.text(20 * probeMm)} the probe stands off and reads thick${supposed}: check the gauge on bare metal of the same curve.`,
      source: PRACTICE,
      weight: 'care',
    })
  return lines
}

/** Why a reading over a substrate is left out of a map or marked in it; null where nothing is to be known of it. */
export function substrateFlag(
  table: readonly SubstrateReach[],
  gauge: Principle,
  { mode, substrate }: Pick<Spot, 'mode' | 'substrate'>,
): { readonly reads: boolean; readonly words: string } | null {
  if (substrate === 'unknown') return null
  const principle = principleOf(gauge, mode)
  if (principle === 'impossible') return { reads: true, words: `the gauge has no ${mode} mode` }
  if (principle === null) return null
  const { reads } = substrateReading(table, principle, substrate)
  if (reads === 'yes') return null
  if (reads === 'no') return { reads: false, words: `${principle} cannot read over ${substrate}` }
  return substrate === 'lead-loaded seam' && principle === 'magnetic induction'
    ? { reads: true, words: 'over a lead-loaded seam: paint and lead together' }
    : { reads: true, words: `over ${substrate}, to be read with care` }
}

const lower = (words: string): string => `${words.charAt(0).toLowerCase()}${words.slice(1)}`
