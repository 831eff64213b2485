import { enfsiSupportBands } from '../../../shared-types/support-scale.ts'
import { decibans } from './decibans.ts'

export interface Support {
  /** P(findings | first proposition) / P(findings | second); null when one of the two is 0. */
  readonly likelihoodRatio: number | null
  readonly decibans: number | null
  /** The proposition the findings speak for; neither when they do not tell them apart. */
  readonly supports: 'first' | 'second' | 'neither'
  readonly words: string
  /** The findings are impossible under the other proposition, as far as the sheet goes. */
  readonly decisive: boolean
}

/** A likelihood ratio in words: below 1 it is inverted and speaks for the second proposition. */
export function support(likelihoodRatio: number): Support {
  const size = likelihoodRatio < 1 ? 1 / likelihoodRatio : likelihoodRatio
  const band = enfsiSupportBands.findLast(({ from }) => size >= from)
  const decisive = !Number.isFinite(size)
  const side = likelihoodRatio < 1 ? 'second' : 'first'
  return {
    likelihoodRatio: decisive ? null : likelihoodRatio,
    decibans: decisive ? null : decibans(likelihoodRatio),
    supports: size < 2 ? 'neither' : side,
    words: band?.words ?? 'no support',
    decisive,
  }
}
