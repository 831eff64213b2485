import type { TellView } from '../../../shared-types/identity-view.ts'
import { measuredForm } from '../../parts-of-page/number-forms.ts'

/** What is said of a tell that was looked at, in a few words. */
export function saidWords({ observation, values, unit }: TellView): string {
  if (observation === null) return ''
  const { state, value, measured, surePercent } = observation
  const name = values.find(({ id }) => id === value)?.name ?? ''
  if (state === 'measured' && measured !== null)
    return measuredForm(String(measured.value), `${2 * measured.standardUncertainty} ${unit ?? ''}`.trim())
  return state === 'believed' ? `${name}, ${surePercent} % sure` : state === 'seen' ? name : state
}
