import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { checkFacts } from './check-facts.ts'
import { checkWithEngine } from './check-with-engine.ts'
import { compileSheets } from './compile-sheets.ts'
import { mergeSheets } from './merge-sheets.ts'
import { SheetNames } from './sheet-names.ts'
import { noPlaces, type PlaceOf, type SheetProblem } from './sheet-problem.ts'

/**
 * Everything that is wrong or doubtful about a sheet, in the order it is met: names, numbers, then what follows exactly
 * from all its facts together (asked of the identity engine, once nothing simpler is wrong).
 * @param known sheets at hand, for the imports. @param placeOf lines of the sheet's own text.
 */
export function checkSheet(
  sheet: ReferenceSheet,
  known: ReadonlyMap<string, ReferenceSheet> = new Map(),
  placeOf: PlaceOf = noPlaces,
): readonly SheetProblem[] {
  const all = new Map([...known, [sheet.sheetId, sheet]])
  const merged = mergeSheets([sheet.sheetId], all)
  const compiled = compileSheets(merged.sheets)
  const plain = [...merged.problems, ...checkFacts(sheet, new SheetNames(merged.sheets)), ...compiled.problems]
  const sound = compiled.model !== null && !plain.some(({ severity }) => severity === 'error')
  const problems = sound ? [...plain, ...checkWithEngine(sheet, compiled)] : plain
  return problems.map((problem) =>
    problem.within === null || problem.within === sheet.sheetId
      ? { ...problem, within: null, ...placeOf(problem.path) }
      : problem,
  )
}
