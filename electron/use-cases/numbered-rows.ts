import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Acknowledgement, Change, NumberedRegister, RecordView, RegisterRows } from '../../shared-types/record.ts'
import type { Draft } from '../record/car-record.ts'
import { citedBy } from './citations.ts'
import type { Program } from './program.ts'
import { listOfMarks, rowMark } from './row-marks.ts'
import { type Decision, rowChange, sendCommand } from './send-command.ts'

/** A numbered row, not yet numbered. */
type Unnumbered<R extends NumberedRegister> = Omit<RegisterRows[R], 'number'>

/** How one numbered register is kept: what it is called, what is checked, and what else a row changes. */
export interface NumberedRules<R extends NumberedRegister> {
  readonly register: R
  /** First word of the commands: `finding` gives `finding.add`. */
  readonly command: string
  /** As a label begins: "Finding". */
  readonly noun: string
  /** What the row is, for the label: "filler, Left front wing". */
  describe(row: RegisterRows[R], now: RecordView): string
  /** Throws `ProblemError` when the row breaks a rule; `number` is null for a new row. */
  check(row: Unnumbered<R>, now: RecordView, number: number | null): void
  /** Rows of other registers that change with it. */
  also?(row: RegisterRows[R], now: RecordView, at: string): readonly Change[]
}

/** Finds a numbered row; throws `not-found`. */
export function numberedRow<R extends NumberedRegister>(now: RecordView, register: R, number: number): RegisterRows[R] {
  const rows: readonly { readonly number: number }[] = now[register]
  const found = rows.find((row) => row.number === number)
  if (found === undefined) {
    const message = `There is no ${rowMark(register, number)} in this record. It may have been withdrawn; choose one that is listed.`
    throw new ProblemError('not-found', message, { field: 'number' })
  }
  return found as RegisterRows[R]
}

/** The three acts on a numbered register. A withdrawn number is never given again. */
export function numberedRows<R extends NumberedRegister>(rules: NumberedRules<R>) {
  const { register, command, noun } = rules
  const labelled = (row: RegisterRows[R], act: string, now: RecordView) =>
    `${noun} ${rowMark(register, row.number)} ${act}: ${rules.describe(row, now)}`
  const put = (draft: Unnumbered<R>, number: number, act: string, now: RecordView, at: string) => {
    const row = { ...draft, number } as RegisterRows[R]
    const changes = [rowChange(register, String(number), row), ...(rules.also?.(row, now, at) ?? [])]
    return { changes, label: labelled(row, act, now), number }
  }
  const adding = (row: Unnumbered<R>, draft: Draft, at: string): Decision => {
    rules.check(row, draft.now, null)
    return put(row, draft.take(register), 'added', draft.now, at)
  }
  const amending = (row: Unnumbered<R>, number: number, { now }: Draft, at: string): Decision => {
    numberedRow(now, register, number)
    rules.check(row, now, number)
    return put(row, number, 'amended', now, at)
  }
  return {
    /** What adding and amending a row decide, for registers whose rows hold more than their draft. */
    adding,
    amending,
    add: (program: Program, input: { commandId: string; draft: Unnumbered<R> }): Promise<Acknowledgement> =>
      sendCommand(program, `${command}.add`, input, (draft, at) => adding(input.draft, draft, at)),
    amend: (
      program: Program,
      input: { commandId: string; number: number; draft: Unnumbered<R> },
    ): Promise<Acknowledgement> =>
      sendCommand(program, `${command}.amend`, input, (draft, at) => amending(input.draft, input.number, draft, at)),
    withdraw: (program: Program, input: { commandId: string; number: number }): Promise<Acknowledgement> =>
      sendCommand(program, `${command}.withdraw`, input, ({ now }) => {
        const row = numberedRow(now, register, input.number)
        const citing = citedBy(now, register, input.number)
        if (citing.length > 0) {
          const message = `${rowMark(register, input.number)} is cited by ${listOfMarks(citing)}. Take it out there first, then withdraw it.`
          throw new ProblemError('rule-of-the-trade', message, { field: 'number' })
        }
        return {
          changes: [rowChange(register, String(input.number), null)],
          label: labelled(row, 'withdrawn', now),
          number: input.number,
        }
      }),
  }
}
