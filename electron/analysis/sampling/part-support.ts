import type { z } from 'zod'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { partSupport } from '../../../shared-types/sampling.ts'
import { enfsiSupportBands, type SupportInWords } from '../../../shared-types/support-scale.ts'
import { support } from '../identity/support-scale.ts'

type Question = z.infer<typeof partSupport.input>
type Part = Question['parts'][number]

/** Probabilities of what was found: under the factory, and from the pool as a range. */
interface Weighed {
  readonly ifFactory: number
  readonly poolLow: number
  readonly poolHigh: number
}

/**
 * Likelihood ratio of what was found, fitted at the factory against come from the pool of cars, years and spares that
 * carried such a part. Parts of one group came together or not at all: under each proposition the least probable of them
 * stands for the group (complete dependence, the upper Fréchet bound). Groups are taken as independent.
 * @throws ProblemError when a pool is empty or a range is the wrong way round.
 */
export function supportOfParts({ parts }: Question): z.infer<typeof partSupport.output> {
  const groups = new Map<string, Part[]>()
  for (const part of parts) {
    const key = part.group ?? `part ${part.id}`
    groups.set(key, [...(groups.get(key) ?? []), part])
  }
  const weighed = [...groups].map(([id, members]) => ({
    id,
    parts: members.map((part) => part.id),
    ...together(members),
  }))
  const product = (pick: (group: Weighed) => number) => weighed.reduce((total, group) => total * pick(group), 1)
  return {
    first: 'fitted at the factory',
    second: 'from another car, another year or spares',
    groups: weighed.map((group) => ({ id: group.id, parts: group.parts, ...rangeOf(group) })),
    ...rangeOf({
      ifFactory: product(({ ifFactory }) => ifFactory),
      poolLow: product(({ poolLow }) => poolLow),
      poolHigh: product(({ poolHigh }) => poolHigh),
    }),
    notes: [
      'Support is for the findings under one proposition against the other; it is no probability that a part is original.',
      'Parts of one group count once. Groups are taken as independent of each other.',
      ...(weighed.some(({ poolLow }) => poolLow === 0)
        ? ['A pool in which nothing matches is decisive only as far as the pool is complete.']
        : []),
    ],
  }
}

function together(members: readonly Part[]): Weighed {
  const pools = members.map(matchingShare)
  return {
    ifFactory: Math.min(...members.map(({ ifFactory }) => ifFactory)),
    poolLow: Math.min(...pools.map(({ low }) => low)),
    poolHigh: Math.min(...pools.map(({ high }) => high)),
  }
}

/** Share of a pool that would show what was found; extremes over all counts within their ranges. */
function matchingShare({ label, pool }: Part): { readonly low: number; readonly high: number } {
  if (pool.some(({ low, high }) => low > high))
    throw new ProblemError(
      'input-refused',
      `${label}: a source gives fewer parts at most than at least; exchange them.`,
      {
        field: 'parts',
      },
    )
  if (pool.every(({ high }) => high === 0))
    throw new ProblemError(
      'input-refused',
      `${label}: no source of its pool gave any part; enter at least one that did.`,
      {
        field: 'parts',
      },
    )
  const rising = pool.toSorted((one, other) => one.matching - other.matching)
  // The share is greatest when sources above some matching are at their high end and the others at their low one.
  const shares = rising.flatMap((_, cut) => [shareWith(rising, cut, true), shareWith(rising, cut, false)])
  shares.push(shareWith(rising, rising.length, true), shareWith(rising, rising.length, false))
  const known = shares.filter((share) => !Number.isNaN(share))
  return { low: Math.min(...known), high: Math.max(...known) }
}

function shareWith(rising: Part['pool'], cut: number, greatAbove: boolean): number {
  let given = 0
  let matching = 0
  for (const [at, source] of rising.entries()) {
    const parts = at >= cut === greatAbove ? source.high : source.low
    given += parts
    matching += parts * source.matching
  }
  return matching / given
}

const rangeOf = ({ ifFactory, poolLow, poolHigh }: Weighed) => {
  if (ifFactory === 0 && poolHigh === 0)
    throw new ProblemError(
      'input-refused',
      'What was found is impossible both ways: correct a probability or the pool.',
      {
        field: 'parts',
      },
    )
  return { low: inWords(ifFactory / poolHigh), high: inWords(ifFactory === 0 ? 0 : ifFactory / poolLow) }
}

function inWords(likelihoodRatio: number): SupportInWords {
  const { words, ...rest } = support(likelihoodRatio)
  const band = enfsiSupportBands.find((each) => each.words === words)
  return { ...rest, band: band ?? { from: 1, to: 2, words } }
}
