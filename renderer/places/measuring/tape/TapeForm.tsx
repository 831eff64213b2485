import { useRef } from 'react'
import { ProblemError } from '../../../../shared-types/problem-error.ts'
import type { TapeKind } from '../../../../shared-types/tape-question.ts'
import { CautionLines } from '../../../parts-of-page/CautionLines.tsx'
import { ChoiceField } from '../../../parts-of-page/ChoiceField.tsx'
import { EntrySheet } from '../../../parts-of-page/EntrySheet.tsx'
import { TextField } from '../../../parts-of-page/TextField.tsx'
import { useEntry } from '../../../parts-of-page/useEntry.ts'
import { YesNoField } from '../../../parts-of-page/YesNoField.tsx'
import { ask } from '../../../store/ask.ts'
import { useRecordStore } from '../../../store/record-store.ts'
import { useShownUnits } from '../../../store/shown-units.ts'
import { useAnswer } from '../../../store/use-answer.ts'
import { BelongsFields } from '../BelongsFields.tsx'
import { TellsFollowing } from '../TellsFollowing.tsx'
import { keepTape, noteOfTell } from './keep-tape.ts'
import { TapeReadings } from './TapeReadings.tsx'
import { entryName, NONE, type TapeEntry, wordsOfKind, YES } from './tape-entry.ts'
import { tapeAsked } from './tape-questions.ts'
import { type OpenedTape, useTapeEntry } from './use-tape-entry.ts'

/** Only the names of the tells are wanted here; what a length says of each stands in the result. */
const anyLength = { value: 100, standardUncertainty: 1, unit: 'mm' } as const

interface TapeFormProps {
  readonly kind: TapeKind
  /** The kept measurement that is opened again, with what came of it; null for a new one. */
  readonly kept: OpenedTape | null
  readonly onLeave: () => void
}

/** One measurement by tape, calliper or probe: readings first; Ctrl Enter keeps it as an exhibit, new or corrected. */
export function TapeForm({ kind, kept, onLeave }: TapeFormProps) {
  const units = useShownUnits()
  const unit = units.lengthUnit
  const place = useRecordStore((state) => state.record?.visits.at(-1)?.place ?? '')
  const { value, busy } = useAnswer('measuring.tells', anyLength)
  const tells = value ?? []
  // Kept once even where noting the tell fails afterwards and is tried again.
  const keptExhibit = useRef<number | null>(null)
  const initial = useTapeEntry(kind, kept)
  const entry = useEntry<TapeEntry>({
    name: entryName(kind, kept?.exhibit.number ?? null),
    initial,
    keep: async (said) => {
      const asked = tapeAsked(kind, said, units)
      if (!('taken' in asked)) {
        const { code, message, field } = 'missing' in asked ? asked.missing : asked.refused
        throw new ProblemError(code, message, { field })
      }
      if (said.what.trim() === '')
        throw new ProblemError('input-refused', 'Write what was measured.', { field: 'what' })
      const { taken } = asked
      const answer = await ask('measuring.tape', taken)
      keptExhibit.current ??= await keepTape(said, taken, answer, { kept: kept?.exhibit ?? null, place })
      const number = keptExhibit.current
      if (taken.tell !== null && said.noteTell === YES && number !== null) await noteOfTell(taken.tell, answer, number)
    },
    kept: onLeave,
  })
  const { field, draft } = entry
  const { title, over } = wordsOfKind(kind)
  const number = kept?.exhibit.number ?? null
  return (
    <EntrySheet
      title={title}
      over={number === null ? over : `E\u202f${number}, opened again`}
      entry={entry}
      onLeave={onLeave}
      withdraw={number === null ? null : { by: 'exhibit.withdraw', number }}
    >
      {number === null ? null : <TellsFollowing number={number} unit="mm" />}
      {kind === 'drum or disc' ? <CautionLines steps={['opening a drum or clutch']} /> : null}
      <TapeReadings kind={kind} entry={entry} units={units} />
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
      <BelongsFields
        panel={field('panelId')}
        madeBy={field('madeBy')}
        caption={field('caption')}
        captionHint="left empty: the result in words"
      />
    </EntrySheet>
  )
}
