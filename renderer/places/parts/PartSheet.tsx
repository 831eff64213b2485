import { useMemo } from 'react'
import type { PartEntry } from '../../../shared-types/part.ts'
import type { PartExpectation } from '../../../shared-types/part-expectation.ts'
import { howLearned, type PartState } from '../../../shared-types/words.ts'
import { CautionLines } from '../../parts-of-page/CautionLines.tsx'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { ExhibitPicker } from '../../parts-of-page/ExhibitPicker.tsx'
import { KeyChoice, type KeyedChoice } from '../../parts-of-page/KeyChoice.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { change } from '../../store/ask.ts'
import { AgainstTheSheet } from './AgainstTheSheet.tsx'
import { CountsWithFields } from './CountsWithFields.tsx'
import { FasteningFields } from './FasteningFields.tsx'
import { groupWords, type PartRow } from './part-rows.ts'

const stateKeys: readonly KeyedChoice<PartState>[] = [
  { choice: 'factory fitted', keys: 'F' },
  { choice: 'period accessory', keys: 'P' },
  { choice: 'right type, wrong date', keys: 'W' },
  { choice: 'new old stock', keys: 'N' },
  { choice: 'reproduction', keys: 'R' },
  { choice: 'later fitment', keys: 'L' },
  { choice: 'home-made', keys: 'H' },
  { choice: 'missing', keys: 'M' },
  { choice: 'not determined', keys: 'D' },
  { choice: 'not seen', keys: 'S' },
]

interface PartSheetProps {
  readonly row: PartRow
  /** Null while it is being computed, and where no sheet says anything. */
  readonly expectation: PartExpectation | null
  /** Why nothing is expected of any part; null when something is. */
  readonly noExpectation: string | null
  readonly readOnly: boolean
  /** Where the part stands in the list: "4 of 21 shown". */
  readonly at: string
  /** One down the list, or one up. */
  readonly onStep: (by: number) => void
  readonly onLeave: () => void
}

const entryFor = ({ entry, definition }: PartRow): PartEntry =>
  entry ?? {
    partId: definition.id,
    state: 'not seen',
    numberAsRead: '',
    dateAsRead: '',
    marks: '',
    expected: '',
    learned: 'seen',
    exhibits: [],
    countsWith: null,
    fastening: null,
    note: '',
  }

/** What there is to check on a part, and with which others it usually comes. */
function PartAdvice({ row }: { readonly row: PartRow }) {
  const { definition } = row
  return (
    <dl className="said-list part-advice">
      <div>
        <dt>Check</dt>
        <dd>{definition.check === '' ? 'nothing special' : definition.check}</dd>
      </div>
      <div>
        <dt>Tell it by</dt>
        <dd>{definition.identifyBy.length === 0 ? 'not listed' : definition.identifyBy.join(', ')}</dd>
      </div>
      <div>
        <dt>Travels with</dt>
        <dd>{groupWords(definition.travelsWith ?? 'nothing: it counts alone')}</dd>
      </div>
      <div>
        <dt>Replaced in service</dt>
        <dd>{definition.replacedInService}</dd>
      </div>
    </dl>
  )
}

/** The part in hand: its state by one key, what was read on it, and on to the next by Enter. */
export function PartSheet({ row, expectation, noExpectation, readOnly, at, onStep, onLeave }: PartSheetProps) {
  const initial = useMemo(() => entryFor(row), [row])
  const entry = useEntry<PartEntry>({
    name: `part ${row.definition.id}`,
    initial,
    keep: (part) => (readOnly ? Promise.resolve() : change('part.set', { entry: part })),
    kept: () => onStep(1),
  })
  const { field } = entry
  useKeys('Part in hand', [
    { keys: 'Enter', does: 'keep, and take the next part', run: () => void entry.keep() },
    { keys: ']', does: 'next part, as it stands', run: () => onStep(1) },
    { keys: '[', does: 'part before', run: () => onStep(-1) },
  ])
  const state = field('state')
  return (
    <EntrySheet title={row.name} over={`${at} · Enter keeps and goes on`} entry={entry} onLeave={onLeave}>
      <KeyChoice
        label="State"
        layout="columns"
        autoFocus
        choices={stateKeys}
        value={state.value}
        onChoose={(chosen) => state.onChange(chosen)}
      />
      <TextField label="Number as read" figures {...field('numberAsRead')} />
      <TextField label="Date as read" figures {...field('dateAsRead')} />
      <TextField label="Marks" {...field('marks')} />
      <TextField label="Expected here" {...field('expected')} />
      <ChoiceField label="How learned" choices={howLearned.options} {...field('learned')} />
      <ExhibitPicker label="Exhibits" {...field('exhibits')} />
      <NoteField label="Note" {...field('note')} />
      {row.definition.group === 'fastenings' ? (
        <FasteningFields value={entry.draft.fastening} onChange={(fastening) => entry.set({ fastening })} />
      ) : null}
      <CountsWithFields
        listed={row.definition.travelsWith}
        value={entry.draft.countsWith}
        onChange={(countsWith) => entry.set({ countsWith })}
        problem={field('countsWith').problem}
      />
      <AgainstTheSheet expectation={expectation} problem={noExpectation} />
      <PartAdvice row={row} />
      <CautionLines of={row.definition.cautions} />
    </EntrySheet>
  )
}
