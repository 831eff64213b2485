import { useState } from 'react'
import { Input } from 'react-aria-components/Input'
import { TextField as AriaTextField } from 'react-aria-components/TextField'
import { exactMetric, shownUnit } from '../../shared-types/shown-measure.ts'
import type { LengthUnit } from '../../shared-types/units.ts'
import { useShownUnits } from '../store/shown-units.ts'
import { FieldFrame, type FieldProps } from './FieldFrame.tsx'
import { typedNumber } from './figure-text.ts'

interface NumberFieldProps extends FieldProps<number | null> {
  /**
   * `length` is stored in mm, `coating` in µm and `measured` in `unit`, each shown and typed in the unit of the record;
   * anything else is stored as typed.
   */
  readonly quantity: 'length' | 'coating' | 'measured' | 'plain'
  /** Unit printed behind a plain number, `%`, `years`; that a measured one is stored in, `mm²`, `°`. */
  readonly unit?: string
  /** Most decimals a stored value is shown with, where fewer than tell every value apart make sense. */
  readonly decimals?: Readonly<Record<LengthUnit, number>>
  /** Unit in which a length is shown where no record is open yet; else the record says it. */
  readonly lengthUnit?: LengthUnit
  readonly least?: number
  readonly most?: number
}

const MOST_DECIMALS = { metric: 6, inches: 4 } as const

function useUnit({ quantity, unit = '', lengthUnit, decimals }: NumberFieldProps) {
  const recorded = useShownUnits()
  const kept = quantity === 'length' ? 'mm' : quantity === 'coating' ? 'µm' : unit
  const units = { ...recorded, lengthUnit: lengthUnit ?? recorded.lengthUnit }
  const shown = quantity === 'plain' ? { unit, per: 1 } : shownUnit(kept, units)
  const most = decimals?.[units.lengthUnit] ?? (shown.per === 1 ? MOST_DECIMALS.metric : MOST_DECIMALS.inches)
  return {
    ...shown,
    words: (value: number | null) => (value === null ? '' : String(Number((value / shown.per).toFixed(most)))),
  }
}

/** A number with its unit. Keeps what was typed on screen; hands on the exact value, or null while it is no number. */
export function NumberField(props: NumberFieldProps) {
  const { per, unit, words } = useUnit(props)
  const [typed, setTyped] = useState(() => words(props.value))
  const read = typedNumber(typed)
  const held = read === null ? null : exactMetric(read * per)
  // What is shown rounded comes back with another last digit: what was typed stays while it is the same as shown.
  const shown = held === props.value || words(held) === words(props.value) ? typed : words(props.value)
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
        ? `This must be ${[words(bound), unit].join(' ').trim()} or ${held > bound ? 'less' : 'more'}.`
        : null)
  return (
    <AriaTextField
      className="field field-number"
      value={noNumber ? typed : shown}
      onChange={(text) => {
        setTyped(text)
        const next = typedNumber(text)
        props.onChange(next === null ? null : exactMetric(next * per))
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
