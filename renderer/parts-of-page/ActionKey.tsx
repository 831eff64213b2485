import { KeyCap } from './KeyCap.tsx'

interface ActionKeyProps {
  /** The key that does the same, as registered with `useKeys`; empty where there is none. */
  readonly keys: string
  readonly label: string
  /** Full name for those who do not see the section it stands in: "Add a finding". */
  readonly name?: string
  readonly onAct: () => void
  readonly disabled?: boolean
  /** Puts the words before the cap. */
  readonly wordsFirst?: boolean
}

/** A quiet action: its key cap and a word. */
export function ActionKey({ keys, label, name, onAct, disabled = false, wordsFirst = false }: ActionKeyProps) {
  const cap = keys === '' ? null : <KeyCap keys={keys} />
  return (
    <button type="button" className="action-key" onClick={onAct} disabled={disabled}>
      {wordsFirst ? null : cap}
      <span aria-hidden={name !== undefined}>{label}</span>
      {name === undefined ? null : <span className="unseen">{name}</span>}
      {wordsFirst ? cap : null}
    </button>
  )
}
