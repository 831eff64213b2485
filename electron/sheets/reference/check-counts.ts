import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import type { CompiledSheets } from './compile-sheets.ts'
import type { RulesAlone } from './rules-alone.ts'
import { SheetNames } from './sheet-names.ts'
import { noPlaces, problemAt, type SheetProblem } from './sheet-problem.ts'

const problem = problemAt(noPlaces)
const ignore = (): void => undefined
/** Cells asked about one by one; what lies beyond is met by the engine as a whole. */
const MOST_CELLS = 2000

/** Counts that cannot add up: cars counted that could not be built, and counts of one source with different totals. */
export function checkCounts(
  sheet: ReferenceSheet,
  { variables }: CompiledSheets,
  alone: RulesAlone,
): readonly SheetProblem[] {
  const names = new SheetNames([...new Set(variables.map((variable) => variable.sheet))])
  const cells = sheet.counts
    .flatMap(({ cells: own }, count) =>
      own.flatMap(({ when, built }, cell) => {
        const literals = built > 0 ? names.literals(sheet, when, [], ignore) : null
        return literals === null
          ? []
          : [
              {
                count,
                cell,
                built,
                literals: literals.map(([key, values]) => [key, [...values]] as [string, string[]]),
              },
            ]
      }),
    )
    .slice(0, MOST_CELLS)
  const conflicts = alone.conflictsOf(
    cells.map(({ literals }) => literals),
    () => [],
  )
  const forbidden = cells.flatMap(({ count, cell, built }, at) => {
    const facts = conflicts[at]
    if (facts === null || facts === undefined) return []
    const what = `It counts ${built} cars that could not be built, because of ${facts.join(', ')}.`
    return [
      problem(
        ['counts', count, 'cells', cell],
        what,
        'Correct the number, or the rule; or say how sure the rule is.',
        'warning',
      ),
    ]
  })
  return [...forbidden, ...totals(sheet)]
}

/** Complete counts of one account over the same cars must come to the same number. */
function totals(sheet: ReferenceSheet): readonly SheetProblem[] {
  const first = new Map<string, { id: string; total: number }>()
  return sheet.counts.flatMap(({ id, source, account, cells, others }, at) => {
    const total = cells.reduce((sum, { built }) => sum + built, others ?? 0)
    const key = account ?? source ?? id
    const before = first.get(key)
    if (before === undefined) first.set(key, { id, total })
    if (before === undefined || before.total === total) return []
    const what = `It comes to ${total}, ${before.id} of the same source to ${before.total}.`
    return [problem(['counts', at], what, 'Correct one, or give it an account of its own.', 'warning')]
  })
}
