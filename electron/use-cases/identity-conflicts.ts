import type { IdentityAnswer } from '../../shared-types/identity-answer.ts'
import type { IdentityView } from '../../shared-types/identity-view.ts'
import type { Noted } from './identity-evidence.ts'
import { misfits } from './identity-number-words.ts'
import { factInWords, seenWords, sourceOf } from './identity-words.ts'
import { shortened } from './row-marks.ts'
import type { SheetsOfRecord } from './sheets-of-record.ts'

/** Minimal conflicts as short arguments, and what would have to be wrong. */
export function conflictViews(
  own: SheetsOfRecord,
  answer: IdentityAnswer,
  noted: Noted,
): Pick<IdentityView, 'conflicts' | 'repairs'> {
  const { compiled } = own
  if (compiled === null) return { conflicts: [], repairs: [] }
  const found = answer.impossible ?? answer.conflicts
  const wordsOf = (id: string): string => factInWords(own, id) ?? shortened(seenWords(id, compiled, noted), 120)
  const basis = (id: string): string =>
    noted.numbers.find((number) => id === number.id || id.startsWith(`${number.id} place `))?.of.key ?? id
  const ofForm = misfits(noted, compiled)
  return {
    conflicts: [
      ...ofForm.conflicts,
      ...found.conflicts.map((items) => ({
        cannotAllBe: items.map(({ id }) => ({ words: wordsOf(id), source: sourceOf(compiled, basis(id)) })),
      })),
    ],
    repairs: [...ofForm.repairs, ...found.repairs.map((items) => items.map(({ id }) => wordsOf(id)))],
  }
}
