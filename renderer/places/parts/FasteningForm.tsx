import { useMemo, useRef } from 'react'
import type { Exhibit } from '../../../shared-types/exhibit.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { useFaultyFirst } from '../../parts-of-page/useFaultyFirst.ts'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { FasteningAnswered } from './FasteningAnswered.tsx'
import { asked, begunSample, entryOfSample, keepSample, type SampleEntry, type SampleFigure } from './sample-entry.ts'

interface FasteningFormProps {
  /** The kept sample that is opened again; null for a new one. */
  readonly kept: Exhibit | null
  readonly onLeave: () => void
}

/** Alike fastenings by sample: which to look at, drawn at random, what they are, and what they say of all; kept as an exhibit. */
export function FasteningForm({ kept, onLeave }: FasteningFormProps) {
  const examiner = useRecordStore((state) => state.record?.commission.examiner ?? '')
  const place = useRecordStore((state) => state.record?.visits.at(-1)?.place ?? '')
  const readOnly = useRecordStore((state) => state.record?.readOnly ?? true)
  const initial = useMemo(() => entryOfSample(kept) ?? begunSample, [kept])
  const entry = useEntry<SampleEntry>({
    name: kept === null ? 'fastening.sample' : `exhibit.remeasure ${kept.number}`,
    initial,
    keep: (said) => keepSample(said, kept, { madeBy: examiner, place }),
    kept: onLeave,
  })
  const { draft, set } = entry
  const question = useMemo(() => asked(draft), [draft])
  const { value, problem, busy } = useAnswer('parts.sample', question)
  const fields = useRef<HTMLDivElement>(null)
  const unlessFaulty = useFaultyFirst(fields)
  const keep = () => {
    if (!readOnly) unlessFaulty(() => void entry.keep())
  }
  useKeys('Fastenings', [
    { keys: 'Escape', does: 'put fastenings away', run: onLeave, whileTyping: true },
    { keys: 'Ctrl+Enter', does: 'keep the sample as an exhibit', run: keep, whileTyping: true },
  ])
  const figure = (label: string, name: Exclude<SampleFigure, 'confidencePercent'>) => (
    <NumberField
      label={label}
      quantity="plain"
      least={name === 'ofHowMany' ? 1 : 0}
      value={draft[name]}
      problem={entry.field(name).problem}
      onChange={(number) => set({ [name]: number === null ? null : Math.round(number) })}
    />
  )
  const unseen = draft.seen.length === 0
  return (
    <Section
      head={kept === null ? 'Fastenings by sample' : `Fastenings by sample, E\u202f${kept.number}`}
      level="column"
      beside="what a few say of all, exactly"
      action={
        <>
          <ActionKey
            keys="Ctrl+Enter"
            label="keep"
            name="Keep the sample as an exhibit"
            onAct={keep}
            disabled={readOnly || entry.busy}
          />{' '}
          <ActionKey keys="Escape" label="put away" name="Put fastenings away" onAct={onLeave} />
        </>
      }
    >
      <div ref={fields} className="fastening-fields" aria-busy={busy}>
        <TextField label="What is counted" value={draft.what} onChange={(what) => set({ what })} autoFocus />
        {figure('Alike there', 'ofHowMany')}
        {unseen ? figure('Looked at', 'looked') : <Counted label="Looked at" count={question?.looked ?? null} />}
        {unseen ? (
          figure('Of those wrong', 'wrong')
        ) : (
          <Counted label="Of those wrong" count={question?.wrong ?? null} />
        )}
        {figure('Wanted: at most wrong', 'wantedAtMost')}
        <NumberField
          label="Confidence"
          unit="%"
          quantity="plain"
          least={50}
          most={99.9}
          value={draft.confidencePercent}
          problem={entry.field('confidencePercent').problem}
          onChange={(confidencePercent) => set({ confidencePercent })}
        />
        <TextField
          label="Positions, if they have names"
          value={draft.names}
          onChange={(names) => set({ names, seen: [] })}
        />
        <TextField label="Drawn by the words" value={draft.seed} onChange={(seed) => set({ seed, seen: [] })} />
      </div>
      <ProblemNote problem={problem ?? entry.problemOfAll} />
      {value === null || question === null || problem !== null ? null : (
        <FasteningAnswered
          answer={value}
          ofHowMany={question.ofHowMany}
          seen={draft.seen}
          onSeen={(seen) => set({ seen: [...seen] })}
        />
      )}
    </Section>
  )
}

function Counted({ label, count }: { readonly label: string; readonly count: number | null }) {
  return (
    <p className="field">
      <span className="field-label">{label}</span>
      <span className="figures">{count}</span>
    </p>
  )
}
