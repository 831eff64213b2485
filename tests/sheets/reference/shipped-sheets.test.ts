import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { resourcePath } from '../../../electron/places-on-disk.ts'
import { checkSheet } from '../../../electron/sheets/reference/check-sheet.ts'
import { compileSheets } from '../../../electron/sheets/reference/compile-sheets.ts'
import { mergeSheets } from '../../../electron/sheets/reference/merge-sheets.ts'
import { readSheet } from '../../../electron/sheets/reference/read-sheet.ts'
import { problemText } from '../../../electron/sheets/reference/sheet-problem.ts'

const files = readdirSync(resourcePath('reference-sheets')).filter((name) => name.endsWith('.yaml'))
const reads = files.map((name) => ({ name, ...readSheet(readFileSync(resourcePath('reference-sheets', name))) }))
const known = new Map(reads.flatMap(({ sheet }) => (sheet === null ? [] : [[sheet.sheetId, sheet] as const])))

test.each(reads)('$name is sound', ({ sheet, problems, placeOf }) => {
  const all = sheet === null ? problems : checkSheet(sheet, known, placeOf)
  expect(all.filter(({ severity }) => severity === 'error').map(problemText)).toEqual([])
})

test('all shipped sheets can be used for one car together, and every piece of the model names its fact', () => {
  const merged = mergeSheets([...known.keys()], known)
  expect(merged.problems).toEqual([])
  const { model, problems, cites } = compileSheets(merged.sheets)
  expect(problems.filter(({ severity }) => severity === 'error').map(problemText)).toEqual([])
  for (const { id } of [...(model?.rules ?? []), ...(model?.tells ?? [])]) expect(cites.has(id), id).toBe(true)
})
