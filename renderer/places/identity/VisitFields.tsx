import { type VisitDraft, visitDraft } from '../../../shared-types/car.ts'
import type { BindField } from '../../parts-of-page/bind-part.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import { TimeField } from './TimeField.tsx'

interface VisitFieldsProps {
  readonly field: BindField<VisitDraft>
}

/** Where the car stands and how it can be seen: these limit what can be found. */
export function FirstVisitFields({ field }: VisitFieldsProps) {
  return (
    <>
      <TextField label="Place" {...field('place')} />
      <TextField label="Light" hint="even light shows most; sun and showroom lamps hide work" {...field('light')} />
      <ChoiceField label="Surface" choices={visitDraft.shape.surface.options} {...field('surface')} />
      <ChoiceField label="Standing" choices={visitDraft.shape.support.options} {...field('support')} />
    </>
  )
}

/** The rest of a visit. */
export function FurtherVisitFields({ field }: VisitFieldsProps) {
  const began = field('beganAt')
  return (
    <>
      <TimeField
        label="Began"
        value={began.value}
        problem={began.problem}
        onChange={(at) => began.onChange(at ?? began.value)}
      />
      <TimeField label="Ended" {...field('endedAt')} />
      <TextField label="Weather" {...field('weather')} />
      <NumberField label="Temperature" quantity="plain" unit="°C" least={-60} most={70} {...field('temperatureC')} />
      <TextField label="Present" {...field('present')} />
      <TextField label="Odometer" figures hint="as read; it says nothing alone" {...field('odometer')} />
      <NoteField
        label="State on arrival"
        hint="marks already there, what is locked or covered"
        {...field('stateOnArrival')}
      />
    </>
  )
}
