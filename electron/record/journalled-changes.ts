import type { Change } from '../../shared-types/record.ts'
import type { Step } from './connection.ts'
import { appendStep, type JournalledChange, type JournalRow } from './journal.ts'
import { counterSteps } from './number-counters.ts'
import type { RecordImage } from './record-image.ts'
import { type AnyRow, asStored, changeStep, keyOf } from './register-table.ts'

/** The changes with what each row was before, and in the form in which it will be read back. */
export function journalled(image: RecordImage, changes: readonly Change[]): readonly JournalledChange[] {
  let standing = image
  return changes.map(({ register, key, after: wanted }) => {
    const after = wanted === null ? null : asStored(register, wanted as unknown as AnyRow)
    if (after && keyOf(register, after) !== key) throw new Error(`A row of ${register} was given the key ${key}.`)
    const change = { register, key, before: standing.row(register, key), after }
    standing = standing.with([change])
    return change
  })
}

/** What takes the changes back, the last one first. */
export const inverse = (changes: readonly JournalledChange[]): readonly JournalledChange[] =>
  changes.map(({ register, key, before, after }) => ({ register, key, before: after, after: before })).reverse()

/** Everything a sealed journal row does to the file: itself, the rows it changed, the numbers it took. */
export const stepsOf = (row: JournalRow): readonly Step[] => [
  appendStep(row),
  ...row.content.changes.map(({ register, key, after }) => changeStep(register, key, after)),
  ...counterSteps(row.content.taken),
]
