import type { Claim } from '../../shared-types/claim.ts'
import type { IdentityAnswer } from '../../shared-types/identity-answer.ts'
import type { ClaimView } from '../../shared-types/identity-view.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import type { Noted } from './identity-evidence.ts'
import { chainOf } from './identity-words.ts'
import { rowMark } from './row-marks.ts'

/** Weight of findings, in decibans, from which a claim is called supported or contradicted: "moderate" of the scale. */
const SETTLED_DECIBANS = 10

/** Claims put to the test; the chain of one is empty where it was not asked for. */
export function claimViews(
  claims: readonly Claim[],
  compiled: CompiledSheets,
  answer: IdentityAnswer,
  noted: Noted,
): readonly ClaimView[] {
  return answer.statements.flatMap(({ id, contributions, support }) => {
    const claim = claims.find(({ number }) => rowMark('claims', number) === id)
    if (claim === undefined || contributions === null) return []
    const decibans = support?.decibans ?? null
    const speaks =
      support === null || support.supports === 'neither' ? 'neither' : support.supports === 'first' ? 'for' : 'against'
    const settled = support?.decisive === true || Math.abs(decibans ?? 0) >= SETTLED_DECIBANS
    return [
      {
        claim: claim.number,
        before: contributions.before,
        after: contributions.after,
        likelihoodRatio: support?.likelihoodRatio ?? null,
        decibans,
        words: support?.words ?? 'no support',
        speaks,
        verdict: !settled || speaks === 'neither' ? 'not settled' : speaks === 'for' ? 'supported' : 'contradicted',
        because: chainOf(contributions, compiled, noted),
      },
    ]
  })
}
