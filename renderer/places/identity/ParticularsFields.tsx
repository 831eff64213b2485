import type { Particulars } from '../../../shared-types/car.ts'
import type { NameChoice } from '../../../shared-types/words.ts'
import type { BindField } from '../../parts-of-page/bind-part.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { DayField } from '../../parts-of-page/DayField.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import { bodiesOffered, bodyWords } from './body-words.ts'

interface ParticularsFieldsProps {
  readonly field: BindField<Particulars>
  readonly names: NameChoice
}

/** What the survey cannot begin without: what the car is called, its body, its driver's side. */
export function FirstParticulars({ field, names }: ParticularsFieldsProps) {
  return (
    <>
      <TextField
        label="Title"
        required
        hint="stands at the head of every page, such as: Sedge coupé, 1960"
        {...field('title')}
      />
      <ChoiceField
        label="Body"
        choices={bodiesOffered}
        wordsFor={(body) => bodyWords(body, names)}
        {...field('body')}
      />
      <ChoiceField
        label="Steering"
        choices={['left', 'right']}
        wordsFor={(side) => `on the ${side}`}
        hint="left and right are always seen from the driver’s seat"
        {...field('steering')}
      />
      <TextField label="Market of first sale" hint="as told; empty when nobody knows" {...field('marketOfFirstSale')} />
    </>
  )
}

/** The rest of the particulars: who made it, of what, when, and on what grounds. */
export function FurtherParticulars({ field }: Pick<ParticularsFieldsProps, 'field'>) {
  return (
    <>
      <TextField label="Maker" {...field('maker')} />
      <TextField label="Line" {...field('line')} />
      <TextField label="Colour now" {...field('colourNow')} />
      <DayField label="Built from" edge="first" {...field('builtFrom')} />
      <DayField label="Built to" edge="last" {...field('builtTo')} />
      <NoteField label="Grounds of the build interval" {...field('builtGrounds')} />
      <NoteField label="Construction and materials" {...field('construction')} />
      <NoteField label="History as told" {...field('history')} />
    </>
  )
}
