import { readdirSync, readFileSync } from 'node:fs'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { resourcePath } from '../../places-on-disk.ts'
import { once } from '../list-file.ts'
import { readSheet } from './read-sheet.ts'

/** A sheet shipped with the program, with the very bytes of its file. */
export interface ShippedSheet {
  readonly sheet: ReferenceSheet
  readonly bytes: Buffer
}

/** Every sheet in `resources/reference-sheets`, read once. Throws when one of them is damaged. */
export const shippedSheets = once((): readonly ShippedSheet[] =>
  readdirSync(resourcePath('reference-sheets'))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => {
      const bytes = readFileSync(resourcePath('reference-sheets', name))
      const { sheet, problems } = readSheet(bytes)
      if (sheet !== null) return { sheet, bytes }
      throw new Error(`The reference sheet ${name} shipped with the program is damaged: ${problems[0]?.what}`)
    }),
)
