import { type Claim, type ClaimDraft, claimDraft } from '../../../shared-types/claim.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { verdict } from '../../../shared-types/words.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { DayField } from '../../parts-of-page/DayField.tsx'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { ExhibitPicker } from '../../parts-of-page/ExhibitPicker.tsx'
import { FindingPicker } from '../../parts-of-page/FindingPicker.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import { useRecordStore } from '../../store/record-store.ts'
import type { FormOfRow } from './form-props.ts'
import { ReliabilityField } from './ReliabilityField.tsx'
import { SaysField } from './SaysField.tsx'

const empty: ClaimDraft = {
  words: '',
  who: '',
  kind: 'seller',
  on: null,
  where: '',
  repeats: null,
  question: '',
  ifTrue: '',
  ifNot: '',
  takenAsGiven: '',
  verdict: 'not settled',
  strength: 'not stated',
  reasons: '',
  setAside: '',
  wouldSettle: '',
  asserts: [],
  reliability: null,
  findings: [],
  exhibits: [],
}

/** A claim that speaks of something must say what of it. */
function requireValues({ asserts }: ClaimDraft): void {
  if (asserts.every(({ values }) => values.length > 0)) return
  const message = 'Choose at least one value of each thing it speaks of, or take that thing out.'
  throw new ProblemError('input-refused', message, { field: 'asserts' })
}

const firstSource = 'first source'

function RepeatsField(props: {
  readonly own: number | null
  readonly value: number | null
  readonly problem: string | null
  readonly onChange: (repeats: number | null) => void
}) {
  const claims = useRecordStore((state) => state.record?.claims)
  const others = (claims ?? []).filter((claim) => claim.number !== props.own)
  return (
    <ChoiceField
      label="Source"
      choices={[firstSource, ...others.map((claim) => String(claim.number))]}
      wordsFor={(choice) => {
        const claim = others.find((other) => String(other.number) === choice)
        return claim === undefined ? firstSource : `repeats C ${claim.number}: ${claim.words.slice(0, 60)}`
      }}
      value={props.value === null ? firstSource : String(props.value)}
      onChange={(choice) => props.onChange(choice === firstSource ? null : Number(choice))}
      hint="a repeated claim is no second witness"
      problem={props.problem}
    />
  )
}

/** Adds or amends a claim: the words first, the question before the looking, the verdict after it. */
export function ClaimForm({ row, focusOn, onLeave }: FormOfRow<Claim>) {
  const { number, ...initial } = row ?? { ...empty, number: null }
  const entry = useEntry<ClaimDraft>({
    name: number === null ? 'claim.add' : `claim.amend ${number}`,
    initial,
    focusOn,
    keep: (draft) => {
      requireValues(draft)
      return number === null ? change('claim.add', { draft }) : change('claim.amend', { number, draft })
    },
    kept: onLeave,
  })
  const { field } = entry
  return (
    <EntrySheet
      title={number === null ? 'A claim' : `Claim C ${number}`}
      over="who said what; then what would show it"
      entry={entry}
      onLeave={onLeave}
      withdraw={number === null ? null : { by: 'claim.withdraw', number }}
    >
      <NoteField label="The words, as said or written" autoFocus rows={2} {...field('words')} />
      <TextField label="Who says so" {...field('who')} />
      <ChoiceField label="Kind of source" choices={claimDraft.shape.kind.options} {...field('kind')} />
      <DayField label="On" {...field('on')} />
      <TextField label="Where" {...field('where')} />
      <SaysField
        value={entry.draft.asserts}
        onChange={(asserts) => entry.set({ asserts })}
        problem={field('asserts').problem}
      />
      <RepeatsField own={number} {...field('repeats')} />
      <ReliabilityField
        draft={entry.draft}
        problem={field('reliability').problem}
        onChange={field('reliability').onChange}
      />
      <NoteField label="Question it answers" {...field('question')} />
      <NoteField label="If true, one would see" {...field('ifTrue')} />
      <NoteField label="If not, one would see" hint="the two must exclude each other" {...field('ifNot')} />
      <NoteField label="Taken as given" {...field('takenAsGiven')} />
      <ChoiceField label="Verdict" choices={verdict.options} {...field('verdict')} />
      <ChoiceField
        label="Strength of the findings for it"
        choices={claimDraft.shape.strength.options}
        {...field('strength')}
      />
      <NoteField label="Reasons" {...field('reasons')} />
      <FindingPicker label="Findings" {...field('findings')} />
      <ExhibitPicker label="Exhibits" {...field('exhibits')} />
      <NoteField label="Set aside, and why" {...field('setAside')} />
      <NoteField label="What would settle it" {...field('wouldSettle')} />
    </EntrySheet>
  )
}
