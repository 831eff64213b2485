import { Checkbox } from 'react-aria-components/Checkbox'
import type { FieldProps } from './FieldFrame.tsx'

/** A thing that is so or is not. Space turns it. */
export function YesNoField(props: FieldProps<boolean>) {
  const problem = props.problem ?? null
  return (
    <div className="field field-yes-no">
      <Checkbox
        className="yes-no"
        isSelected={props.value}
        onChange={props.onChange}
        isInvalid={problem !== null}
        isDisabled={props.disabled ?? false}
        autoFocus={props.autoFocus ?? false}
      >
        <span className="yes-no-mark" aria-hidden="true" />
        <span>{props.label}</span>
        {props.keyCap}
      </Checkbox>
      {props.hint === undefined ? null : <p className="field-hint">{props.hint}</p>}
      {problem === null ? null : <p className="field-problem">{problem}</p>}
    </div>
  )
}
