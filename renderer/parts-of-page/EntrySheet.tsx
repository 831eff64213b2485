import type { ReactNode } from 'react'
import type { ChangingName } from '../store/ask.ts'
import { useChange } from '../store/use-answer.ts'
import { EditSheet } from './EditSheet.tsx'
import type { Entry } from './useEntry.ts'

interface EntrySheetProps<Draft extends object> {
  readonly title: string
  readonly over?: ReactNode
  readonly entry: Entry<Draft>
  readonly onLeave: () => void
  /** The command that takes this row out of its register, and the row's number; null while the row is new. */
  readonly withdraw?: { readonly by: Extract<ChangingName, `${string}.withdraw`>; readonly number: number } | null
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
              if (await withdrawal.send(withdraw.by, { number: withdraw.number })) sheet.onLeave()
            },
          })}
    />
  )
}
