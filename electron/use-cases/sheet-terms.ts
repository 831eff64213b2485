import type { ReferenceSheet } from '../../shared-types/reference-sheet.ts'
import type { SheetTerms, TermVariable } from '../../shared-types/sheet-terms.ts'
import { tellView } from './identity-tells.ts'
import type { UseCases } from './program.ts'
import { sheetsOfRecord } from './sheets-of-record.ts'

/** Name of the engine for "no other car's parts". */
const NO_DONOR = 'none'

function termsOf({ sheetId, title, variables, donors, numbers }: ReferenceSheet): SheetTerms {
  const built = variables.map(
    ({ id, name, kind, values, groups }): TermVariable => ({
      variable: id,
      name,
      about: 'as built',
      kind,
      values: values.map((value) => ({ id: value.id, name: value.name })),
      groups,
    }),
  )
  const others = donors.map(
    ({ id, name, kinds }): TermVariable => ({
      variable: id,
      name,
      about: 'other parts',
      kind: 'choice',
      values: [{ id: NO_DONOR, name: 'none' }, ...kinds.map((kind) => ({ id: kind.id, name: kind.name }))],
      groups: [],
    }),
  )
  return { sheetId, title, variables: [...built, ...others], numbers: numbers.map(({ name }) => name) }
}

/** What the sheets of the record have words for, without inferring anything: for claims, and for the panel in hand. */
export const sheetTermUseCases: Pick<UseCases, 'sheets.terms' | 'tells.ofPanel'> = {
  'sheets.terms': async (program) => (await sheetsOfRecord(program.record())).sheets.map(termsOf),

  'tells.ofPanel': async (program, { panelId }) => {
    const record = program.record()
    const { compiled } = await sheetsOfRecord(record)
    if (compiled === null) return []
    const { observations } = record.view()
    return compiled.tells
      .filter(({ tell }) => tell.where.panels.includes(panelId))
      .map((tell) => tellView(tell, compiled, observations, null))
  },
}
