import type { IdentityLiteral } from '../../../shared-types/identity-model.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import type { FactDays } from './date-spans.ts'
import { valuesWithin } from './model-draft.ts'
import type { KnownVariable, SheetNames } from './sheet-names.ts'

/** The date variable of a sheet that has been checked; null when none says when a car was built. */
export const dateVariableOf = (names: SheetNames, sheet: ReferenceSheet): KnownVariable | null =>
  names.dates(sheet, () => undefined)

/** Built on days on which the fact may hold, as a statement; null when the fact holds on every day, or no day is known. */
export function daysAsLiteral(names: SheetNames, sheet: ReferenceSheet, days: FactDays): IdentityLiteral | null {
  if (days.from === null && days.until === null) return null
  const dates = dateVariableOf(names, sheet)
  if (dates === null) return null
  const values = valuesWithin(dates, days, 'maybe')
  return values.length === 0 ? null : [dates.key, values]
}
