import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { checkSheet } from './check-sheet.ts'
import { readSheet } from './read-sheet.ts'
import { problemText, type SheetProblem } from './sheet-problem.ts'

/** A sheet as somebody wrote it: read, and everything that is wrong or doubtful about it in words. */
export interface SheetChecked {
  /** Null when it cannot be used. */
  readonly sheet: ReferenceSheet | null
  readonly errors: readonly string[]
  readonly warnings: readonly string[]
}

/** Reads a sheet and checks it against those at hand. Never throws for what the bytes say. */
export function checkedSheet(bytes: Uint8Array, known: ReadonlyMap<string, ReferenceSheet>): SheetChecked {
  const { sheet, problems, placeOf } = readSheet(bytes)
  const all = sheet === null ? problems : [...problems, ...checkSheet(sheet, known, placeOf)]
  const words = (severity: SheetProblem['severity']) =>
    all.filter((problem) => problem.severity === severity).map(problemText)
  const errors = words('error')
  return { sheet: errors.length > 0 ? null : sheet, errors, warnings: words('warning') }
}
