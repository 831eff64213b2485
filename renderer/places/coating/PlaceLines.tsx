import type { RequestInput } from '../../../shared-types/contract.ts'
import { useAnswer } from '../../store/use-answer.ts'

/** What the gauge in hand can and cannot read at the place being entered, each line with its source. */
export function PlaceLines({ asked }: { readonly asked: RequestInput<'coating.place'> }) {
  const { value: lines } = useAnswer('coating.place', asked)
  if (lines === null) return null
  return (
    <ul className="place-lines" aria-label="What the gauge reads there" aria-live="polite">
      {lines.map(({ words, source, weight }) => (
        <li key={words} className={weight === 'plain' ? 'place-line' : 'place-line is-warned'}>
          {weight === 'cannot' ? <span className="strong">Cannot be read. </span> : null}
          {words} <span className="quiet">{source}</span>
        </li>
      ))}
    </ul>
  )
}
