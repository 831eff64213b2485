import { useMemo, useRef } from 'react'
import { ProblemError } from '../../../../shared-types/problem-error.ts'
import type { TapeAnswer } from '../../../../shared-types/tape-answer.ts'
import type { TapeKind, TapeTaken } from '../../../../shared-types/tape-question.ts'
import { CautionLines } from '../../../parts-of-page/CautionLines.tsx'
import { ChoiceField } from '../../../parts-of-page/ChoiceField.tsx'
import { EntrySheet } from '../../../parts-of-page/EntrySheet.tsx'
import { NoteField, TextField } from '../../../parts-of-page/TextField.tsx'
import { useEntry } from '../../../parts-of-page/useEntry.ts'
import { YesNoField } from '../../../parts-of-page/YesNoField.tsx'
import { ask, change } from '../../../store/ask.ts'
import { usePanelNames } from '../../../store/panel-names.ts'
import { useRecordStore } from '../../../store/record-store.ts'
import { useAnswer } from '../../../store/use-answer.ts'
import { TapeReadings } from './TapeReadings.tsx'
import { entryName, NONE, newEntry, type TapeEntry, wordsOfKind, YES } from './tape-entry.ts'
import { tapeAsked } from './tape-questions.ts'

const MOST_ON_A_LINE = 400

/** Only the names of the tells are wanted here; what a length says of each stands in the result. */
const anyLength = { value: 100, standardUncertainty: 1, unit: 'mm' } as const

/** Caption of the exhibit: the result, its coverage and what it decides, unless the user wrote another. */
function captionOf(written: string, { headline, coverage, verdict }: TapeAnswer): string {
  if (written.trim() !== '') return written
  return `${headline} (${coverage}).${verdict === '' ? '' : ` ${verdict}`}`
}

async function keepExhibit(
  said: TapeEntry,
  taken: TapeTaken,
  place: string,
  answer: TapeAnswer,
): Promise<number | null> {
  const what = taken.where === '' ? said.what.trim() : `${said.what.trim()}, ${taken.where}`
  const { valueMm, uncertaintyMm, method } = answer.kept
  const { number } = await change('exhibit.add', {
    draft: {
      kind: 'measurement',
      caption: captionOf(said.caption, answer),
      madeBy: said.madeBy,
      place,
      panelId: said.panelId === NONE ? null : said.panelId,
      view: null,
      at: null,
      inReport: true,
      measurement: {
        what: what.slice(0, MOST_ON_A_LINE),
        value: valueMm,
        unit: 'mm',
        uncertainty: uncertaintyMm,
        method,
        instrument: said.instrument,
        taken,
      },
    },
  })
  return number
}

async function noteOfTell(tell: string, { kept }: TapeAnswer, exhibit: number | null): Promise<void> {
  await change('observation.set', {
    observation: {
      tell,
      state: 'measured',
      value: null,
      surePercent: null,
      measured: { value: kept.valueMm, standardUncertainty: kept.standardUncertaintyMm },
      exhibits: exhibit === null ? [] : [exhibit],
      note: '',
    },
  })
}

/** One measurement by tape, calliper or probe: readings first; Ctrl Enter keeps it as an exhibit. */
export function TapeForm({ kind, onLeave }: { readonly kind: TapeKind; readonly onLeave: () => void }) {
  const unit = useRecordStore((state) => state.record?.commission.lengthUnit ?? 'mm')
  const examiner = useRecordStore((state) => state.record?.commission.examiner ?? '')
  const place = useRecordStore((state) => state.record?.visits.at(-1)?.place ?? '')
  const panels = useRecordStore((state) => state.panelList?.panels)
  const { value, busy } = useAnswer('measuring.tells', anyLength)
  const tells = value ?? []
  const nameOf = usePanelNames()
  // Kept once even where noting the tell fails afterwards and is tried again.
  const keptExhibit = useRef<number | null>(null)
  const initial = useMemo(() => newEntry(kind, examiner), [kind, examiner])
  const entry = useEntry<TapeEntry>({
    name: entryName(kind),
    initial,
    keep: async (said) => {
      const asked = tapeAsked(kind, said, unit)
      if (!('taken' in asked)) {
        const { code, message, field } = 'missing' in asked ? asked.missing : asked.refused
        throw new ProblemError(code, message, { field })
      }
      if (said.what.trim() === '')
        throw new ProblemError('input-refused', 'Write what was measured.', { field: 'what' })
      const { taken } = asked
      const answer = await ask('measuring.tape', taken)
      keptExhibit.current ??= await keepExhibit(said, taken, place, answer)
      if (taken.tell !== null && said.noteTell === YES) await noteOfTell(taken.tell, answer, keptExhibit.current)
    },
    kept: onLeave,
  })
  const { field, draft } = entry
  const { title, over } = wordsOfKind(kind)
  return (
    <EntrySheet title={title} over={over} entry={entry} onLeave={onLeave}>
      {kind === 'drum or disc' ? <CautionLines steps={['opening a drum or clutch']} /> : null}
      <TapeReadings kind={kind} entry={entry} unit={unit} />
      {kind === 'sheet thickness' ? null : (
        <TextField
          label={`Good to, each way, ${unit}`}
          figures
          hint={`the true length lies within this, either side: ${unit === 'mm' ? 'a tape 1, a calliper 0.05' : 'a tape 1/32, a calliper 0.002'}`}
          {...field('goodTo')}
        />
      )}
      <div aria-busy={busy}>
        <ChoiceField
          label="Compare with the sheet"
          choices={[NONE, ...tells.map(({ key }) => key)]}
          wordsFor={(key) => tells.find((tell) => tell.key === key)?.name ?? 'no tell'}
          {...field('tell')}
        />
      </div>
      {draft.tell === NONE ? null : (
        <YesNoField
          label="note it as measured of that tell"
          value={draft.noteTell === YES}
          onChange={(so) => entry.set({ noteTell: so ? YES : '' })}
        />
      )}
      <TextField label="What was measured" required {...field('what')} />
      <TextField label="Where" hint="which hub, which opening" {...field('where')} />
      <TextField label="Instrument" hint="and when it was last checked" {...field('instrument')} />
      <ChoiceField
        label="Panel"
        choices={[NONE, ...(panels ?? []).map((panel) => panel.id)]}
        wordsFor={(panelId) => (panelId === NONE ? 'whole car' : nameOf(panelId))}
        {...field('panelId')}
      />
      <TextField label="By" {...field('madeBy')} />
      <NoteField label="Caption" hint="left empty: the result in words" {...field('caption')} />
    </EntrySheet>
  )
}
