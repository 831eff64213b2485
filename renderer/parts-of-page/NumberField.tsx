import { useState } from 'react'
import { Input } from 'react-aria-components/Input'
import { TextField as AriaTextField } from 'react-aria-components/TextField'
import { type LengthUnit, MM_PER_INCH, UM_PER_MIL } from '../../shared-types/units.ts'
import { useRecordStore } from '../store/record-store.ts'
import { FieldFrame, type FieldProps } from './FieldFrame.tsx'
import { typedNumber } from './figure-text.ts'

interface NumberFieldProps extends FieldProps<number | null> {
  /** `length` is stored in mm and `coating` in µm, whatever unit is shown; anything else is stored as typed. */
  readonly quantity: 'length' | 'coating' | 'plain'
  /** Unit printed behind a plain number: `%`, `years`. */
  readonly unit?: string
  /** Unit in which a length is shown where no record is open yet; else the record says it. */
  readonly lengthUnit?: LengthUnit
  readonly least?: number
  readonly most?: number
}

/** Figures that survive the way back: 3.5 in is 88.9 mm, not 88.89999999999999. */
const exact = (value: number): number => Number(value.toFixed(6))

function shownAs(value: number | null, factor: number): string {
  return value === null ? '' : String(Number((value / factor).toFixed(factor === 1 ? 6 : 4)))
}

function useUnit({ quantity, unit = '', lengthUnit: chosen }: NumberFieldProps): { factor: number; unit: string } {
  const recorded = useRecordStore((state) => state.record?.commission.lengthUnit ?? 'mm')
  const lengthUnit = chosen ?? recorded
  const coatingUnit = useRecordStore((state) => state.record?.commission.coatingUnit ?? 'µm')
  if (quantity === 'length') return { factor: lengthUnit === 'in' ? MM_PER_INCH : 1, unit: lengthUnit }
  if (quantity === 'coating') return { factor: coatingUnit === 'mil' ? UM_PER_MIL : 1, unit: coatingUnit }
  return { factor: 1, unit }
}

/** A number with its unit. Keeps what was typed on screen; hands on the exact value, or null while it is no number. */
export function NumberField(props: NumberFieldProps) {
  const { factor, unit } = useUnit(props)
  const [typed, setTyped] = useState(() => shownAs(props.value, factor))
  const read = typedNumber(typed)
  const held = read === null ? null : exact(read * factor)
  const shown = held === props.value ? typed : shownAs(props.value, factor)
  const noNumber = typed.trim() !== '' && read === null && props.value === null
  const outside =
    held !== null &&
    ((props.least !== undefined && held < props.least) || (props.most !== undefined && held > props.most))
  const bound = held !== null && props.least !== undefined && held < props.least ? props.least : (props.most ?? 0)
  const problem =
    props.problem ??
    (noNumber
      ? 'Type a number, such as 12.5 or 3 1/2.'
      : outside
        ? `This must be ${[shownAs(bound, factor), unit].join(' ').trim()} or ${held > bound ? 'less' : 'more'}.`
        : null)
  return (
    <AriaTextField
      className="field field-number"
      value={noNumber ? typed : shown}
      onChange={(text) => {
        setTyped(text)
        const next = typedNumber(text)
        props.onChange(next === null ? null : exact(next * factor))
      }}
      isInvalid={problem !== null}
      isDisabled={props.disabled ?? false}
      autoFocus={props.autoFocus ?? false}
      validationBehavior="aria"
    >
      <FieldFrame label={unit === '' ? props.label : `${props.label}, ${unit}`} hint={props.hint} problem={problem}>
        <Input
          className="field-input figures"
          inputMode="decimal"
          autoComplete="off"
          data-unread={noNumber || outside || undefined}
        />
      </FieldFrame>
    </AriaTextField>
  )
}
