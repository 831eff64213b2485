import { readFileSync } from 'node:fs'
import { z } from 'zod'
import { sheetTell } from '../../../shared-types/reference-fact.ts'
import { sheetSource, sheetVariable } from '../../../shared-types/reference-sheet.ts'
import type { ColumnForm, TableForm } from '../../../shared-types/sheet-desk.ts'
import { resourcePath } from '../../places-on-disk.ts'
import { once, readList } from '../list-file.ts'
import { tablesDraft } from './draft-sheet.ts'
import { readSheet } from './read-sheet.ts'
import { HEAD_TABLE, headingsOf, sheetTables } from './sheet-tables.ts'

const tableWords = z.record(
  z.string(),
  z.strictObject({ says: z.string().min(1), columns: z.record(z.string(), z.string().min(1)) }),
)

/** Closed lists, from the form itself; by table and heading. */
const closed: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  sources: { learned: sheetSource.shape.learned.options },
  variables: {
    kind: sheetVariable.shape.kind.unwrap().options,
    basis: sheetVariable.shape.basis.unwrap().unwrap().options,
  },
  tells: {
    access: sheetTell.shape.access.options,
    unit: sheetTell.shape.unit.unwrap().unwrap().options,
    effort: ['1', '2', '3', '4', '5'],
  },
  numbers: { passOverSeparators: ['yes', 'no'] },
  'number-places': { optional: ['yes', 'no'] },
}

/** Tables whose ids are the names a column may hold. */
const named: Readonly<Record<string, string>> = {
  source: 'sources',
  'shows the variable': 'variables',
  datesAgainst: 'variables',
  travelsWith: 'donors',
  readBy: 'tells',
}

function columnForm(table: string, heading: string, says: string): ColumnForm {
  const definition = sheetTables.find(({ name }) => name === table)
  const kinds = definition?.keysByKind ?? null
  const owners = definition?.within?.heading === heading ? definition.list : null
  const from = owners ?? named[heading] ?? (heading === 'variable' ? 'variables' : null)
  return {
    heading,
    says,
    choices: heading === 'kind' && kinds !== null ? Object.keys(kinds) : (closed[table]?.[heading] ?? []),
    namesFrom: from === null ? null : { table: from, column: 'id' },
  }
}

/** The worked example the editor shows rows of; throws when it is damaged. */
const workedExample = once(() => {
  const path = resourcePath('reference-sheets', 'worked-example', 'osier.yaml')
  const { sheet, problems } = readSheet(readFileSync(path))
  if (sheet === null) throw new Error(`The worked example shipped with the program is damaged: ${problems[0]?.what}`)
  return tablesDraft(sheet)
})

/** Every table of a sheet as the editor shows it: what belongs in each column, and rows of an example. */
export const tableForms = once((): readonly TableForm[] => {
  const words = readList('table-words.json', tableWords, 'reference-sheets')
  return [HEAD_TABLE, ...sheetTables.map(({ name }) => name)].map((name) => ({
    name,
    says: words[name]?.says ?? '',
    columns: headingsOf(name).map((heading) => columnForm(name, heading, words[name]?.columns[heading] ?? '')),
    example: workedExample().tables[name] ?? [],
  }))
})
