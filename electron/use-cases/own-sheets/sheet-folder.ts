import { createHash, randomUUID } from 'node:crypto'
import { copyFile, mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { type KeptDraft, ownSheetName, type SheetDraft, sheetDraft } from '../../../shared-types/sheet-desk.ts'
import { readDraft } from '../../sheets/reference/draft-sheet.ts'
import { readSheet } from '../../sheets/reference/read-sheet.ts'
import { sheetText } from '../../sheets/reference/sheet-text.ts'

const SHEET = '.yaml'
const UNFINISHED = '.unfinished.json'

/** Folder of the user's own sheets, within that of the records. */
export const folderOfSheets = (recordsFolder: string): string => join(recordsFolder, 'reference-sheets')

const hashOf = (bytes: Buffer | string): string => createHash('sha256').update(bytes).digest('hex')
const bytesOf = (path: string): Promise<Buffer | null> => readFile(path).catch(() => null)

/** Writes beside and puts in place at once, after the bytes are on the disk: what stood there is never half overwritten. */
async function writeWhole(path: string, text: string): Promise<void> {
  const fresh = `${path}.${randomUUID()}`
  const file = await open(fresh, 'wx', 0o600)
  try {
    await file.writeFile(text, 'utf8')
    await file.sync()
  } finally {
    await file.close()
  }
  await rename(fresh, path)
}

/** Names of the sheets that lie there, in order. */
export async function namesOfSheets(folder: string): Promise<readonly string[]> {
  const files = await readdir(folder).catch(() => [])
  const names = files.flatMap((file) => {
    const ending = [SHEET, UNFINISHED].find((each) => file.endsWith(each))
    return ending === undefined ? [] : [file.slice(0, -ending.length)]
  })
  return [...new Set(names)].filter((name) => ownSheetName.safeParse(name).success).sort()
}

/** A sheet as it lies in the folder; `sheet` is null while it is unfinished. */
export interface LyingSheet extends KeptDraft {
  readonly sheet: ReferenceSheet | null
  readonly changedAt: string
  readonly path: string
}

/** A sheet as last kept; null when there is none of that name. What is unfinished comes before what was readable last. */
export async function lyingSheet(folder: string, name: string): Promise<LyingSheet | null> {
  const unfinished = join(folder, `${name}${UNFINISHED}`)
  const bytes = await bytesOf(unfinished)
  if (bytes !== null) {
    const draft = draftOf(bytes)
    if (draft === null) throw damaged(unfinished)
    return { draft, sheet: null, basis: hashOf(bytes), path: unfinished, changedAt: await timeOf(unfinished) }
  }
  const path = join(folder, `${name}${SHEET}`)
  const written = await bytesOf(path)
  if (written === null) return null
  const draft: SheetDraft = { written: 'as text', text: written.toString('utf8') }
  return { draft, sheet: readSheet(written).sheet, basis: hashOf(written), path, changedAt: await timeOf(path) }
}

const timeOf = async (path: string): Promise<string> => (await stat(path)).mtime.toISOString()

function draftOf(bytes: Buffer): SheetDraft | null {
  try {
    return sheetDraft.parse(JSON.parse(bytes.toString('utf8')))
  } catch {
    return null
  }
}

const damaged = (path: string) =>
  new ProblemError(
    'not-found',
    `What was written last cannot be read: ${path}. Move that file away, then open the sheet.`,
  )

let lastKeeping: Promise<unknown> = Promise.resolve()

/**
 * Keeps what was written, finished or not. A sheet that reads as one lies there as YAML; anything else beside it, letter by
 * letter, until it does. Whenever the program ends, the last draft kept is there. One is kept after another.
 * @param basis as read or kept before; null for a new sheet.
 * @param at now, for the name of a copy where one is made.
 * @throws ProblemError `not-allowed-here` when another window has kept something else since.
 */
export function keepDraft(
  folder: string,
  name: string,
  draft: SheetDraft,
  basis: string | null,
  at: string,
): Promise<{ readonly basis: string; readonly readable: boolean }> {
  const keeping = lastKeeping.then(() => keepNow(folder, name, draft, basis, at))
  lastKeeping = keeping.catch(() => undefined)
  return keeping
}

async function keepNow(folder: string, name: string, draft: SheetDraft, basis: string | null, at: string) {
  const lying = await lyingSheet(folder, name)
  const { sheet } = readDraft(draft)
  const whole = JSON.stringify(draft)
  const text = sheet === null ? whole : draft.written === 'as text' ? draft.text : sheetText(sheet)
  const fresh = hashOf(text)
  // Kept already, and the answer was lost on its way.
  if (lying?.basis === fresh) return { basis: fresh, readable: sheet !== null }
  if ((lying?.basis ?? null) !== basis) {
    const message =
      'This sheet was changed elsewhere since it was opened here. What you wrote is still on this page: copy it, open the sheet anew, and bring your changes in.'
    throw new ProblemError('not-allowed-here', message, { field: 'basis' })
  }
  await mkdir(folder, { recursive: true, mode: 0o700 })
  if (draft.written === 'as tables' && lying !== null && isWrittenByHand(lying)) await copyAway(folder, name, at)
  const unfinished = join(folder, `${name}${UNFINISHED}`)
  // First the draft, then the sheet made of it: a power cut between the two leaves the draft.
  await writeWhole(unfinished, whole)
  if (sheet === null) return { basis: fresh, readable: false }
  await writeWhole(join(folder, `${name}${SHEET}`), text)
  await rm(unfinished, { force: true })
  return { basis: fresh, readable: true }
}

/** Whether a text holds more than its sheet: comments, an arrangement of its own, which tables cannot carry. */
export const isWrittenByHand = ({ draft, sheet }: Pick<LyingSheet, 'draft' | 'sheet'>): boolean =>
  draft.written === 'as text' && sheet !== null && sheetText(sheet) !== draft.text

const AWAY = 'put-away'
const moment = (at: string): string => at.replaceAll(/[^0-9]/g, '')

async function copyAway(folder: string, name: string, at: string): Promise<void> {
  await mkdir(join(folder, AWAY), { recursive: true, mode: 0o700 })
  await copyFile(join(folder, `${name}${SHEET}`), join(folder, AWAY, `${name}-${moment(at)}${SHEET}`))
}

/** Moves a sheet out of the way, into `put-away`, where a person finds it again. */
export async function putAway(folder: string, name: string, at: string): Promise<void> {
  await mkdir(join(folder, AWAY), { recursive: true, mode: 0o700 })
  for (const ending of [UNFINISHED, SHEET]) {
    const away = join(folder, AWAY, `${name}-${moment(at)}${ending}`)
    await rename(join(folder, `${name}${ending}`), away).catch(() => undefined)
  }
}
