import type { PartDateReading, PartExpectation, PartFact } from '../../../shared-types/part-expectation.ts'
import { Section } from '../../parts-of-page/Section.tsx'
import { dayText } from '../identity/day-text.ts'
import { weightText } from '../identity/weight-words.ts'

const MOST_VALUES = 4
const LEAST_SHOWN = 0.005

function Fact({ fact }: { readonly fact: PartFact }) {
  const values = fact.values.filter(({ now }) => now >= LEAST_SHOWN).slice(0, MOST_VALUES)
  return (
    <div className="part-fact">
      <p className="part-fact-name">{fact.name}</p>
      {values.map(({ id, name, now }) => (
        <div key={id} className="part-fact-value">
          <span>{name}</span>
          <span className="part-weight" aria-hidden="true">
            <span style={{ width: `${100 * now}%` }} />
          </span>
          <span className="figures">{weightText(now)}</span>
        </div>
      ))}
      <p>
        {fact.found === null ? <span className="quiet">not looked at</span> : <>found: {fact.found}</>}
        {fact.support === null ? null : <span className="quiet">; {fact.support.words}</span>}
      </p>
      <p className="under-line">{fact.source}</p>
    </div>
  )
}

function DateLine({ date }: { readonly date: PartDateReading }) {
  const borrowed = date.givenFor === null ? '' : `, given for: ${date.givenFor}`
  return (
    <div className="part-fact">
      <p>
        <span className="figures">{date.asRead}</span>: {dayText(date.from)} to {dayText(date.to)},{' '}
        <span className={date.agrees === 'later than the car' ? 'strong' : ''}>{date.agrees}</span>
      </p>
      <p className="under-line">
        {date.grammar}
        {borrowed}. {date.source}
      </p>
    </div>
  )
}

/** The judgement: support with its band, the word it suggests, and why; the surveyor's own word stands untouched. */
function Judged({ expectation }: { readonly expectation: PartExpectation }) {
  const { support, group, suggestion, written, because } = expectation
  const counted = group !== null && group.parts.length > 1 ? group : null
  const range = counted?.support ?? support
  return (
    <>
      {range === null ? null : (
        <p>
          Support: {range.words}; <span className="figures">{range.ratio}</span>.
        </p>
      )}
      {suggestion === null ? null : (
        <p>
          The facts suggest <strong>{suggestion}</strong>
          {suggestion === written ? ', as you wrote.' : `. You wrote: ${written}.`}
        </p>
      )}
      {because.length === 0 ? null : (
        <ol className="part-because">
          {because.map(({ words, source, speaks }) => (
            <li key={words}>
              {words} {speaks === 'neither' ? null : <em>Speaks {speaks}.</em>}
              <span className="under-line">{source}</span>
            </li>
          ))}
        </ol>
      )}
    </>
  )
}

/** A part against what the sheets expect of this very car. Where they know nothing of it, that is said. */
export function AgainstTheSheet(props: {
  readonly expectation: PartExpectation | null
  readonly problem: string | null
}) {
  const { expectation, problem } = props
  if (problem !== null)
    return (
      <Section head="Against the sheet">
        <p className="note">{problem}</p>
      </Section>
    )
  const known = expectation?.known === true
  return (
    <Section head="Against the sheet" beside={known ? 'weights leave out what was read on it' : undefined}>
      <div className="part-against">
        {known ? null : <p className="note">No sheet of this record says anything of this part.</p>}
        {expectation?.facts.map((fact) => (
          <Fact key={fact.id} fact={fact} />
        ))}
        {expectation?.dates.map((date) => (
          <DateLine key={`${date.asRead} ${date.grammar} ${date.from}`} date={date} />
        ))}
        {expectation?.impossibleDates.map((words) => (
          <p key={words} className="note">
            {words}
          </p>
        ))}
        {expectation === null ? null : <Judged expectation={expectation} />}
      </div>
    </Section>
  )
}
