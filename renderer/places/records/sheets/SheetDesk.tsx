import { format } from 'date-fns'
import { useEffect, useState } from 'react'
import type { Problem } from '../../../../shared-types/problem.ts'
import type { SheetMessage, TableForm } from '../../../../shared-types/sheet-desk.ts'
import { ActionKey } from '../../../parts-of-page/ActionKey.tsx'
import { ProblemNote } from '../../../parts-of-page/ProblemNote.tsx'
import { useKeys } from '../../../parts-of-page/useKeys.ts'
import { ask, problemOf } from '../../../store/ask.ts'
import { inOrderOfWeight, MessageList } from './MessageList.tsx'
import { SheetTables, type TablePlace } from './SheetTables.tsx'
import { SheetText } from './SheetText.tsx'
import { closeSheet, editSheet, keepNow, type OpenSheet, redoEdit, undoEdit, useSheetDesk } from './sheet-desk-store.ts'
import { TablesInOut } from './TablesInOut.tsx'
import { TryPane } from './TryPane.tsx'
import { useSheetCheck } from './use-sheet-check.ts'
import { writtenTitle } from './written-title.ts'

const START: TablePlace = { table: 'sheet', row: 0, column: 2 }

function keptWords({ history, kept, keptAt }: OpenSheet, keeping: boolean): string {
  if (keeping || history.now !== kept) return 'being kept'
  return keptAt === null ? 'all kept' : `kept ${format(new Date(keptAt), 'HH:mm:ss')}`
}

/** One sheet being written: its tables or its text, what the checker says beside it, every edit kept and undoable. */
export function SheetDesk({ open, forms }: { readonly open: OpenSheet; readonly forms: readonly TableForm[] }) {
  const { problem: notKept, keeping } = useSheetDesk()
  const { now: draft, past, future } = open.history
  const { check, checking, problem, usable } = useSheetCheck(open.name, draft)
  const [beside, setBeside] = useState<'try' | 'spreadsheet' | null>(null)
  const show = (what: 'try' | 'spreadsheet') => () => setBeside((before) => (before === what ? null : what))
  const [at, setAt] = useState(START)
  const [line, setLine] = useState<{ line: number; times: number } | null>(null)
  const [refused, setRefused] = useState<Problem | null>(null)
  useEffect(() => () => void keepNow(), [])
  const turn = () => {
    ask('sheets.turn', { draft }).then(
      (other) => {
        editSheet(other, null)
        setRefused(null)
      },
      (thrown: unknown) => setRefused(problemOf(thrown)),
    )
  }
  const goTo = (message: SheetMessage) => {
    if (message.line !== null) setLine((before) => ({ line: message.line ?? 1, times: (before?.times ?? 0) + 1 }))
    if (message.table === null) return
    const columns = forms.find(({ name }) => name === message.table)?.columns ?? []
    const column = columns.findIndex(({ heading }) => heading === message.column)
    setAt({ table: message.table, row: message.row ?? 0, column: Math.max(0, column) })
  }
  const messages = inOrderOfWeight(check?.messages ?? [])
  const goToNext = () => {
    const heading = forms.find(({ name }) => name === at.table)?.columns[at.column]?.heading
    const here = messages.findIndex(
      ({ table, row, column }) => table === at.table && row === at.row && column === heading,
    )
    const next = messages[(here + 1) % Math.max(1, messages.length)]
    if (next !== undefined) goTo(next)
  }
  const leave = () => void closeSheet()
  useKeys('Reference sheet', [
    { keys: 'Ctrl+Z', does: 'undo the last edit of the sheet', run: undoEdit, whileTyping: true },
    { keys: 'Ctrl+Shift+Z', does: 'do again what was undone', run: redoEdit, whileTyping: true },
    { keys: 'Ctrl+Y', does: 'do again what was undone', run: redoEdit, whileTyping: true, unlisted: true },
    { keys: 'Alt+T', does: 'as text, as tables', run: turn, whileTyping: true },
    { keys: 'Alt+M', does: 'go to the next message', run: goToNext, whileTyping: true },
    { keys: 'Alt+Y', does: 'try the sheet: say what one could see', run: show('try'), whileTyping: true },
    { keys: 'Alt+S', does: 'tables out to a spreadsheet and back in', run: show('spreadsheet'), whileTyping: true },
    { keys: 'Escape', does: 'leave the sheet; everything is kept', run: leave, whileTyping: true },
  ])
  return (
    <div className="sheet-desk">
      <div className="sheet-desk-head">
        <h2>{check?.summary?.title ?? (writtenTitle(draft, forms) || open.name)}</h2>
        <span className="quiet">
          {check?.summary === null || check === null ? '' : `edition ${check.summary.edition}`}
        </span>
        <span className="quiet" aria-live="off">
          {keptWords(open, keeping)}
        </span>
        <span className="sheet-desk-acts">
          <ActionKey keys="Ctrl+Z" label="undo" onAct={undoEdit} disabled={past.length === 0} />
          <ActionKey keys="Ctrl+Shift+Z" label="redo" onAct={redoEdit} disabled={future.length === 0} />
          <ActionKey keys="Alt+M" label="next message" onAct={goToNext} disabled={messages.length === 0} />
          <ActionKey keys="Alt+T" label={draft.written === 'as text' ? 'as tables' : 'as text'} onAct={turn} />
          <ActionKey keys="Alt+Y" label="try it" onAct={show('try')} disabled={usable === null} />
          <ActionKey keys="Alt+S" label="spreadsheet" onAct={show('spreadsheet')} />
          <ActionKey keys="Escape" label="leave" onAct={leave} />
        </span>
      </div>
      <p className="record-path figures">{open.path}</p>
      <ProblemNote problem={notKept ?? refused ?? problem} />
      {open.byHand ? (
        <p className="note">
          Written by hand: comments and arrangement are kept as long as it is written as text. Before it is first kept
          as tables, a copy of the text is put away beside it.
        </p>
      ) : null}
      <div className={beside === 'try' ? 'sheet-desk-columns is-trying' : 'sheet-desk-columns'}>
        {draft.written === 'as text' ? (
          <SheetText text={draft.text} goTo={line} />
        ) : (
          <SheetTables forms={forms} draft={draft} messages={messages} at={at} onGo={setAt} />
        )}
        <div className="sheet-desk-aside">
          {beside === 'try' && usable !== null ? <TryPane name={open.name} draft={usable} /> : null}
          <MessageList check={check} checking={checking} onGo={goTo} />
          {beside === 'spreadsheet' ? <TablesInOut name={open.name} draft={draft} forms={forms} /> : null}
        </div>
      </div>
    </div>
  )
}
