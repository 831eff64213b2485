import type { SheetComparison } from '../../../shared-types/sheet-comparison.ts'
import { weightText } from './weight-words.ts'

const share = (weight: number | null): string => (weight === null ? 'none' : weightText(weight))
type Verdict = SheetComparison['claims'][number]['before']
const verdictWords = (verdict: Verdict): string => verdict?.verdict ?? 'not put to the test'

const sameVerdict = (one: Verdict, other: Verdict): boolean => one?.verdict === other?.verdict

/** What another edition of a sheet would change in the conclusions, before it is taken or left. */
export function SheetChange(props: {
  readonly change: SheetComparison
  readonly mayTake: boolean
  readonly onTake: () => void
  readonly onLeave: () => void
}) {
  const { change, mayTake, onTake, onLeave } = props
  const { editionBefore, editionAfter, variables, claims, lost, problemAfter } = change
  const turned = claims.filter(({ before, after }) => !sameVerdict(before, after))
  const nothing = variables.length === 0 && turned.length === 0 && lost.length === 0
  return (
    <section className="sheet-change" aria-label={`What ${change.title}, edition ${editionAfter}, changes`}>
      <p className="strong">
        {editionBefore === null
          ? `Edition ${editionAfter} is not in this record yet.`
          : `From edition ${editionBefore} to edition ${editionAfter}:`}
      </p>
      {problemAfter === null ? null : <p className="strong">{`! ${problemAfter}`}</p>}
      {nothing ? <p>No conclusion of this record changes.</p> : null}
      {variables.map(({ key, name, values }) => (
        <table key={key} className="steps">
          <caption className="caps">{name}</caption>
          <tbody>
            {values.map((value) => (
              <tr key={value.name}>
                <td>{value.name}</td>
                <td className="figures">{`${share(value.before)} → ${share(value.after)}`}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
      {turned.map(({ claim, words, before, after }) => (
        <p key={claim}>
          <span className="figures">{`C\u202f${claim}`}</span> {words}:{' '}
          <span className="strong">{`${verdictWords(before)} → ${verdictWords(after)}`}</span>
        </p>
      ))}
      {claims.length > turned.length ? (
        <p className="quiet">{`${claims.length - turned.length} claims keep their verdict.`}</p>
      ) : null}
      {lost.length === 0 ? null : (
        <p>{`Looked at, and no longer understood: ${lost.join(', ')}. What was noted of them stays and says nothing.`}</p>
      )}
      <div className="answers">
        <button type="button" className="answer" disabled={!mayTake} onClick={onTake}>
          take this edition in
        </button>
        <button type="button" className="answer" onClick={onLeave}>
          leave it
        </button>
      </div>
    </section>
  )
}
