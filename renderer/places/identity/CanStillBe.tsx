import type { ChainStep, IdentityView, VariableView } from '../../../shared-types/identity-view.ts'
import { Section } from '../../parts-of-page/Section.tsx'
import { BySource } from './BySource.tsx'
import { dayText } from './day-text.ts'
import { decibanText, weightBands, weightText, weightWords } from './weight-words.ts'

const LEAST_SHOWN = 0.01
const MOST_LINES = 6
const MOST_STEPS = 8
/** Decibans across half the bar of a chain. */
const BAR_DECIBANS = 30

function Steps({ steps, start }: { readonly steps: readonly ChainStep[]; readonly start: number | null }) {
  const shown = steps.filter(({ decibans }) => decibans === null || Math.abs(decibans) >= 0.05).slice(0, MOST_STEPS)
  return (
    <table className="steps">
      <caption className="unseen">What speaks for it and against it, in decibans, each left out in turn</caption>
      <tbody>
        {start === null ? null : (
          <tr>
            <td>starting odds, from counts and rules</td>
            <td className="figures">{decibanText(start, null)}</td>
          </tr>
        )}
        {shown.map((step) => (
          <tr key={step.id}>
            <td>
              {step.words}
              <span className="under-line">{step.source}</span>
              <span className="step-bar" aria-hidden="true">
                <span
                  className={(step.decibans ?? 0) < 0 ? 'step-against' : 'step-for'}
                  style={{ width: `${Math.min(50, (50 * Math.abs(step.decibans ?? BAR_DECIBANS)) / BAR_DECIBANS)}%` }}
                />
              </span>
            </td>
            <td className="figures">{decibanText(step.decibans, step.decisive)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function VariableBlock(props: {
  readonly variable: VariableView
  readonly open: boolean
  readonly onOpen: () => void
}) {
  const { variable, open, onOpen } = props
  const ranked = variable.kind === 'dates' ? variable.values : variable.values.toSorted((a, b) => b.now - a.now)
  const shown = ranked.filter(({ now }) => now >= LEAST_SHOWN).slice(0, MOST_LINES)
  const out = variable.values.filter(({ now, before }) => now === 0 && before > 0).length
  return (
    <div className="can-be">
      <button type="button" className="can-be-head" aria-expanded={open} onClick={onOpen}>
        <span className="caps">{variable.name}</span>
        <span className="quiet">
          {variable.span === null ? '' : `${dayText(variable.span.from)} to ${dayText(variable.span.to)} (90\u202f%)`}
        </span>
        <span className="quiet">{open ? 'close' : 'because'}</span>
      </button>
      {shown.map(({ id, name, now }) => (
        <div key={id} className="can-be-row">
          <span>{name}</span>
          <span className="weight-bar" aria-hidden="true">
            <span style={{ width: `${100 * now}%` }} />
          </span>
          <span className="figures">{weightText(now)}</span>
          <span className="quiet">{weightWords(now)}</span>
        </div>
      ))}
      {out === 0 ? null : <p className="quiet">{`${out} ${out === 1 ? 'value' : 'values'} ruled out`}</p>}
      <BySource variable={variable} />
      {open ? <Steps steps={variable.because} start={variable.startDecibans} /> : null}
    </div>
  )
}

const grouped = (digits: string): string => digits.replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f')

/** How many builds the rules allow, and how many of them could show what was seen. */
const buildsWords = ({ legalBuilds, buildsLeft }: IdentityView): string =>
  buildsLeft === legalBuilds
    ? `${grouped(legalBuilds)} builds the rules allow`
    : `${grouped(buildsLeft)} of ${grouped(legalBuilds)} builds could show this`

/** What the car can still be: every variable with the weight of its values, and what its likeliest rests on. */
export function CanStillBe(props: {
  readonly view: IdentityView
  readonly chosen: string | null
  readonly onChoose: (key: string | null) => void
}) {
  const { view, chosen, onChoose } = props
  return (
    <Section head="What it can still be" level="column" beside={buildsWords(view)}>
      {view.variables.map((variable) => (
        <VariableBlock
          key={variable.key}
          variable={variable}
          open={variable.key === chosen}
          onOpen={() => onChoose(variable.key === chosen ? null : variable.key)}
        />
      ))}
      <p className="note">{weightBands}</p>
    </Section>
  )
}
