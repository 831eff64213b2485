import { useState } from 'react'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { YesNoField } from '../../parts-of-page/YesNoField.tsx'
import { ShortForm } from './ShortForm.tsx'

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
  return (
    <ShortForm name="Open another record" act="open" does="open" onAct={open} onLeave={onLeave}>
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
    </ShortForm>
  )
}
