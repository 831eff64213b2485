import type { Correction } from '../../../shared-types/correction.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { boundsForm } from '../../parts-of-page/number-forms.ts'
import { Section } from '../../parts-of-page/Section.tsx'
import { dayText } from '../identity/day-text.ts'
import { boundsOf, type CostBounds } from './cost-bounds.ts'

const states: readonly (readonly [Correction['state'], string])[] = [
  ['planned', 'still to do'],
  ['done', 'done, not verified'],
  ['verified', 'done and verified'],
]

function pricedWhen(bounds: CostBounds): string {
  if (bounds.pricedFrom === null || bounds.pricedTo === null) return 'prices not dated'
  if (bounds.pricedFrom === bounds.pricedTo) return `prices of ${dayText(bounds.pricedFrom)}`
  return `prices of ${dayText(bounds.pricedFrom)} to ${dayText(bounds.pricedTo)}`
}

/** Costs summed as bounds, state by state: what is still to be spent is never added to what was spent. */
export function CostTotals({ record }: { readonly record: RecordView }) {
  return (
    <Section head="Costs, as bounds" level="column" beside="least – most">
      <div className="cost-totals">
        <dl>
          {states.map(([state, words]) => {
            const bounds = boundsOf(record.corrections.filter((correction) => correction.state === state))
            return (
              <div key={state}>
                <dt>{words}</dt>
                <dd>
                  {bounds.priced === 0 ? (
                    <span className="quiet">nothing priced</span>
                  ) : (
                    <span className="figures">{boundsForm(bounds.low, bounds.high, record.commission.currency)}</span>
                  )}
                  <span className="under-line">
                    {bounds.priced} of {bounds.corrections} priced
                    {bounds.priced === 0 ? '' : ` · ${pricedWhen(bounds)}`}
                  </span>
                </dd>
              </div>
            )
          })}
        </dl>
        <p className="place-note">
          The least is the sum of all low ends, the most the sum of all high ends. No likely total is reckoned here,
          because low and high seldom come together. What is not priced is in no sum.
        </p>
      </div>
    </Section>
  )
}
