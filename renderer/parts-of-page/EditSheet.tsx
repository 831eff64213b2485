import { type ReactNode, useEffect, useRef } from 'react'
import type { Problem } from '../../shared-types/problem.ts'
import { ActionKey } from './ActionKey.tsx'
import { ProblemNote } from './ProblemNote.tsx'
import { useFaultyFirst } from './useFaultyFirst.ts'
import { useKeys } from './useKeys.ts'

interface EditSheetProps {
  readonly title: string
  /** A line over the title: which row, which panel. */
  readonly over?: ReactNode
  readonly onKeep: () => void
  readonly onLeave: () => void
  /** The problem that belongs to no field. */
  readonly problem: Problem | null
  readonly onInstead?: (choice: string) => void
  readonly busy?: boolean
  /** What keeping is here, where that is another word. */
  readonly keepWord?: string
  /** What is said while that is being done. */
  readonly keepingWord?: string
  /** Takes the row out of the register; its number is never used again. */
  readonly onWithdraw?: () => void
  /** Throws away what was typed; offered while something is. */
  readonly onStartOver?: (() => void) | undefined
  readonly children: ReactNode
}

/** The right-hand sheet with a form in it. Ctrl Enter keeps, Esc leaves; what was typed stays for the next time. */
export function EditSheet(props: EditSheetProps) {
  const { keepWord = 'keep', keepingWord = 'keeping' } = props
  const sheet = useRef<HTMLElement>(null)
  const unlessFaulty = useFaultyFirst(sheet)
  const keep = () => unlessFaulty(props.onKeep)
  useKeys(
    props.title,
    [
      { keys: 'Ctrl+Enter', does: keepWord, run: keep, whileTyping: true },
      { keys: 'Escape', does: 'leave; what was typed stays', run: props.onLeave, whileTyping: true },
    ],
    true,
  )
  useEffect(() => {
    const before = document.activeElement
    if (!sheet.current?.contains(before)) {
      sheet.current?.querySelector<HTMLElement>('form input, form textarea, form button:not([hidden])')?.focus()
    } else {
      // A field that took the focus by itself did not bring the view along.
      before?.scrollIntoView({ block: 'nearest' })
    }
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus()
    }
  }, [])
  return (
    <section ref={sheet} className="edit-sheet" aria-label={props.title}>
      <div className="sheet-over">{props.over}</div>
      <h2 className="sheet-title">{props.title}</h2>
      <form
        className="edit-form"
        onSubmit={(event) => {
          event.preventDefault()
          keep()
        }}
        noValidate
      >
        {props.children}
        <button type="submit" hidden>
          {keepWord}
        </button>
      </form>
      <ProblemNote problem={props.problem} {...(props.onInstead === undefined ? {} : { onInstead: props.onInstead })} />
      <div className="sheet-acts">
        <ActionKey keys="Ctrl+Enter" label={props.busy === true ? keepingWord : keepWord} onAct={keep} />
        <ActionKey keys="Escape" label="leave" onAct={props.onLeave} />
        {props.onStartOver === undefined ? null : (
          <ActionKey keys="" label="start over" name="Throw away what was typed" onAct={props.onStartOver} />
        )}
        {props.onWithdraw === undefined ? null : (
          <ActionKey keys="" label="withdraw" name={`Withdraw: ${props.title}`} onAct={props.onWithdraw} />
        )}
      </div>
    </section>
  )
}
