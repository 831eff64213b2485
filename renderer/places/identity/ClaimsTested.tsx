import { memo, useState } from 'react'
import type { Claim } from '../../../shared-types/claim.ts'
import type { ClaimOutlook, IdentityMore } from '../../../shared-types/identity-more.ts'
import type { ConflictView } from '../../../shared-types/identity-view.ts'
import type { ClaimWeights } from '../../../shared-types/identity-weights.ts'
import { Section } from '../../parts-of-page/Section.tsx'
import { ChainSteps } from './ChainSteps.tsx'
import { decibanText, weightText } from './weight-words.ts'

const strengthWords = ({ words, speaks, likelihoodRatio, decibans }: ClaimWeights): string => {
  if (speaks === 'neither') return 'the findings do not tell the two apart'
  const size = likelihoodRatio === null ? 'beyond any number' : `${decibanText(decibans, null)} decibans`
  return `${words} support ${speaks === 'for' ? 'for it' : 'against it'}, ${size}`
}

/** Claims that say something in the terms of a sheet, each against its opposite; the others stay open here. */
export const ClaimsTested = memo(function ClaimsTested(props: {
  readonly claims: readonly Claim[]
  readonly tested: readonly ClaimWeights[]
  readonly scale: string
  readonly more: IdentityMore | null
  /** What comes later is still that of the weights before. */
  readonly waits: boolean
  /** A claim's chain was opened or closed. */
  readonly onChain: (claim: number, open: boolean) => void
}) {
  const outlooks = new Map(props.more?.claims.map((outlook) => [outlook.claim, outlook]))
  const tested = new Map(props.tested.map((claim) => [claim.claim, claim]))
  return (
    <Section head="Claims put to the test" level="column" beside="findings against the opposite of each claim">
      {props.claims.map((claim) => (
        <ClaimTested
          key={claim.number}
          claim={claim}
          tested={tested.get(claim.number) ?? null}
          outlook={outlooks.get(claim.number) ?? null}
          waits={props.waits}
          onChain={props.onChain}
        />
      ))}
      <p className="note">{props.scale}</p>
    </Section>
  )
})

interface ClaimTestedProps {
  readonly claim: Claim
  readonly tested: ClaimWeights | null
  readonly outlook: ClaimOutlook | null
  readonly waits: boolean
  readonly onChain: (claim: number, open: boolean) => void
}

const ClaimTested = memo(function ClaimTested({ claim, tested, outlook, waits, onChain }: ClaimTestedProps) {
  const { number, words, wouldSettle } = claim
  return (
    <div className="claim-tested" aria-busy={waits && outlook !== null}>
      <span className="figures">{`C\u202f${number}`}</span>
      <span>
        “{words}”
        <span className="under-line">
          {tested === null
            ? `It says nothing in the terms of a sheet. ${wouldSettle === '' ? '' : `Would settle it: ${wouldSettle}`}`
            : `${strengthWords(tested)}. Before anything was seen ${weightText(tested.before)}.`}
        </span>
        {tested === null ? null : <ClaimChain claim={tested} onChain={onChain} />}
        {tested === null || outlook === null ? null : <Outlook claim={tested} outlook={outlook} />}
      </span>
      <span className="strong">{tested?.verdict ?? 'not settled'}</span>
    </div>
  )
})

type ClaimChainProps = Pick<ClaimTestedProps, 'onChain'> & { readonly claim: ClaimWeights }

/** What speaks for a claim and against it; asked for and written out only when it is opened. */
function ClaimChain({ claim, onChain }: ClaimChainProps) {
  const [open, setOpen] = useState(false)
  const { before, because } = claim
  const turn = (turned: boolean) => {
    setOpen(turned)
    onChain(claim.claim, turned)
  }
  return (
    <details className="by-source" onToggle={(event) => turn(event.currentTarget.open)}>
      <summary>because</summary>
      {open && because !== null ? (
        <ChainSteps steps={because} start={before > 0 && before < 1 ? 10 * Math.log10(before / (1 - before)) : null} />
      ) : null}
    </details>
  )
}

/** What would settle an open claim; for one not supported, what would have to be granted for it to be true. */
function Outlook({ claim, outlook }: { readonly claim: ClaimWeights; readonly outlook: ClaimOutlook }) {
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

interface ContradictionsProps {
  readonly conflicts: readonly ConflictView[]
  readonly repairs: readonly (readonly string[])[]
}

/** What cannot all be so, and the smallest ways out. */
export const Contradictions = memo(function Contradictions({ conflicts, repairs }: ContradictionsProps) {
  if (conflicts.length === 0) return null
  return (
    <Section head="Contradiction" level="column" beside="these cannot all be so">
      {conflicts.map((conflict) => (
        <Argument key={conflict.cannotAllBe.map(({ words }) => words).join('|')} conflict={conflict} />
      ))}
      {repairs.length === 0 ? null : (
        <p>{`Something must be wrong: ${repairs.map((items) => items.join(' and ')).join('; or ')}.`}</p>
      )}
    </Section>
  )
})
