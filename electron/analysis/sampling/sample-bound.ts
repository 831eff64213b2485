import type { z } from 'zod'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { sampleBound, sampleSize } from '../../../shared-types/sampling.ts'
import { betaQuantile, logGamma } from '../statistics/beta-distribution.ts'

/**
 * Two-sided exact bounds of a share from a sample. Of a known number: all counts a sample like this would not contradict
 * (hypergeometric, each side at half of what confidence leaves). Of an unknown number: Clopper and Pearson, Biometrika 26
 * (1934) 404-413. When nothing (or everything looked at) was found, the one open side has the whole of it.
 * @throws ProblemError when more was found than looked at, or looked at than there is.
 */
export function boundFromSample(question: z.infer<typeof sampleBound.input>): z.infer<typeof sampleBound.output> {
  const { looked, found, ofHowMany, confidence, what } = question
  if (found > looked) refuse('More was found than looked at: correct one of the two numbers.', 'found')
  if (ofHowMany !== null && looked > ofHowMany)
    refuse('More was looked at than there is: correct one of the two.', 'looked')
  const oneSided = found === 0 || found === looked
  const miss = oneSided ? 1 - confidence : (1 - confidence) / 2
  const seen = `${found} of ${looked} looked at: ${what}.`
  const sure = `${(confidence * 100).toLocaleString('en', { maximumFractionDigits: 2 })} % confidence`
  if (ofHowMany === null) {
    const lowShare = found === 0 ? 0 : betaQuantile(found, looked - found + 1, miss)
    const highShare = found === looked ? 1 : betaQuantile(found + 1, looked - found, 1 - miss)
    return {
      lowShare,
      highShare,
      lowCount: null,
      highCount: null,
      method: 'Clopper and Pearson, exact',
      words: `${seen} With ${sure}, from ${shown(lowShare)} to ${shown(highShare)} % are like that, if the sample was drawn at random.`,
    }
  }
  const counts = possibleCounts(looked, found, ofHowMany, miss)
  return {
    lowShare: counts.low / ofHowMany,
    highShare: counts.high / ofHowMany,
    lowCount: counts.low,
    highCount: counts.high,
    method: 'hypergeometric, exact',
    words:
      looked === ofHowMany
        ? `${seen} Each of the ${ofHowMany} was looked at.`
        : `${seen} With ${sure}, from ${counts.low} to ${counts.high} of the ${ofHowMany} are like that, if the sample was drawn at random; ${ofHowMany - looked} were not seen.`,
  }
}

const shown = (share: number): string => (share * 100).toLocaleString('en', { maximumFractionDigits: 1 })

function refuse(message: string, field: string): never {
  throw new ProblemError('input-refused', message, { field })
}

/** Least and greatest number with what is counted that the sample does not contradict. */
function possibleCounts(looked: number, found: number, all: number, miss: number): { low: number; high: number } {
  const least = found
  const most = all - (looked - found)
  return {
    low: firstWith(least, most, (marked) => 1 - atMost(found - 1, looked, marked, all) > miss),
    high: lastWith(least, most, (marked) => atMost(found, looked, marked, all) > miss),
  }
}

/** Smallest number of a range with a property that, once there, stays. */
function firstWith(low: number, high: number, holds: (value: number) => boolean): number {
  let [from, to] = [low, high]
  while (from < to) {
    const middle = Math.floor((from + to) / 2)
    if (holds(middle)) to = middle
    else from = middle + 1
  }
  return from
}

const lastWith = (low: number, high: number, holds: (value: number) => boolean): number =>
  firstWith(low, high + 1, (value) => value > high || !holds(value)) - 1

/** Probability of at most `found` marked ones in a sample of `looked` out of `all` of which `marked` are. */
export function atMost(found: number, looked: number, marked: number, all: number): number {
  const whole = choose(all, looked)
  let sum = 0
  for (let count = Math.max(0, looked - (all - marked)); count <= Math.min(found, marked, looked); count += 1)
    sum += Math.exp(choose(marked, count) + choose(all - marked, looked - count) - whole)
  return Math.min(1, sum)
}

/** Logarithm of the number of ways to choose. */
const choose = (n: number, k: number): number => logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1)

/** Fewest to look at so that none found bounds the number with what is counted by `atMost`. */
export function sizeOfSample(question: z.infer<typeof sampleSize.input>): z.infer<typeof sampleSize.output> {
  const { ofHowMany, confidence } = question
  if (question.atMost >= ofHowMany) refuse('The bound must be smaller than the number there is.', 'atMost')
  const marked = question.atMost + 1
  const look = firstWith(1, ofHowMany, (looked) => atMost(0, looked, marked, ofHowMany) <= 1 - confidence)
  return {
    look,
    words: `Look at ${look} of the ${ofHowMany}, drawn at random. If none of them has it, at most ${question.atMost} of the ${ofHowMany} do, with ${confidence * 100} % confidence.`,
  }
}
