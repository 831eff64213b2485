import type { ReactNode } from 'react'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'

interface ShortFormProps {
  /** Name of the form in the list of keys. */
  readonly name: string
  /** Word on the key that acts, and what it does in the list of keys. */
  readonly act: string
  readonly does: string
  readonly onAct: () => void
  readonly onLeave: () => void
  readonly children: ReactNode
}

/** A form of one or two fields beneath a list: Ctrl+Enter acts, Escape leaves. */
export function ShortForm({ name, act, does, onAct, onLeave, children }: ShortFormProps) {
  useKeys(name, [
    { keys: 'Ctrl+Enter', does, run: onAct, whileTyping: true },
    { keys: 'Escape', does: 'leave', run: onLeave, whileTyping: true },
  ])
  return (
    <form
      className="short-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        onAct()
      }}
    >
      {children}
      <div className="place-acts">
        <ActionKey keys="Ctrl+Enter" label={act} onAct={onAct} />
        <ActionKey keys="Escape" label="leave" onAct={onLeave} />
      </div>
    </form>
  )
}
