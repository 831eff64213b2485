import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { basename } from 'node:path'
import { Readable } from 'node:stream'
import type { OfferedSheet } from '../../shared-types/identity-view.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Acknowledgement } from '../../shared-types/record.ts'
import { checkedSheet } from '../sheets/reference/sheet-from-bytes.ts'
import { type ShippedSheet, shippedSheets } from '../sheets/reference/shipped-sheets.ts'
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

/** Reference sheets: which there are, taking one into the record, leaving it out again. */
export const referenceSheetUseCases: Pick<UseCases, 'sheets.offered' | 'sheet.take' | 'sheet.takeOwn' | 'sheet.leave'> =
  {
    'sheets.offered': async (program) => {
      const taken = program.record().view().sheets
      return shippedSheets().map(({ sheet: { sheetId, title, edition, about }, bytes }): OfferedSheet => {
        const own = taken.find((copy) => copy.sheetId === sheetId)
        const inRecord = own === undefined ? 'no' : own.sha256 === hashOf(bytes) ? 'this one' : 'another edition'
        return { sheetId, title, edition, about, inRecord }
      })
    },

    'sheet.take': async (program, input) => {
      const shipped = shippedSheets().find(({ sheet }) => sheet.sheetId === input.sheetId)
      if (shipped === undefined) {
        const message = `There is no reference sheet “${input.sheetId}”. Choose one that is listed.`
        throw new ProblemError('not-found', message, { field: 'sheetId' })
      }
      return take(program, 'sheet.take', input, shipped)
    },

    'sheet.takeOwn': async (program, input) => {
      const { source } = input
      const { path, fileName } =
        source.from === 'upload'
          ? await program.upload(source.upload)
          : { path: source.path, fileName: basename(source.path) }
      const bytes = await readFile(path).catch((cause: unknown) => {
        throw new ProblemError('not-found', `“${fileName}” cannot be read. Choose the file again.`, {
          field: 'source',
          cause,
        })
      })
      const known = new Map(shippedSheets().map(({ sheet }) => [sheet.sheetId, sheet]))
      const { sheet, errors } = checkedSheet(bytes, known)
      if (sheet === null) {
        const more = errors.length > MOST_FAULTS ? ` And ${errors.length - MOST_FAULTS} more.` : ''
        const message = `“${fileName}” was not taken in. ${errors.slice(0, MOST_FAULTS).join(' ')}${more}`
        throw new ProblemError('input-refused', message, { field: 'source' })
      }
      return take(program, 'sheet.takeOwn', input, { sheet, bytes })
    },

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
