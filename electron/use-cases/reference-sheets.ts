import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { Readable } from 'node:stream'
import type { RequestInput } from '../../shared-types/contract.ts'
import type { OfferedSheet } from '../../shared-types/identity-view.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Acknowledgement } from '../../shared-types/record.ts'
import { checkedSheet } from '../sheets/reference/sheet-from-bytes.ts'
import { type ShippedSheet, shippedSheets } from '../sheets/reference/shipped-sheets.ts'
import { compareSheet } from './compare-sheet.ts'
import { knownSheets, readableOwnSheets } from './own-sheets/known-sheets.ts'
import { folderOfSheets } from './own-sheets/sheet-folder.ts'
import type { Program, UseCases } from './program.ts'
import { rowChange, sendCommand } from './send-command.ts'

const hashOf = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex')

const MOST_FAULTS = 5

/** Keeps the very bytes of a sheet in the record, under its name. */
async function take(
  program: Program,
  command: string,
  input: { readonly commandId: string },
  { sheet, bytes }: ShippedSheet,
): Promise<Acknowledgement> {
  const { sheetId, title, edition } = sheet
  const { sha256, byteLength } = await program.record().bytes.put(Readable.from([bytes]))
  return sendCommand(program, command, input, (_draft, at) => ({
    changes: [rowChange('sheets', sheetId, { sheetId, title, edition, sha256, byteLength, takenAt: at })],
    label: `Reference sheet taken in: ${title}, edition ${edition}`,
  }))
}

function shippedSheet(sheetId: string): ShippedSheet {
  const shipped = shippedSheets().find(({ sheet }) => sheet.sheetId === sheetId)
  if (shipped !== undefined) return shipped
  const message = `There is no reference sheet “${sheetId}”. Choose one that is listed.`
  throw new ProblemError('not-found', message, { field: 'sheetId' })
}

type Origin = RequestInput<'sheet.takeOwn'>['source']

async function fileOf(program: Program, source: Origin): Promise<{ readonly path: string; readonly fileName: string }> {
  if (source.from === 'upload') return program.upload(source.upload)
  if (source.from === 'file') return { path: source.path, fileName: basename(source.path) }
  const fileName = `${source.name}.yaml`
  return { path: join(folderOfSheets(program.recordsFolder), fileName), fileName }
}

/** A sheet of the user's own, read and checked; refused with its first faults when it cannot be used. */
async function soundSheet(program: Program, source: Origin): Promise<ShippedSheet> {
  const { path, fileName } = await fileOf(program, source)
  const bytes = await readFile(path).catch((cause: unknown) => {
    throw new ProblemError('not-found', `“${fileName}” cannot be read. Choose the file again.`, {
      field: 'source',
      cause,
    })
  })
  const { sheet, errors } = checkedSheet(bytes, await knownSheets(program.recordsFolder, null))
  if (sheet !== null) return { sheet, bytes }
  const more = errors.length > MOST_FAULTS ? ` And ${errors.length - MOST_FAULTS} more.` : ''
  const message = `“${fileName}” was not taken in. ${errors.slice(0, MOST_FAULTS).join(' ')}${more}`
  throw new ProblemError('input-refused', message, { field: 'source' })
}

/** Reference sheets: which there are, taking one into the record, leaving it out again. */
export const referenceSheetUseCases: Pick<
  UseCases,
  'sheets.offered' | 'sheets.compare' | 'sheet.take' | 'sheet.takeOwn' | 'sheet.leave'
> = {
  'sheets.offered': async (program) => {
    const taken = program.record().view().sheets
    const offered = (
      from: OfferedSheet['from'],
      name: string,
      { sheet: { sheetId, title, edition, about }, bytes }: ShippedSheet,
    ): OfferedSheet => {
      const own = taken.find((copy) => copy.sheetId === sheetId)
      const inRecord = own === undefined ? 'no' : own.sha256 === hashOf(bytes) ? 'this one' : 'another edition'
      return { from, name, sheetId, title, edition, about, inRecord }
    }
    const own = await readableOwnSheets(program.recordsFolder)
    return [
      ...own.map(({ name, ...each }) => offered('own', name, each)),
      ...shippedSheets().map((each) => offered('program', each.sheet.sheetId, each)),
    ]
  },

  'sheet.take': async (program, input) => {
    return take(program, 'sheet.take', input, shippedSheet(input.sheetId))
  },

  'sheet.takeOwn': async (program, input) =>
    take(program, 'sheet.takeOwn', input, await soundSheet(program, input.source)),

  'sheets.compare': async (program, { source }) =>
    compareSheet(program, source.from === 'program' ? shippedSheet(source.sheetId) : await soundSheet(program, source)),

  'sheet.leave': (program, input) =>
    sendCommand(program, 'sheet.leave', input, ({ now }) => {
      const copy = now.sheets.find(({ sheetId }) => sheetId === input.sheetId)
      if (copy === undefined) {
        const message = `The record holds no reference sheet “${input.sheetId}”.`
        throw new ProblemError('not-found', message, { field: 'sheetId' })
      }
      const resting = now.observations.filter(({ tell }) => tell.startsWith(`${copy.sheetId}/`)).length
      if (resting > 0) {
        const message = `${resting} observations speak of tells of this sheet. Withdraw them first, or keep the sheet.`
        throw new ProblemError('rule-of-the-trade', message, { field: 'sheetId' })
      }
      return {
        changes: [rowChange('sheets', copy.sheetId, null)],
        label: `Reference sheet left out: ${copy.title}`,
      }
    }),
}
