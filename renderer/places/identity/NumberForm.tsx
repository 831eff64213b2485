import { type CarNumber, type CarNumberDraft, carNumberDraft } from '../../../shared-types/car.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { ExhibitPicker } from '../../parts-of-page/ExhibitPicker.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import { useAnswer } from '../../store/use-answer.ts'
import type { FormOfRow } from './form-props.ts'
import { agreementOf } from './number-agreement.ts'

const empty: CarNumberDraft = {
  kind: '',
  where: '',
  howRead: 'read character by character',
  asRead: '',
  onPaper: '',
  paper: '',
  exhibits: [],
  note: '',
}

/** Adds or amends a number: what paper says, what was read, and how. */
export function NumberForm(
  props: FormOfRow<CarNumber> & {
    /** Changes when the record's sheets do. */
    readonly follows: unknown
  },
) {
  const { row, onLeave } = props
  const { number, ...initial } = row ?? { ...empty, number: null }
  const entry = useEntry<CarNumberDraft>({
    name: number === null ? 'carNumber.add' : `carNumber.amend ${number}`,
    initial,
    focusOn: props.focusOn,
    keep: (draft) =>
      number === null ? change('carNumber.add', { draft }) : change('carNumber.amend', { number, draft }),
    kept: onLeave,
  })
  const { field } = entry
  const { word, detail } = agreementOf(entry.draft)
  const { value: terms } = useAnswer('sheets.terms', {}, props.follows)
  const known = terms?.flatMap(({ numbers }) => numbers) ?? []
  return (
    <EntrySheet
      title={number === null ? 'A number' : `Number N ${number}`}
      over="read it where it stands; never scrape, sand, etch or heat a number"
      entry={entry}
      onLeave={onLeave}
      withdraw={number === null ? null : { by: 'carNumber.withdraw', number }}
    >
      <TextField
        label="What number"
        required
        autoFocus
        hint={
          known.length === 0
            ? 'chassis plate, engine stamp, gearbox'
            : `named so, the sheet reads it whatever its form: ${known.join(', ')}`
        }
        {...field('kind')}
      />
      <TextField label="Where on the car" {...field('where')} />
      <TextField label="On paper" figures hint="letter for letter" {...field('onPaper')} />
      <TextField label="Which paper" {...field('paper')} />
      <ChoiceField label="How read" choices={carNumberDraft.shape.howRead.options} {...field('howRead')} />
      <TextField
        label="As read"
        figures
        hint="letter for letter, as it stands; ? for each one that cannot be read"
        {...field('asRead')}
      />
      <p className="note" role="status">
        {word}
        {detail === '' ? '' : `: ${detail}`}. Spaces are ignored; nothing else is.
      </p>
      <ExhibitPicker label="Exhibits" {...field('exhibits')} />
      <NoteField label="Note" hint="spacing, depth, surface, rivets, paint" {...field('note')} />
    </EntrySheet>
  )
}
