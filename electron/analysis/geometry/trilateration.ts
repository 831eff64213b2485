import type { z } from 'zod'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { trilateration } from '../../../shared-types/tape-measures.ts'
import { chiSquareQuantile } from '../statistics/chi-square.ts'
import { checkLengths } from './tape-reading.ts'

type Question = z.infer<typeof trilateration.input>
type Station = Question['from'][number]

const ROUNDS = 200

/**
 * Point of least squared misfit to its distances, by Gauss and Newton with the steps halved where they do not help; first
 * guess from the differences of squared distances, which are linear. Covariance u² (JᵀJ)⁻¹. The misfit is compared with
 * chi-square of n - 2 degrees of freedom: beyond it, a distance is wrong or something is bent.
 * @throws ProblemError when the known points lie on one line, so that the mirrored place fits as well.
 */
export function trilaterate({ from, uMm }: Question): z.infer<typeof trilateration.output> {
  checkLengths(
    from.map(({ distanceMm }) => distanceMm),
    'from',
  )
  let place = firstGuess(from)
  let cost = costAt(from, place.x, place.y)
  for (let round = 0; round < ROUNDS; round += 1) {
    const { dx, dy } = stepAt(from, place.x, place.y)
    let share = 1
    let next = cost
    while (share > 1e-9) {
      next = costAt(from, place.x + share * dx, place.y + share * dy)
      if (next <= cost) break
      share /= 2
    }
    if (next > cost) break
    place = { x: place.x + share * dx, y: place.y + share * dy }
    cost = next
    if (Math.hypot(dx, dy) * share < 1e-11) break
  }
  const { xx, xy, yy } = normalAt(from, place.x, place.y)
  const determinant = xx * yy - xy * xy
  const misfit = cost / uMm ** 2
  const misfitLimit = chiSquareQuantile(0.95, from.length - 2)
  return {
    xMm: place.x,
    yMm: place.y,
    uxMm: uMm * Math.sqrt(yy / determinant),
    uyMm: uMm * Math.sqrt(xx / determinant),
    residuals: from.map((station) => ({
      label: station.label,
      mm: station.distanceMm - Math.hypot(place.x - station.xMm, place.y - station.yMm),
    })),
    misfit,
    misfitLimit,
    fits: misfit <= misfitLimit,
  }
}

function firstGuess(from: readonly Station[]): { x: number; y: number } {
  const middleX = from.reduce((sum, { xMm }) => sum + xMm, 0) / from.length
  const middleY = from.reduce((sum, { yMm }) => sum + yMm, 0) / from.length
  let [xx, xy, yy, xr, yr] = [0, 0, 0, 0, 0]
  for (const { xMm, yMm, distanceMm } of from) {
    const x = xMm - middleX
    const y = yMm - middleY
    const right = (x * x + y * y - distanceMm ** 2) / 2
    xx += x * x
    xy += x * y
    yy += y * y
    xr += x * right
    yr += y * right
  }
  const determinant = xx * yy - xy * xy
  if (determinant <= 1e-8 * (xx + yy) ** 2)
    throw new ProblemError(
      'input-refused',
      'The known points lie on one line, and the mirrored place fits as well: measure to one point off that line.',
      { field: 'from' },
    )
  return { x: middleX + (xr * yy - yr * xy) / determinant, y: middleY + (yr * xx - xr * xy) / determinant }
}

const costAt = (from: readonly Station[], x: number, y: number): number =>
  from.reduce((sum, { xMm, yMm, distanceMm }) => sum + (Math.hypot(x - xMm, y - yMm) - distanceMm) ** 2, 0)

/** JᵀJ and Jᵀr of the distances. */
function normalAt(from: readonly Station[], x: number, y: number) {
  let [xx, xy, yy, xr, yr] = [0, 0, 0, 0, 0]
  for (const { xMm, yMm, distanceMm } of from) {
    const far = Math.hypot(x - xMm, y - yMm)
    const cosine = far === 0 ? 1 : (x - xMm) / far
    const sine = far === 0 ? 0 : (y - yMm) / far
    xx += cosine * cosine
    xy += cosine * sine
    yy += sine * sine
    xr += cosine * (distanceMm - far)
    yr += sine * (distanceMm - far)
  }
  return { xx, xy, yy, xr, yr }
}

function stepAt(from: readonly Station[], x: number, y: number): { dx: number; dy: number } {
  const { xx, xy, yy, xr, yr } = normalAt(from, x, y)
  const determinant = xx * yy - xy * xy
  return { dx: (xr * yy - yr * xy) / determinant, dy: (yr * xx - xr * xy) / determinant }
}
