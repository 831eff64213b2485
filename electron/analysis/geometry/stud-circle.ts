import type { z } from 'zod'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { studCircle } from '../../../shared-types/tape-measures.ts'
import { normalQuantile } from '../statistics/quantiles.ts'
import { checkLengths, inMm } from './tape-reading.ts'

type Answer = z.infer<typeof studCircle.output>

/**
 * Stud circle of n studs: D = s / sin(π k / n) for studs k steps apart. Several spacings are averaged by weight; each pull
 * of the tape counts as independent. Patterns of the same number of studs within the expanded uncertainty are all possible,
 * and ties are named.
 * @throws ProblemError when a length is nothing or a step goes past the opposite stud.
 */
export function studCircleFrom(question: z.infer<typeof studCircle.input>): Answer {
  const { studs, spacings, goodToMm, patterns, coverage } = question
  checkLengths(
    spacings.map(({ mm }) => mm),
    'spacings',
  )
  if (spacings.some(({ step }) => step > studs / 2))
    throw new ProblemError(
      'input-refused',
      `Of ${studs} studs the opposite ones are ${Math.floor(studs / 2)} apart: count the shorter way round.`,
      { field: 'spacings' },
    )
  const each = spacings.map(({ mm, step }) => {
    const across = Math.sin((Math.PI * step) / studs)
    return { diameter: mm / across, u: goodToMm / Math.sqrt(3) / across, half: goodToMm / across }
  })
  const weight = each.reduce((sum, { u }) => sum + u ** -2, 0)
  const diameterMm = each.reduce((sum, { diameter, u }) => sum + diameter / u ** 2, 0) / weight
  const standardMm = weight ** -0.5
  const expandedMm = normalQuantile((1 + coverage) / 2) * standardMm
  const near = patterns
    .filter((pattern) => pattern.studs === studs)
    .map(({ label, diameterMm: nominal }) => ({
      label,
      diameterMm: nominal,
      offMm: diameterMm - nominal,
      possible: Math.abs(diameterMm - nominal) <= expandedMm,
    }))
    .sort((one, other) => Math.abs(one.offMm) - Math.abs(other.offMm))
  const second = near[1]
  return {
    diameterMm,
    standardMm,
    expandedMm,
    patterns: near,
    wouldDecideMm: second === undefined ? null : Math.abs(second.offMm),
    spacingsAgree: each.every(({ diameter, half }) => Math.abs(diameter - diameterMm) <= half + expandedMm),
    words: wordsFor(near, diameterMm, expandedMm),
  }
}

function wordsFor(near: Answer['patterns'], diameterMm: number, expandedMm: number): string {
  const measured = `${inMm(diameterMm)} ± ${inMm(expandedMm)} mm`
  const possible = near.filter((pattern) => pattern.possible).map(({ label }) => label)
  if (near.length === 0) return `${measured}. No pattern of that many studs is listed.`
  if (possible.length === 0) return `${measured} is none of the listed patterns; the nearest is ${near[0]?.label}.`
  return possible.length === 1
    ? `${measured}: of the listed patterns only ${possible[0]}.`
    : `${measured}: ${possible.join(', ')} are not told apart.`
}
