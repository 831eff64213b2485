import { useMemo, useState } from 'react'
import { coatingSubstrate } from '../../../shared-types/coating.ts'
import { coatingMeasures } from '../../../shared-types/coating-measures.ts'
import { type PanelDefinition, panelName } from '../../../shared-types/panel.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { gaugeMode, type Spot, type SpotDraft } from '../../../shared-types/reading.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { largestPanelView, PanelDrawing } from '../../drawing/PanelDrawing.tsx'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { EditSheet } from '../../parts-of-page/EditSheet.tsx'
import { ExhibitPicker } from '../../parts-of-page/ExhibitPicker.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import { PlaceLines } from '../coating/PlaceLines.tsx'
import { lineFrom, readingsFrom, thicknessText } from '../coating/reading-entry.ts'
import { leaveEntry, useWalkStore } from './walk-store.ts'

interface ReadingInHand extends Omit<SpotDraft, 'values' | 'readAt'> {
  /** The values as called out: `1640 1910 >1500 -`. */
  readonly typed: string
}

interface ReadingEntryProps {
  readonly panel: PanelDefinition
  readonly record: RecordView
  readonly amended: Spot | null
}

const moves: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-10, 0],
  ArrowRight: [10, 0],
  ArrowUp: [0, -10],
  ArrowDown: [0, 10],
}

function draftOf(reading: ReadingInHand, amended: Spot | null): SpotDraft {
  const { typed, ...rest } = reading
  const read = readingsFrom(typed, reading.enteredIn)
  if ('refused' in read) throw new ProblemError('input-refused', read.refused, { field: 'typed' })
  return { ...rest, values: [...read.values], readAt: amended?.readAt ?? new Date().toISOString() }
}

/** Up to ten coating readings at one spot: values first, then where; Enter keeps. */
export function ReadingEntry({ panel, record, amended }: ReadingEntryProps) {
  const figure = useWalkStore((state) => state.figure)
  const shown = figure === null ? undefined : largestPanelView(figure, panel.id)
  const last = record.spots.at(-1)
  const unit = amended?.enteredIn ?? record.commission.coatingUnit
  const initial = useMemo(
    (): ReadingInHand => ({
      panelId: panel.id,
      view: amended?.view ?? shown?.view.id ?? 'left',
      at: amended?.at ?? null,
      where: amended?.where ?? '',
      typed: amended === null ? '' : lineFrom(amended.values, unit),
      enteredIn: unit,
      gauge: amended === null ? (last?.gauge ?? record.gauges.at(-1)?.number ?? null) : amended.gauge,
      mode: amended?.mode ?? last?.mode ?? 'not noted',
      substrate: amended?.substrate ?? (last?.panelId === panel.id ? last.substrate : 'unknown'),
      exhibits: amended?.exhibits ?? [],
      note: amended?.note ?? '',
    }),
    [panel.id, amended, shown, unit, last, record.gauges],
  )
  const entry = useEntry<ReadingInHand>({
    name: amended === null ? `spot.add ${panel.id}` : `spot.amend ${amended.number}`,
    initial,
    keep: (reading) =>
      amended === null
        ? change('spot.add', { draft: draftOf(reading, null) })
        : change('spot.amend', { number: amended.number, draft: draftOf(reading, amended) }),
    kept: leaveEntry,
  })
  const { smallLength } = coatingMeasures(record.commission)
  const [cursor, setCursor] = useState(initial.at)
  const { draft, set } = entry
  const at = cursor ?? shown?.panel.label ?? { u: 0, v: 0 }
  const gaugeWords = (choice: string) =>
    choice === '0'
      ? 'not noted'
      : `G\u202f${choice} ${record.gauges.find((gauge) => gauge.number === Number(choice))?.name ?? ''}`
  return (
    <EditSheet
      title={amended === null ? 'Coating readings' : `Readings R\u202f${amended.number}`}
      over={
        <span>
          {panel.stop}, {panelName(panel, record.commission.names)}
        </span>
      }
      onKeep={() => void entry.keep()}
      onLeave={leaveEntry}
      problem={entry.problemOfAll}
      busy={entry.busy}
      onStartOver={entry.begun ? entry.startOver : undefined}
      {...(amended === null
        ? {}
        : { onWithdraw: () => void change('spot.withdraw', { number: amended.number }).then(leaveEntry) })}
    >
      <TextField
        label={`Values, ${unit}`}
        figures
        autoFocus
        hint={`up to ten, with spaces; >${thicknessText(1500, unit)} is more than, - is no reading; Enter keeps`}
        {...entry.field('typed')}
      />
      <TextField label="Where on the panel" {...entry.field('where')} />
      {shown === undefined ? null : (
        <>
          <span className="field-label">
            <span>
              Place on the outline: <strong>{draft.at === null ? 'the panel only' : 'set'}</strong>
            </span>
          </span>
          <PanelDrawing
            view={shown.view}
            panel={shown.panel}
            extents={[]}
            spots={draft.at === null ? [] : [{ letter: '', at: draft.at, figure: '' }]}
            cursor={at}
            label={`Outline for the place of the reading. Arrows move the cross by ${smallLength.text(10)}, Space sets the place.`}
            onKeyDown={(event) => {
              const move = moves[event.key]
              const times = event.shiftKey ? 10 : 1
              if (move !== undefined) setCursor({ u: at.u + move[0] * times, v: at.v + move[1] * times })
              else if (event.key === ' ') set({ at, view: shown.view.id })
              else if (event.key === 'Delete' || event.key === 'Backspace') set({ at: null })
              else return
              event.preventDefault()
              event.stopPropagation()
            }}
            onPoint={(point) => {
              const placed = { u: Math.round(point.u), v: Math.round(point.v) }
              setCursor(placed)
              set({ at: placed, view: shown.view.id })
            }}
          />
          <p className="field-hint">
            arrows {smallLength.text(10)} (Shift {smallLength.figure(100)}), Space sets the place, Delete clears it
          </p>
        </>
      )}
      <div className="field-row">
        <ChoiceField
          label="Gauge"
          choices={['0', ...record.gauges.map((gauge) => String(gauge.number))]}
          wordsFor={gaugeWords}
          value={String(draft.gauge ?? 0)}
          onChange={(choice) => set({ gauge: choice === '0' ? null : Number(choice) })}
        />
        <ChoiceField label="Mode" choices={gaugeMode.options} {...entry.field('mode')} />
        <ChoiceField label="What lies below" choices={coatingSubstrate.options} {...entry.field('substrate')} />
      </div>
      <PlaceLines
        asked={{
          panelId: panel.id,
          view: draft.view,
          at: draft.at,
          gauge: draft.gauge,
          mode: draft.mode,
          substrate: draft.substrate,
        }}
      />
      <NoteField label="Note" rows={1} {...entry.field('note')} />
      <ExhibitPicker label="Shown by exhibits" {...entry.field('exhibits')} panelId={panel.id} />
      {panel.gaugeReadable === 'yes' ? null : (
        <p className="note">
          A gauge reads this panel {panel.gaugeReadable === 'no' ? 'not at all' : 'in part'}: {panel.gaugeUse}.
        </p>
      )}
    </EditSheet>
  )
}

/** The reading an entry amends, or null. */
export function useAmendedSpot(spots: readonly Spot[]): Spot | null {
  const entry = useWalkStore((state) => state.entry)
  if (entry?.kind !== 'reading' || entry.amends === null) return null
  return spots.find((spot) => spot.number === entry.amends) ?? null
}
