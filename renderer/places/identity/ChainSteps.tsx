import type { ChainStep } from '../../../shared-types/identity-view.ts'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { decibanText } from './weight-words.ts'

const MOST_STEPS = 8
/** Decibans across half the bar of a chain. */
const BAR_DECIBANS = 30

/** What would overturn a conclusion: the steps without which it would turn, each alone, or which alone settle it. */
function overturnWords(steps: readonly ChainStep[]): string {
  const settling = steps.filter(({ decisive }) => decisive !== null).map(({ words }) => words)
  if (settling.length > 0) return `It would be settled no longer if this were not so: ${settling.join('; or ')}.`
  const alone = steps.filter(({ overturns }) => overturns).map(({ words }) => words)
  return alone.length === 0
    ? 'No one of these would overturn it alone.'
    : `It would turn if this were not so: ${alone.join('; or ')}.`
}

interface ChainStepsProps {
  readonly steps: readonly ChainStep[]
  /** Odds before anything was seen, in decibans; null where that was settled already. */
  readonly start: number | null
}

/** A because-chain: each observation with its exhibits and the source of its fact, what it did, and what would overturn it. */
export function ChainSteps({ steps, start }: ChainStepsProps) {
  const heavy = steps.filter(({ decibans }) => decibans === null || Math.abs(decibans) >= 0.05)
  const shown = heavy.slice(0, MOST_STEPS)
  return (
    <>
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
                {step.words}{' '}
                {step.exhibits.map((exhibit) => (
                  <ReferenceLink key={exhibit} reference={{ kind: 'exhibit', key: String(exhibit) }} />
                ))}
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
      {shown.length === 0 ? <p className="note">Nothing seen so far bears on it.</p> : null}
      {shown.length === 0 ? null : <p className="note">{overturnWords(heavy)}</p>}
    </>
  )
}
