import { type RefObject, useRef } from 'react'

interface FileChooserProps {
  /** Where the chooser stands, so that a key or a button can open it. */
  readonly chooser: RefObject<HTMLInputElement | null>
  /** What it chooses, for those who do not see the button. */
  readonly name: string
  /** Kinds of files, as the attribute of the same name lists them. */
  readonly accept: string
  readonly multiple?: boolean
  readonly onFiles: (files: readonly File[]) => void
}

/** The machine's own chooser of files: out of sight, opened by a key or a button, and ready for the same file again. */
export function FileChooser({ chooser, name, accept, multiple = false, onFiles }: FileChooserProps) {
  return (
    <input
      ref={chooser}
      type="file"
      className="unseen"
      aria-label={name}
      accept={accept}
      multiple={multiple}
      tabIndex={-1}
      onChange={(event) => {
        const files = [...(event.target.files ?? [])]
        event.target.value = ''
        if (files.length > 0) onFiles(files)
      }}
    />
  )
}

interface FileChoiceProps extends Omit<FileChooserProps, 'chooser' | 'name'> {
  /** The words of the button. */
  readonly label: string
  readonly disabled?: boolean
}

/** A button in the program's own look that opens the machine's chooser of files. */
export function FileChoice({ label, disabled = false, ...chosen }: FileChoiceProps) {
  const chooser = useRef<HTMLInputElement>(null)
  return (
    <>
      <FileChooser chooser={chooser} name="File kept on this machine" {...chosen} />
      <button type="button" className="answer" onClick={() => chooser.current?.click()} disabled={disabled}>
        {label}
      </button>
    </>
  )
}
