import { useMemo } from 'react'
import { coatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { PlanFigure } from '../../../shared-types/figure.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { Spot, SpotDraft } from '../../../shared-types/reading.ts'
import { type CoatingUnit, coatingUnit } from '../../../shared-types/units.ts'
import { largestPanelView } from '../../drawing/PanelDrawing.tsx'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { ExhibitPicker } from '../../parts-of-page/ExhibitPicker.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import { usePanelNames } from '../../store/panel-names.ts'
import { planAsked } from '../../store/plan-asked.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { gaugeNotNoted, gaugeNumber, ReadWith, type ReadWithEntry, readWithBefore } from './ReadWith.tsx'
import { exampleLine, lineFrom, readingsFrom } from './reading-entry.ts'

/** Values within this distance belong to one spot, mm. */
const ONE_SPOT_MM = 40

/** The spot as it stands in the form: its values as one line, its gauge as a word. */
interface SpotEntry extends ReadWithEntry {
  readonly panelId: string
  readonly where: string
  readonly line: string
  readonly enteredIn: CoatingUnit
  readonly exhibits: number[]
  readonly note: string
}

/** A spot moved to another panel loses its point, which was a point of the panel before. */
function placeOf({ panelId }: SpotEntry, row: Spot | null, plan: PlanFigure | null): Pick<SpotDraft, 'view' | 'at'> {
  if (row !== null && row.panelId === panelId) return { view: row.view, at: row.at }
  return { view: (plan === null ? undefined : largestPanelView(plan, panelId))?.view.id ?? 'left', at: null }
}

function draftFrom(entry: SpotEntry, row: Spot | null, plan: PlanFigure | null): SpotDraft {
  const read = readingsFrom(entry.line, entry.enteredIn)
  if ('refused' in read) throw new ProblemError('input-refused', read.refused, { field: 'line' })
  return {
    panelId: entry.panelId,
    ...placeOf(entry, row, plan),
    where: entry.where,
    values: [...read.values],
    enteredIn: entry.enteredIn,
    gauge: gaugeNumber(entry.gauge),
    mode: entry.mode,
    substrate: entry.substrate,
    readAt: row?.readAt ?? new Date().toISOString(),
    exhibits: entry.exhibits,
    note: entry.note,
  }
}

function useInitialEntry(row: Spot | null, panelId: string | null): SpotEntry {
  const record = useRecordStore((state) => state.record)
  const firstPanel = useRecordStore((state) => state.panelList?.panels[0]?.id ?? '')
  return useMemo(() => {
    const before = record?.spots.at(-1)
    const first = row?.panelId ?? panelId ?? before?.panelId ?? firstPanel
    const usual = readWithBefore(record, first)
    const unit = row?.enteredIn ?? record?.commission.coatingUnit ?? 'µm'
    return {
      panelId: first,
      where: row?.where ?? '',
      line: row === null ? '' : lineFrom(row.values, unit),
      enteredIn: unit,
      gauge: row === null ? usual.gauge : row.gauge === null ? gaugeNotNoted : String(row.gauge),
      mode: row?.mode ?? usual.mode,
      substrate: row?.substrate ?? usual.substrate,
      exhibits: row?.exhibits ?? [],
      note: row?.note ?? '',
    }
  }, [row, panelId, record, firstPanel])
}

interface SpotFormProps {
  readonly row: Spot | null
  /** The panel in hand, where a new spot belongs. */
  readonly panelId: string | null
  readonly onLeave: () => void
}

/** Adds or amends a spot: the values as they are called out, on one line. */
export function SpotForm({ row, panelId, onLeave }: SpotFormProps) {
  const panels = useRecordStore((state) => state.panelList?.panels)
  const record = useRecordStore((state) => state.record)
  const plan = useAnswer('figures.plan', record === null ? { body: 'coupe', names: 'uk' } : planAsked(record))
  const nameOf = usePanelNames()
  const number = row?.number ?? null
  const entry = useEntry<SpotEntry>({
    name: number === null ? 'coating.spot.add' : `spot.amend ${number}`,
    initial: useInitialEntry(row, panelId),
    keep: async (spot) => {
      const draft = draftFrom(spot, row, plan.value)
      await (number === null ? change('spot.add', { draft }) : change('spot.amend', { number, draft }))
    },
    kept: onLeave,
  })
  const { field } = entry
  return (
    <EntrySheet
      title={number === null ? 'A spot' : `Spot R ${number}`}
      over={
        record === null ? '' : `up to ten values within ${coatingMeasures(record.commission).length.text(ONE_SPOT_MM)}`
      }
      entry={entry}
      onLeave={onLeave}
      withdraw={number === null ? null : { by: 'spot.withdraw', number }}
    >
      <TextField
        label={`Values, ${entry.draft.enteredIn}`}
        figures
        autoFocus
        hint={`such as ${exampleLine(entry.draft.enteredIn)} (more than, no reading)`}
        {...field('line')}
      />
      <ChoiceField
        label="Panel"
        choices={(panels ?? []).map((panel) => panel.id)}
        wordsFor={nameOf}
        {...field('panelId')}
      />
      <TextField label="Where on the panel" {...field('where')} />
      <ChoiceField label="Values read in" choices={coatingUnit.options} {...field('enteredIn')} />
      <ReadWith
        gauge={field('gauge')}
        mode={field('mode')}
        substrate={field('substrate')}
        place={{ panelId: entry.draft.panelId, ...placeOf(entry.draft, row, plan.value) }}
      />
      <ExhibitPicker label="Exhibits" panelId={entry.draft.panelId} {...field('exhibits')} />
      <NoteField label="Note" {...field('note')} />
      {number === null ? (
        <p className="note">A point on the outline is set in the walk-round, with the panel in hand.</p>
      ) : null}
    </EntrySheet>
  )
}
