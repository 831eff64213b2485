import type { VariableWeights } from '../../../shared-types/identity-weights.ts'
import { weightText } from './weight-words.ts'

const LEAST_SHOWN = 0.005

/** What each source that counts the cars says alone, where they disagree; folded until asked for. */
export function BySource({ variable }: { readonly variable: VariableWeights }) {
  const { bySource, values, name } = variable
  if (bySource.length === 0) return null
  const shown = values.flatMap((value, at) =>
    value.now >= LEAST_SHOWN || bySource.some(({ shares }) => (shares?.[at] ?? 0) >= LEAST_SHOWN)
      ? [{ value, at }]
      : [],
  )
  return (
    <details className="by-source">
      <summary>sources disagree</summary>
      <table className="steps">
        <caption className="unseen">{`${name} under each source alone`}</caption>
        <thead>
          <tr>
            <th scope="col">source alone</th>
            <th scope="col">believed</th>
            {shown.map(({ value }) => (
              <th key={value.id} scope="col">
                {value.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {bySource.map(({ source, belief, shares }) => (
            <tr key={source}>
              <td>{source}</td>
              <td className="figures">{weightText(belief)}</td>
              {shown.map(({ value, at }) => (
                <td key={value.id} className="figures">
                  {shares === null ? 'impossible' : weightText(shares[at] ?? 0)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  )
}
