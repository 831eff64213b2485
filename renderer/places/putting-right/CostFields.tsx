import { DayField } from '../../parts-of-page/DayField.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useRecordStore } from '../../store/record-store.ts'
import type { CostEntry } from './cost-entry.ts'

interface CostFieldsProps {
  readonly value: CostEntry
  readonly problem: string | null
  readonly onChange: (cost: CostEntry) => void
}

/** Low, likely and high, with what they rest on and the day of the prices. */
export function CostFields({ value, problem, onChange }: CostFieldsProps) {
  const currency = useRecordStore((state) => state.record?.commission.currency ?? '')
  const part = (name: 'low' | 'likely' | 'high') => (
    <NumberField
      label={name}
      quantity="plain"
      unit={currency}
      least={0}
      value={value[name]}
      onChange={(amount) => onChange({ ...value, [name]: amount })}
    />
  )
  return (
    <fieldset className="cost-fields">
      <legend>Cost</legend>
      <div className="field-row">
        {part('low')}
        {part('likely')}
        {part('high')}
      </div>
      {problem === null ? null : (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      )}
      <TextField
        label="Basis"
        hint="quotation, hours at a rate, a like job"
        value={value.basis}
        onChange={(basis) => onChange({ ...value, basis })}
      />
      <DayField label="Priced on" value={value.pricedOn} onChange={(pricedOn) => onChange({ ...value, pricedOn })} />
    </fieldset>
  )
}
