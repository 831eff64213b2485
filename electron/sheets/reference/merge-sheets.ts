import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import type { SheetProblem } from './sheet-problem.ts'

/** Sheets that apply to one car, each once, imported ones before those that import them. */
export interface MergedSheets {
  readonly sheets: readonly ReferenceSheet[]
  readonly problems: readonly SheetProblem[]
}

/**
 * Brings together the sheets used for one car and everything they import.
 * @param wanted ids of the sheets used. @param known sheets at hand, by id.
 */
export function mergeSheets(
  wanted: readonly string[],
  known: { readonly get: (sheetId: string) => ReferenceSheet | undefined },
): MergedSheets {
  const done = new Map<string, ReferenceSheet>()
  const problems: SheetProblem[] = []
  const complain = (within: string, what: string, cure: string, severity: SheetProblem['severity'] = 'error') =>
    problems.push({ severity, path: ['imports'], line: null, within, what, cure })

  const take = (sheetId: string, edition: string, chain: readonly string[]): void => {
    const above = chain.at(-1) ?? sheetId
    const ring = chain.indexOf(sheetId)
    if (ring >= 0) {
      const round = [...chain.slice(ring), sheetId].join(' → ')
      complain(above, `The sheets import each other in a ring: ${round}.`, 'Take one of these imports out.')
      return
    }
    const sheet = known.get(sheetId)
    if (sheet === undefined) {
      complain(above, `The sheet “${sheetId}” is not here.`, 'Take it in first, or take its name out of the imports.')
      return
    }
    if (edition !== '' && edition !== sheet.edition)
      complain(
        above,
        `It was written for edition ${edition} of ${sheetId}; here is ${sheet.edition}.`,
        'Compare the two, then name the edition meant.',
        'warning',
      )
    if (done.has(sheetId)) return
    for (const imported of sheet.imports) take(imported.sheetId, imported.edition, [...chain, sheetId])
    done.set(sheetId, sheet)
  }
  for (const sheetId of wanted) take(sheetId, '', [])
  return { sheets: [...done.values()], problems }
}
