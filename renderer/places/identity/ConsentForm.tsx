import type { Consent } from '../../../shared-types/car.ts'
import { intrusiveStep } from '../../../shared-types/words.ts'
import { DayField } from '../../parts-of-page/DayField.tsx'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { YesNoField } from '../../parts-of-page/YesNoField.tsx'
import { change } from '../../store/ask.ts'
import { stepWords } from '../records/inspection-levels.ts'

interface ConsentFormProps {
  readonly step: string
  readonly row: Consent | null
  readonly onLeave: () => void
}

/** The owner's leave for one step: given or not, by whom, and what was done under it. */
export function ConsentForm({ step, row, onLeave }: ConsentFormProps) {
  const named = intrusiveStep.parse(step)
  const entry = useEntry<Consent>({
    name: `consent ${step}`,
    initial: row ?? { step: named, given: false, by: '', on: null, done: '' },
    keep: (consent) => change('consent.set', { consent }),
    kept: onLeave,
  })
  return (
    <EntrySheet title={`Leave to ${named}`} over={stepWords[named]} entry={entry} onLeave={onLeave}>
      <YesNoField label="given" autoFocus {...entry.field('given')} />
      <TextField label="By" {...entry.field('by')} />
      <DayField label="On" {...entry.field('on')} />
      <NoteField
        label="What was done under it"
        hint="what was disturbed, where, and how it was made good"
        {...entry.field('done')}
      />
    </EntrySheet>
  )
}
