import type { Acknowledgement, Change, RegisterName, RegisterRows } from '../../shared-types/record.ts'
import type { CommandOutcome, Draft } from '../record/car-record.ts'
import type { Program } from './program.ts'

/** What a command decides, before the common parts are filled in; undoable unless it says otherwise. */
export interface Decision {
  readonly changes: readonly Change[]
  readonly label: string
  readonly number?: number
}

/** Sends one command to the open record in the examiner's name. `decide` is pure and throws `ProblemError` to refuse. */
export function sendCommand(
  program: Program,
  name: string,
  { commandId, ...input }: { readonly commandId: string } & Readonly<Record<string, unknown>>,
  decide: (draft: Draft, at: string) => Decision,
): Promise<Acknowledgement> {
  const record = program.record()
  const at = program.now()
  return record.commit({
    commandId,
    name,
    who: record.view().commission.examiner,
    at,
    input,
    decide: (draft): CommandOutcome => {
      const { changes, label, number = null } = decide(draft, at)
      return { changes, label, number, undoable: true }
    },
  })
}

/** One row as a command leaves it; null when the row goes. */
export function rowChange<R extends RegisterName>(register: R, key: string, after: RegisterRows[R] | null): Change {
  return { register, key, after } as Change
}
