import { useState } from 'react'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { YesNoField } from '../../parts-of-page/YesNoField.tsx'

interface OpenByPathProps {
  readonly onOpen: (path: string, readOnly: boolean) => void
  readonly onLeave: () => void
}

/** Opens a record that is not in the list, by the path of its file. */
export function OpenByPath({ onOpen, onLeave }: OpenByPathProps) {
  const [path, setPath] = useState('')
  const [readOnly, setReadOnly] = useState(false)
  const [asked, setAsked] = useState(false)
  const open = () => {
    setAsked(true)
    if (path.trim() !== '') onOpen(path.trim(), readOnly)
  }
  useKeys('Open another record', [
    { keys: 'Ctrl+Enter', does: 'open', run: open, whileTyping: true },
    { keys: 'Escape', does: 'leave', run: onLeave, whileTyping: true },
  ])
  return (
    <form
      className="open-by-path"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        open()
      }}
    >
      <TextField
        label="Where the record is kept"
        figures
        autoFocus
        value={path}
        onChange={setPath}
        hint="the whole name of the file; it ends in .wmk"
        problem={asked && path.trim() === '' ? 'Write where the record is kept.' : null}
      />
      <YesNoField
        label="for reading only"
        hint="nothing can be changed; another program may go on writing"
        value={readOnly}
        onChange={setReadOnly}
      />
      <div className="place-acts">
        <ActionKey keys="Ctrl+Enter" label="open" onAct={open} />
        <ActionKey keys="Escape" label="leave" onAct={onLeave} />
      </div>
    </form>
  )
}
