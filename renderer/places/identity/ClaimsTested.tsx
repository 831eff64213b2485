import type { ClaimOutlook, IdentityMore } from '../../../shared-types/identity-more.ts'
import type { ClaimView, ConflictView, IdentityView } from '../../../shared-types/identity-view.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { Section } from '../../parts-of-page/Section.tsx'
import { decibanText, weightText } from './weight-words.ts'

const strengthWords = ({ words, speaks, likelihoodRatio, decibans }: ClaimView): string => {
  if (speaks === 'neither') return 'the findings do not tell the two apart'
  const size = likelihoodRatio === null ? 'beyond any number' : `${decibanText(decibans, null)} decibans`
  return `${words} support ${speaks === 'for' ? 'for it' : 'against it'}, ${size}`
}

/** Claims that say something in the terms of a sheet, each against its opposite; the others stay open here. */
export function ClaimsTested(props: {
  readonly record: RecordView
  readonly view: IdentityView
  readonly more: IdentityMore | null
}) {
  const { record, view, more } = props
  const outlooks = new Map(more?.claims.map((outlook) => [outlook.claim, outlook]))
  const tested = new Map(view.claims.map((claim) => [claim.claim, claim]))
  return (
    <Section head="Claims put to the test" level="column" beside="findings against the opposite of each claim">
      {record.claims.map(({ number, words, wouldSettle }) => {
        const claim = tested.get(number)
        return (
          <div key={number} className="claim-tested">
            <span className="figures">{`C\u202f${number}`}</span>
            <span>
              “{words}”
              <span className="under-line">
                {claim === undefined
                  ? `It says nothing in the terms of a sheet. ${wouldSettle === '' ? '' : `Would settle it: ${wouldSettle}`}`
                  : `${strengthWords(claim)}. Before anything was seen ${weightText(claim.before)}.`}
              </span>
              {claim === undefined ? null : <Outlook claim={claim} outlook={outlooks.get(number)} />}
            </span>
            <span className="strong">{claim?.verdict ?? 'not settled'}</span>
          </div>
        )
      })}
      <p className="note">{view.scale}</p>
    </Section>
  )
}

/** What would settle an open claim; for one not supported, what would have to be granted for it to be true. */
function Outlook(props: { readonly claim: ClaimView; readonly outlook: ClaimOutlook | undefined }) {
  const { claim, outlook } = props
  if (outlook === undefined) return null
  const { settledBy, story } = outlook
  const looks = settledBy.map(({ name, bits }) => `${name} (${bits.toFixed(2)} bit)`).join(', ')
  return (
    <>
      {claim.verdict === 'not settled' ? (
        <span className="under-line">
          {looks === '' ? 'No tell left to look at would settle it.' : `Would settle it: ${looks}.`}
        </span>
      ) : null}
      {claim.verdict === 'supported' ? null : (
        <details className="by-source">
          <summary>
            {story === null
              ? 'No build can be so and have shown what was seen'
              : `cheapest story for it, ${story.decibansBehind.toFixed(1)} decibans behind the best`}
          </summary>
          <ul className="argument">
            {story?.argument.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  )
}

function Argument({ conflict }: { readonly conflict: ConflictView }) {
  return (
    <ul className="argument">
      {conflict.cannotAllBe.map(({ words, source }) => (
        <li key={words}>
          {words} <span className="quiet">{source}</span>
        </li>
      ))}
    </ul>
  )
}

/** What cannot all be so, and the smallest ways out. */
export function Contradictions({ view }: { readonly view: IdentityView }) {
  if (view.conflicts.length === 0) return null
  return (
    <Section head="Contradiction" level="column" beside="these cannot all be so">
      {view.conflicts.map((conflict) => (
        <Argument key={conflict.cannotAllBe.map(({ words }) => words).join('|')} conflict={conflict} />
      ))}
      {view.repairs.length === 0 ? null : (
        <p>{`Something must be wrong: ${view.repairs.map((items) => items.join(' and ')).join('; or ')}.`}</p>
      )}
    </Section>
  )
}
