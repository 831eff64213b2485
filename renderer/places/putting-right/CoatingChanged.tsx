import type { CoatingChange, ExtentChange, ReadingsCited } from '../../../shared-types/coating-change.ts'
import { type CoatingMeasures, coatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { Correction } from '../../../shared-types/correction.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useAnswer } from '../../store/use-answer.ts'
import { dayText } from '../identity/day-text.ts'
import { rangesOf } from './spot-ranges.ts'

function citedWords(cited: ReadingsCited | null): string {
  if (cited === null) return 'no reading cited'
  const { spots, from, to } = cited
  const days = from === to ? dayText(from) : `${dayText(from)} to ${dayText(to)}`
  return `${spots.length} ${spots.length === 1 ? 'spot' : 'spots'} (R ${rangesOf(spots)}), ${days}`
}

function ExtentRow({ head, extent }: { readonly head: string; readonly extent: ExtentChange | null }) {
  if (extent === null) return null
  return (
    <tr>
      <th scope="row">{head}</th>
      <td>{extent.before.words}</td>
      <td>{extent.after.words}</td>
      <td className={extent.verdict === 'not told' ? '' : 'strong'}>{extent.change.words}</td>
    </tr>
  )
}

function ChangeTable({ change, measures }: { readonly change: CoatingChange; readonly measures: CoatingMeasures }) {
  return (
    <table className="coating-changed">
      <thead>
        <tr>
          <td />
          <th scope="col">before</th>
          <th scope="col">after</th>
          <th scope="col">difference</th>
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">readings</th>
          <td>{citedWords(change.before)}</td>
          <td>{citedWords(change.after)}</td>
          <td />
        </tr>
        <ExtentRow head={`thicker than ${measures.thickness.text(change.thresholdUm)}`} extent={change.area} />
        <ExtentRow head="volume above the paint" extent={change.volume} />
      </tbody>
    </table>
  )
}

/** Filler of the panel a correction cites, before and after, and whether the interval of the difference tells a change. */
export function CoatingChanged(props: { readonly correction: Correction; readonly record: RecordView }) {
  const { correction, record } = props
  const { value: change, problem } = useAnswer('coating.change', { number: correction.number }, record.journalNumber)
  if (correction.coating === null) return null
  if (change === null || change.correction !== correction.number)
    return (
      <Section head="Coating before and after" level="column" beside={problem === null ? 'being computed' : ''}>
        <ProblemNote problem={problem} />
      </Section>
    )
  return (
    <Section head={`Coating before and after: ${change.panel}`} level="column" beside={`K\u202f${change.correction}`}>
      <ChangeTable change={change} measures={coatingMeasures(record.commission)} />
      {change.problem === null ? null : <p className="note">{change.problem}</p>}
      {change.notes.map((note) => (
        <p key={note} className="note">
          {note}
        </p>
      ))}
      <p className="place-note">{change.cannotTell}</p>
    </Section>
  )
}
