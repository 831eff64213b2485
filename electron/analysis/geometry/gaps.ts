import type { z } from 'zod'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { gapSeries } from '../../../shared-types/tape-measures.ts'
import { normalQuantile } from '../statistics/quantiles.ts'
import { univariate } from '../statistics/univariate.ts'
import { inMm } from './tape-reading.ts'

type Question = z.infer<typeof gapSeries.input>

/**
 * Gaps of a joint, or how flush its panels stand: taper along a straight line of least squares with its uncertainty, difference between the sides. Nothing
 * is passed or failed: no width is right for every car, and evenness can itself be a sign of later work.
 * @throws ProblemError when a gap is negative or all places are the same.
 */
export function gapsOf({ left, right, goodToMm, coverage, of }: Question): z.infer<typeof gapSeries.output> {
  const k = normalQuantile((1 + coverage) / 2)
  const u = goodToMm / Math.sqrt(3)
  if (of === 'gap') checkGaps([...left, ...(right ?? [])])
  const both = [
    { side: 'left' as const, joint: left },
    ...(right === null ? [] : [{ side: 'right' as const, joint: right }]),
  ]
  const sides = both.map(({ side, joint }) => ({ side, ...alongJoint(joint, u, k) }))
  const [first, second] = sides
  const difference = first === undefined || second === undefined ? null : first.meanMm - second.meanMm
  const tapers = sides.map(({ side, taperMm, expandedTaperMm }) => {
    const shown = Math.abs(taperMm) > expandedTaperMm
    return `${side}: taper ${inMm(taperMm)} ± ${inMm(expandedTaperMm)} mm${shown ? '' : ', none shown'}`
  })
  return {
    sides,
    differenceMm: difference,
    expandedDifferenceMm: difference === null ? null : k * u * Math.sqrt(1 / left.length + 1 / (right?.length ?? 1)),
    words: `${tapers.join('; ')}.`,
  }
}

function checkGaps(joint: Question['left']): void {
  if (joint.some(({ gapMm }) => gapMm < 0))
    throw new ProblemError('input-refused', 'A gap cannot be less than nothing: where panels touch enter 0.', {
      field: 'gapMm',
    })
}

function alongJoint(joint: Question['left'], u: number, k: number) {
  const { mean, min, max } = univariate(joint.map(({ gapMm }) => gapMm))
  const places = univariate(joint.map(({ atMm }) => atMm))
  const length = places.max - places.min
  if (length === 0)
    throw new ProblemError('input-refused', 'All gaps were taken at one place: enter where along the joint each was.', {
      field: 'atMm',
    })
  let squares = 0
  let products = 0
  for (const { atMm, gapMm } of joint) {
    squares += (atMm - places.mean) ** 2
    products += (atMm - places.mean) * (gapMm - mean)
  }
  return {
    meanMm: mean,
    rangeMm: max - min,
    taperMm: (products / squares) * length,
    expandedTaperMm: (k * u * length) / Math.sqrt(squares),
  }
}
