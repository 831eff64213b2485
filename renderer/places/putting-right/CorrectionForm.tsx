import { type Correction, type CorrectionDraft, correctionDraft } from '../../../shared-types/correction.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { DayField } from '../../parts-of-page/DayField.tsx'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { ExhibitPicker } from '../../parts-of-page/ExhibitPicker.tsx'
import { FindingPicker } from '../../parts-of-page/FindingPicker.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import { CoatingCited } from './CoatingCited.tsx'
import { CostFields } from './CostFields.tsx'
import { type CostEntry, costEntryOf, costOf } from './cost-entry.ts'

/** A correction as it stands in the form; its cost is typed number by number. */
type CorrectionEntry = Omit<CorrectionDraft, 'cost'> & { readonly cost: CostEntry }

const empty: CorrectionDraft = {
  what: '',
  group: 'metal',
  findings: [],
  state: 'planned',
  cost: null,
  by: '',
  materials: '',
  doneOn: null,
  removedPartsKept: '',
  reversible: 'not determined',
  verifiedBy: '',
  verifiedOn: null,
  exhibitsBefore: [],
  exhibitsAfter: [],
  findingsAfter: [],
  coating: null,
  note: '',
}

/** A correction as it is asked for: its readings by their numbers. */
function draftOf({ number: _, coating, ...rest }: Correction): CorrectionDraft {
  const numbers = (spots: readonly { readonly number: number }[]) => spots.map(({ number }) => number)
  return {
    ...rest,
    coating:
      coating === null
        ? null
        : { panelId: coating.panelId, before: numbers(coating.before), after: numbers(coating.after) },
  }
}

/** Adds or amends a correction. What was done and who verified it are asked only once it has come that far. */
export function CorrectionForm({ row, onLeave }: { readonly row: Correction | null; readonly onLeave: () => void }) {
  const number = row?.number ?? null
  const initial = row === null ? empty : draftOf(row)
  const entry = useEntry<CorrectionEntry>({
    name: number === null ? 'correction.add' : `correction.amend ${number}`,
    initial: { ...initial, cost: costEntryOf(initial.cost) },
    keep: async (said) => {
      const draft = { ...said, cost: costOf(said.cost) }
      await (number === null ? change('correction.add', { draft }) : change('correction.amend', { number, draft }))
    },
    kept: onLeave,
  })
  const { field, draft } = entry
  return (
    <EntrySheet
      title={number === null ? 'A correction' : `Correction K ${number}`}
      over="planned, done, verified"
      entry={entry}
      onLeave={onLeave}
      withdraw={number === null ? null : { by: 'correction.withdraw', number }}
    >
      <TextField label="What puts it right" required autoFocus {...field('what')} />
      <ChoiceField label="Group" choices={correctionDraft.shape.group.options} {...field('group')} />
      <FindingPicker label="Findings it answers" {...field('findings')} />
      <ChoiceField
        label="State"
        choices={correctionDraft.shape.state.options}
        hint="verified needs a later exhibit, reading or finding"
        {...field('state')}
      />
      <CostFields
        value={draft.cost}
        problem={entry.problem?.field?.startsWith('cost') === true ? entry.problem.message : null}
        onChange={(cost) => entry.set({ cost })}
      />
      <ExhibitPicker label="Exhibits before" {...field('exhibitsBefore')} />
      <CoatingCited {...field('coating')} doneOn={draft.doneOn} />
      {draft.state === 'planned' ? null : (
        <>
          <TextField label="Done by" {...field('by')} />
          <DayField label="Done on" {...field('doneOn')} />
          <TextField label="Materials" {...field('materials')} />
          <TextField label="Removed parts kept" hint="where" {...field('removedPartsKept')} />
          <ChoiceField
            label="Can it be undone"
            choices={correctionDraft.shape.reversible.options}
            {...field('reversible')}
          />
          <ExhibitPicker label="Exhibits after" {...field('exhibitsAfter')} />
          <FindingPicker label="Findings after" {...field('findingsAfter')} />
        </>
      )}
      {draft.state === 'verified' ? (
        <>
          <TextField label="Verified by" {...field('verifiedBy')} />
          <DayField label="Verified on" {...field('verifiedOn')} />
        </>
      ) : null}
      <NoteField label="Note" {...field('note')} />
    </EntrySheet>
  )
}
