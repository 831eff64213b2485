import { useMemo } from 'react'
import type { TapeAnswer } from '../../../../shared-types/tape-answer.ts'
import type { TapeKind, TapeTaken } from '../../../../shared-types/tape-question.ts'
import { ProblemNote } from '../../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../../parts-of-page/Section.tsx'
import { useDraftStore, useNameInRecord } from '../../../store/draft-store.ts'
import { useShownUnits } from '../../../store/shown-units.ts'
import { useAnswer } from '../../../store/use-answer.ts'
import { entryName, type TapeEntry, wordsOfKind } from './tape-entry.ts'
import { tapeAsked } from './tape-questions.ts'
import { type OpenedTape, useTapeEntry } from './use-tape-entry.ts'
import './tape.css'

interface TapeResultProps {
  readonly kind: TapeKind
  /** The kept measurement that is opened again; null for a new one. */
  readonly kept: OpenedTape | null
}

/** What is measured by the entry that is open, while it is typed. */
export function TapeResult({ kind, kept }: TapeResultProps) {
  const units = useShownUnits()
  const name = useNameInRecord(entryName(kind, kept?.exhibit.number ?? null))
  const typed = useDraftStore((state) => state.drafts[name] as TapeEntry | undefined)
  const initial = useTapeEntry(kind, kept)
  const asked = useMemo(() => tapeAsked(kind, typed ?? initial, units), [kind, typed, initial, units])
  const beside = kept !== null && typed === undefined ? 'as kept' : 'as typed, not kept yet'
  return (
    <Section head={wordsOfKind(kind).title} level="column" beside={beside}>
      <div className="tape-result" aria-live="polite">
        {'missing' in asked ? <p className="quiet">{asked.missing.message}</p> : null}
        {'refused' in asked ? <ProblemNote problem={asked.refused} /> : null}
        {'taken' in asked ? <Answered taken={asked.taken} /> : null}
      </div>
    </Section>
  )
}

function Answered({ taken }: { readonly taken: TapeTaken }) {
  const { value, problem, busy } = useAnswer('measuring.tape', taken)
  if (problem !== null) return <ProblemNote problem={problem} />
  if (value === null)
    return (
      <p className="quiet" aria-busy={busy}>
        being worked out
      </p>
    )
  return (
    <div aria-busy={busy}>
      <TapeAnswerLines answer={value} />
    </div>
  )
}

/** A result: the value with its uncertainty, what it decides, what it is compared with, and what it does not say. */
export function TapeAnswerLines({ answer }: { readonly answer: TapeAnswer }) {
  const { headline, coverage, verdict, candidates, lines, notes } = answer
  return (
    <>
      <p className="tape-headline figures">{headline}</p>
      <p className="quiet">{`${coverage} (JCGM 100:2008)`}</p>
      {verdict === '' ? null : <p className="tape-verdict">{verdict}</p>}
      {candidates.length === 0 ? null : (
        <table className="tape-candidates">
          <thead>
            <tr>
              <th scope="col">compared with</th>
              <th scope="col">differs</th>
              <th scope="col">this measurement</th>
            </tr>
          </thead>
          <tbody>
            {candidates.map(({ label, source, words, possible }) => (
              <tr key={`${label} ${source}`}>
                <th scope="row">
                  {label}
                  <span className="under-line">{source}</span>
                </th>
                <td>{words}</td>
                <td className={possible ? 'strong' : 'quiet'}>{possible ? 'fits' : 'rules it out'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <dl className="said-list">
        {lines.map(({ label, words }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      {notes.length === 0 ? null : <p className="place-note">{notes.join(' ')}</p>}
    </>
  )
}
