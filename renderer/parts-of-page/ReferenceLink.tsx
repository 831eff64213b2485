import type { Reference } from '../../shared-types/judgement.ts'
import { registerLetters } from '../../shared-types/record.ts'
import { followReference } from '../store/follow-reference.ts'

const letters: { readonly [K in Reference['kind']]: string } = {
  finding: registerLetters.findings,
  exhibit: registerLetters.exhibits,
  spot: registerLetters.spots,
  claim: registerLetters.claims,
  correction: registerLetters.corrections,
  carNumber: registerLetters.carNumbers,
  gauge: registerLetters.gauges,
  panel: '',
  part: '',
}

/** How a row is named everywhere: F 3, E 12. */
export const referenceText = (reference: Reference): string => `${letters[reference.kind]}\u202f${reference.key}`.trim()

/** The number of a row; following it goes to where the row stands. `words` replaces the number for panels and parts. */
export function ReferenceLink({ reference, words }: { readonly reference: Reference; readonly words?: string }) {
  return (
    <button
      type="button"
      className={words === undefined ? 'reference-link' : 'reference-link is-words'}
      onClick={() => followReference(reference)}
    >
      {words ?? referenceText(reference)}
    </button>
  )
}
