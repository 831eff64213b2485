import type { ReactNode } from 'react'
import type { ChangeInput, ChangingName } from '../store/ask.ts'
import { useChange } from '../store/use-answer.ts'
import { EditSheet } from './EditSheet.tsx'
import type { Entry } from './useEntry.ts'

type WithdrawName = Extract<ChangingName, `${string}.withdraw`>
/** A command that takes a row out of its register, with what that register knows the row by. */
type Withdrawal = { [N in WithdrawName]: { readonly by: N } & ChangeInput<N> }[WithdrawName]

interface EntrySheetProps<Draft extends object> {
  readonly title: string
  readonly over?: ReactNode
  readonly entry: Entry<Draft>
  readonly onLeave: () => void
  /** What keeping is here, and while it is done, where those are other words. */
  readonly keepWord?: string
  readonly keepingWord?: string
  /** How this row is taken out of its register; null while the row is new. */
  readonly withdraw?: Withdrawal | null
  readonly children: ReactNode
}

/** The sheet of an entry: keeping, leaving, starting over and withdrawing, with its problems, as every form has them. */
export function EntrySheet<Draft extends object>({ entry, withdraw = null, ...sheet }: EntrySheetProps<Draft>) {
  const withdrawal = useChange()
  return (
    <EditSheet
      {...sheet}
      onKeep={() => void entry.keep()}
      problem={entry.problemOfAll ?? withdrawal.problem}
      busy={entry.busy}
      onStartOver={entry.begun ? entry.startOver : undefined}
      {...(withdraw === null
        ? {}
        : {
            onWithdraw: async () => {
              const { by, ...row } = withdraw
              if (await withdrawal.send(by, row as ChangeInput<typeof by>)) sheet.onLeave()
            },
          })}
    />
  )
}
