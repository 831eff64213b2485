import { useMemo } from 'react'
import { coatingMeasures } from '../../../shared-types/coating-measures.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { type CoatingUnit, coatingUnit } from '../../../shared-types/units.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import { usePanelNames } from '../../store/panel-names.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { GridPicture } from './GridPicture.tsx'
import { gaugeNumber, ReadWith, type ReadWithEntry, readWithBefore } from './ReadWith.tsx'
import { exampleLine, readingsFrom } from './reading-entry.ts'

interface GridEntry extends ReadWithEntry {
  readonly line: string
  readonly enteredIn: CoatingUnit
  /** Places passed over on this walk, by their number in the grid. */
  readonly passed: readonly number[]
}

interface GridFormProps {
  readonly record: RecordView
  readonly panelId: string
  /** Another panel was chosen; its walk begins with what is read of it. */
  readonly onPanel: (panelId: string) => void
  readonly onLeave: () => void
}

/** Walks the grid of a panel: the next place is called out and shown, its values are typed, Enter keeps them and goes on. */
export function GridForm({ record, panelId, onPanel, onLeave }: GridFormProps) {
  const panels = useRecordStore((state) => state.panelList?.panels)
  const nameOf = usePanelNames()
  const { value: laid, problem } = useAnswer('coating.grid', { panelId }, record.journalNumber)
  // The grid of the panel before stays until that of the panel chosen has come: nothing may be kept at its places.
  const grid = laid?.panelId === panelId ? laid : null
  const before = record.spots.at(-1)?.enteredIn ?? record.commission.coatingUnit
  const { gauge, mode, substrate } = readWithBefore(record, panelId)
  const initial = useMemo<GridEntry>(
    () => ({ line: '', enteredIn: before, gauge, mode, substrate, passed: [] }),
    [before, gauge, mode, substrate],
  )
  const places = grid?.places ?? []
  const { length } = coatingMeasures(record.commission)
  const read = places.filter(({ spot }) => spot !== null).length
  const nextFor = (passed: readonly number[]) =>
    places.findIndex(({ spot }, index) => spot === null && !passed.includes(index))
  const entry = useEntry<GridEntry>({
    name: `coating.grid ${panelId}`,
    initial,
    keep: async ({ line, enteredIn, gauge: own, mode: set, substrate: below, passed }) => {
      const place = places[nextFor(passed)]
      if (grid === null || place === undefined) {
        throw new ProblemError('input-refused', 'Every place of the grid is read or passed over. Esc leaves.')
      }
      const said = readingsFrom(line, enteredIn)
      if ('refused' in said) throw new ProblemError('input-refused', said.refused, { field: 'line' })
      await change('spot.add', {
        draft: {
          panelId,
          view: grid.view,
          at: place.at,
          where: place.words.split(':')[0] ?? '',
          values: [...said.values],
          enteredIn,
          gauge: gaugeNumber(own),
          mode: set,
          substrate: below,
          readAt: new Date().toISOString(),
          exhibits: [],
          note: '',
        },
      })
    },
    kept: () => undefined,
  })
  const { field, draft } = entry
  const next = nextFor(draft.passed)
  const place = places[next]
  return (
    <EntrySheet
      title={`Grid of ${nameOf(panelId)}`}
      over={
        grid === null ? 'being laid' : `${read} of ${places.length} places read, ${length.text(grid.apartMm)} apart`
      }
      entry={entry}
      onLeave={onLeave}
    >
      <ProblemNote problem={problem} />
      <p className="grid-next" role="status">
        {grid === null
          ? ''
          : place === undefined
            ? 'Every place is read or passed over.'
            : `Next: place ${next + 1} of ${places.length}, ${place.words}.`}
      </p>
      {grid === null ? null : (
        <GridPicture
          record={record}
          panelId={panelId}
          grid={grid}
          next={next}
          words={
            place === undefined
              ? 'Every place of the grid'
              : `The panel with a cross at place ${next + 1}, to be read next`
          }
        />
      )}
      <TextField
        label={`Values, ${draft.enteredIn}`}
        figures
        autoFocus
        hint={`up to ten, such as ${exampleLine(draft.enteredIn)} (more than, no reading); Enter keeps and goes on`}
        {...field('line')}
      />
      <button
        type="button"
        className="answer"
        disabled={place === undefined}
        onClick={() => entry.set({ passed: [...draft.passed, next] })}
      >
        pass this place over
      </button>
      <ChoiceField
        label="Panel"
        choices={(panels ?? []).map((panel) => panel.id)}
        wordsFor={nameOf}
        value={panelId}
        onChange={onPanel}
      />
      <ChoiceField label="Values read in" choices={coatingUnit.options} {...field('enteredIn')} />
      {grid === null ? null : (
        <ReadWith
          gauge={field('gauge')}
          mode={field('mode')}
          substrate={field('substrate')}
          place={{ panelId, view: grid.view, at: place?.at ?? null }}
        />
      )}
    </EntrySheet>
  )
}
