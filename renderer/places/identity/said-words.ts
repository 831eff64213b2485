import type { TellView } from '../../../shared-types/identity-view.ts'
import type { ShownUnits } from '../../../shared-types/units.ts'
import { measureWords } from './measure-words.ts'

/** What is said of a tell that was looked at, in a few words. */
export function saidWords({ observation, values, unit }: TellView, units: ShownUnits): string {
  if (observation === null) return ''
  const { state, value, measured, surePercent } = observation
  const name = values.find(({ id }) => id === value)?.name ?? ''
  if (state === 'measured' && measured !== null)
    return measureWords(measured.value, 2 * measured.standardUncertainty, unit ?? '', units)
  return state === 'believed' ? `${name}, ${surePercent} % sure` : state === 'seen' ? name : state
}
