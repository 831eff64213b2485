import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { checkedSheet } from '../../sheets/reference/sheet-from-bytes.ts'
import { shippedSheets } from '../../sheets/reference/shipped-sheets.ts'
import type { Verb } from './verb.ts'

/** Says everything that is wrong or doubtful about a reference sheet, each with its line and its cure. */
export const checkingSheet: Verb = {
  name: 'check-sheet',
  follows: 'SHEET.yaml',
  does: 'check a reference sheet: names, numbers, and what follows from all its facts together',
  fewest: 1,
  most: 1,
  options: {},
  act: async ({ words: [file = ''] }, around) => {
    const path = resolve(around.here, file)
    const bytes = await readFile(path).catch(() => {
      throw new ProblemError('not-found', `There is no file ${path} that can be read.`)
    })
    const { sheet, errors, warnings } = checkedSheet(
      bytes,
      new Map(shippedSheets().map((shipped) => [shipped.sheet.sheetId, shipped.sheet])),
    )
    for (const words of errors) around.print(`wrong     ${words}`)
    for (const words of warnings) around.print(`doubtful  ${words}`)
    if (sheet === null) return 1
    const { title, edition, tells, rules, variables } = sheet
    around.print(
      `${title}, edition ${edition}: ${variables.length} variables, ${rules.length} rules, ${tells.length} tells. It can be used.`,
    )
    return 0
  },
}
