import type { ReactNode } from 'react'
import { FieldError } from 'react-aria-components/FieldError'
import { Label } from 'react-aria-components/Label'
import { Text } from 'react-aria-components/Text'

/** What every field takes. `problem` is shown under the field and named to those who do not see it. */
export interface FieldProps<Value> {
  readonly label: string
  readonly value: Value
  readonly onChange: (value: Value) => void
  readonly problem?: string | null | undefined
  /** One line under the field: what is expected, a default that will be taken. */
  readonly hint?: string
  /** Key that goes to the field, shown beside its label. */
  readonly keyCap?: ReactNode
  readonly disabled?: boolean
  readonly autoFocus?: boolean
}

/** Label, control, hint and problem of a field, in that order; stands inside a react-aria field. */
export function FieldFrame(props: {
  readonly label: string
  readonly hint?: string | undefined
  readonly problem?: string | null | undefined
  readonly keyCap?: ReactNode
  readonly children: ReactNode
}) {
  return (
    <>
      <span className="field-label">
        <Label>{props.label}</Label>
        {props.keyCap}
      </span>
      {props.children}
      {props.hint === undefined ? null : (
        <Text slot="description" className="field-hint">
          {props.hint}
        </Text>
      )}
      <FieldError className="field-problem">{props.problem}</FieldError>
    </>
  )
}
