import { Input } from 'react-aria-components/Input'
import { TextArea } from 'react-aria-components/TextArea'
import { TextField as AriaTextField } from 'react-aria-components/TextField'
import { FieldFrame, type FieldProps } from './FieldFrame.tsx'

interface LineProps extends FieldProps<string> {
  /** Figures, numbers as read: set in the figure face. */
  readonly figures?: boolean
  readonly required?: boolean
  /** What stands in the field could not be read in full, so that a form with it must not be kept. */
  readonly unread?: boolean
}

/** One line of text. */
export function TextField(props: LineProps) {
  const problem = props.problem ?? null
  return (
    <AriaTextField
      className="field"
      value={props.value}
      onChange={props.onChange}
      isInvalid={problem !== null}
      isRequired={props.required ?? false}
      isDisabled={props.disabled ?? false}
      autoFocus={props.autoFocus ?? false}
      validationBehavior="aria"
    >
      <FieldFrame label={props.label} hint={props.hint} problem={problem} keyCap={props.keyCap}>
        <Input
          className={props.figures === true ? 'field-input figures' : 'field-input'}
          autoComplete="off"
          data-unread={props.unread === true || undefined}
        />
      </FieldFrame>
    </AriaTextField>
  )
}

interface NoteProps extends FieldProps<string> {
  readonly rows?: number
  /** Enter keeps the form instead of beginning a line; Shift Enter still begins one. */
  readonly onEnter?: () => void
}

/** A note of any length; grows with its text. */
export function NoteField(props: NoteProps) {
  const problem = props.problem ?? null
  return (
    <AriaTextField
      className="field"
      value={props.value}
      onChange={props.onChange}
      isInvalid={problem !== null}
      isDisabled={props.disabled ?? false}
      autoFocus={props.autoFocus ?? false}
      validationBehavior="aria"
    >
      <FieldFrame label={props.label} hint={props.hint} problem={problem} keyCap={props.keyCap}>
        <TextArea
          className="field-input field-note"
          rows={props.rows ?? 2}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || event.shiftKey || event.ctrlKey || props.onEnter === undefined) return
            event.preventDefault()
            props.onEnter()
          }}
        />
      </FieldFrame>
    </AriaTextField>
  )
}
