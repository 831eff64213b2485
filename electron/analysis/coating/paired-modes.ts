import type { CoatingMeasures, ShownQuantity } from '../../../shared-types/coating-measures.ts'
import { normalProbability } from '../statistics/normal-distribution.ts'

/** A spot of a panel in one mode of the gauge: what was read there, and the standard uncertainty of it. */
export interface ModeSpot {
  readonly spot: number
  readonly mode: 'magnetic' | 'eddy current'
  readonly uMm: number
  readonly vMm: number
  readonly kind: 'value' | 'more than' | 'no reading'
  readonly um: number
  readonly standardUncertaintyUm: number
}

/** The two modes at one place, and what lies there by what they say together. */
export interface PairedModes {
  readonly magnetic: ModeSpot
  readonly eddyCurrent: ModeSpot
  readonly compatibleWith: 'body solder' | 'filler' | 'nothing told'
  /** Chance that a conductor begins above the steel, by the uncertainties of both readings; null where none answered. */
  readonly conductorChance: number | null
  readonly words: string
}

/** Readings belong to one place within this distance, as those of one spot do. */
const ONE_PLACE_MM = 40
/** A magnetic reading this far above paint is more than film: only then does the second mode tell what it is. */
const MORE_THAN_FILM_UM = 300
const LIKELY = 0.95

/**
 * Body solder and filler read alike by magnetic induction: both keep steel away. Eddy currents run in lead and not in filler
 * (ISO 2360:2017: coatings that do not conduct on metals that are not magnetic), so that the second mode reads the paint above lead, and
 * nothing above filler. Spots of both modes at one place are put together; each magnetic one with its nearest partner.
 */
export function pairedModes(spots: readonly ModeSpot[], measures: CoatingMeasures): PairedModes[] {
  return spots.flatMap((magnetic) => {
    if (magnetic.mode !== 'magnetic') return []
    const apart = (other: ModeSpot) => Math.hypot(other.uMm - magnetic.uMm, other.vMm - magnetic.vMm)
    const eddyCurrent = spots
      .filter((other) => other.mode === 'eddy current' && apart(other) <= ONE_PLACE_MM)
      .toSorted((one, other) => apart(one) - apart(other))[0]
    return eddyCurrent === undefined ? [] : [told(magnetic, eddyCurrent, measures.roughThickness)]
  })
}

function told(magnetic: ModeSpot, eddyCurrent: ModeSpot, thickness: ShownQuantity): PairedModes {
  const pair = { magnetic, eddyCurrent }
  const steel = `R ${magnetic.spot}, magnetic: ${said(magnetic, thickness)} to the steel`
  if (magnetic.kind === 'no reading' || magnetic.um < MORE_THAN_FILM_UM)
    return {
      ...pair,
      compatibleWith: 'nothing told',
      conductorChance: null,
      words: `${steel}. There is no more than film here, or no steel in reach, so the second mode tells nothing more.`,
    }
  if (eddyCurrent.kind !== 'value')
    return {
      ...pair,
      compatibleWith: 'filler',
      conductorChance: null,
      words: `${steel}. R ${eddyCurrent.spot}, eddy current: ${said(eddyCurrent, thickness)}, so no metal conducts within reach below the surface. Lead would have given the thickness of the paint above it. Compatible with filler, not with body solder.`,
    }
  const between = magnetic.um - eddyCurrent.um
  const deviation = Math.hypot(magnetic.standardUncertaintyUm, eddyCurrent.standardUncertaintyUm)
  const conductorChance = normalProbability(between / deviation)
  const half = 1.645 * deviation
  const thick =
    magnetic.kind === 'more than'
      ? `at least ${thickness.text(Math.max(0, between - half))}`
      : `${thickness.text(between)} (${thickness.figure(Math.max(0, between - half))} to ${thickness.figure(between + half)}, 90 %)`
  const found = `${steel}. R ${eddyCurrent.spot}, eddy current: ${said(eddyCurrent, thickness)}`
  if (conductorChance < LIKELY || between < MORE_THAN_FILM_UM)
    return {
      ...pair,
      compatibleWith: 'nothing told',
      conductorChance,
      words: `${found}. The two are too near each other to say whether lead or filler lies there.`,
    }
  return {
    ...pair,
    compatibleWith: 'body solder',
    conductorChance,
    words: `${found}, so a metal that is not magnetic begins under ${thickness.text(eddyCurrent.um)} of coating (${ends(eddyCurrent, thickness)}, 90 %) and is ${thick} thick (chance ${conductorChance > 0.995 ? 'over 99' : Math.round(100 * conductorChance)} % by the gauge's uncertainty). Filler does not conduct. Compatible with body solder under paint, not with filler alone; brass or aluminium let in would read the same.`,
  }
}

const said = ({ kind, um }: ModeSpot, thickness: ShownQuantity): string =>
  kind === 'no reading' ? 'no reading' : `${kind === 'more than' ? 'more than ' : ''}${thickness.text(um)}`

const ends = ({ um, standardUncertaintyUm }: ModeSpot, thickness: ShownQuantity): string =>
  `${thickness.figure(um - 1.645 * standardUncertaintyUm)} to ${thickness.figure(um + 1.645 * standardUncertaintyUm)}`
