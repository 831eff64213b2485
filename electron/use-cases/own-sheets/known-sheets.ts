import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { shippedSheets } from '../../sheets/reference/shipped-sheets.ts'
import { folderOfSheets, lyingSheet, namesOfSheets } from './sheet-folder.ts'

/**
 * Sheets at hand for the imports of another, by their short names: those shipped, and the user's own that can be read. An
 * own sheet stands before a shipped one of the same name. @param except name of the own sheet that is being written.
 */
export async function knownSheets(
  recordsFolder: string,
  except: string | null,
): Promise<ReadonlyMap<string, ReferenceSheet>> {
  const known = new Map(shippedSheets().map(({ sheet }) => [sheet.sheetId, sheet]))
  const folder = folderOfSheets(recordsFolder)
  for (const name of await namesOfSheets(folder)) {
    if (name === except) continue
    const lying = await lyingSheet(folder, name).catch(() => null)
    if (lying !== null && lying.sheet !== null) known.set(lying.sheet.sheetId, lying.sheet)
  }
  return known
}

/** The user's own sheets that can be read, with the very bytes of their files. */
export async function readableOwnSheets(
  recordsFolder: string,
): Promise<readonly { readonly name: string; readonly sheet: ReferenceSheet; readonly bytes: Buffer }[]> {
  const folder = folderOfSheets(recordsFolder)
  const lying = await Promise.all(
    (await namesOfSheets(folder)).map(async (name) => ({
      name,
      found: await lyingSheet(folder, name).catch(() => null),
    })),
  )
  return lying.flatMap(({ name, found }) =>
    found === null || found.sheet === null || found.draft.written !== 'as text'
      ? []
      : [{ name, sheet: found.sheet, bytes: Buffer.from(found.draft.text, 'utf8') }],
  )
}
