import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Acknowledgement, Change, UndoState } from '../../shared-types/record.ts'
import { canonical } from './canonical.ts'
import type { Connection } from './connection.ts'
import { type JournalContent, rowByNumber } from './journal.ts'

/** What undo and redo would act on after a row, in words. At most two look-ups, usually none. */
export async function undoStateAfter(connection: Connection, row: JournalContent): Promise<UndoState> {
  const labelOf = async (number: number | null): Promise<string | null> => {
    if (number === null) return null
    if (number === row.number) return row.label
    return (await rowByNumber(connection, number))?.content.label ?? null
  }
  return { undo: await labelOf(row.undoTop), redo: await labelOf(row.redoTop) }
}

/** What the sender of a command is told. */
export const acknowledgement = (row: JournalContent, undoState: UndoState): Acknowledgement => ({
  journalNumber: row.number,
  at: row.at,
  command: row.command,
  number: row.given,
  // The journal holds the rows as the contract types them; see `asStored`.
  changes: row.changes.map(({ register, key, after }) => ({ register, key, after })) as readonly Change[],
  undoState,
})

/** The first answer once more for a command that was sent again; `command-reused` when it says something else now. */
export async function answerAgain(
  connection: Connection,
  row: JournalContent,
  command: string,
  input: unknown,
): Promise<Acknowledgement> {
  if (row.command !== command || canonical(row.input) !== canonical(input)) {
    throw new ProblemError(
      'command-reused',
      `This command bears the mark of an earlier one (“${row.label}”) but says something else. Nothing was changed; do ` +
        'it again.',
    )
  }
  return acknowledgement(row, await undoStateAfter(connection, row))
}
