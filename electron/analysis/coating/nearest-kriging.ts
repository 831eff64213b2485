import { ProblemError } from '../../../shared-types/problem-error.ts'
import { covariance, distanceTo, type Places } from './covariance.ts'
import { dataCovariance, type KrigingSystem, type Predictions } from './ordinary-kriging.ts'
import { PlaceCells } from './place-cells.ts'

/** Kriging of each target from its nearest readings alone, each with a mean of its own. */
export function krigeNearest(
  { data, structures }: Pick<KrigingSystem, 'data' | 'structures'>,
  targets: Places,
  neighbours: number,
): Predictions {
  const n = data.values.length
  const count = targets.x.length
  const values = new Float64Array(count)
  const variances = new Float64Array(count)
  const cells = new PlaceCells(joined(data.places.x, targets.x), joined(data.places.y, targets.y), data.places)
  for (let place = 0; place < n; place += 1) cells.add(place)
  const near = new Int32Array(Math.min(neighbours, n))
  const between = symmetric(dataCovariance(data, structures), n)
  const sill = covariance(structures, 0)
  const local = new LocalSystem(near.length)
  const { rows, stride, size } = local
  const toTarget = size * stride
  const ones = toTarget + stride
  const own = ones + stride
  for (let target = 0; target < count; target += 1) {
    near.fill(-1)
    cells.nearest(n + target, near)
    for (let one = 0; one < size; one += 1) {
      const at = near[one] as number
      for (let other = 0; other <= one; other += 1)
        rows[one * stride + other] = between[at * n + (near[other] as number)] as number
      const distance = distanceTo(data.places, at, targets.x[target] as number, targets.y[target] as number)
      rows[toTarget + one] = covariance(structures, distance)
      rows[ones + one] = 1
      rows[own + one] = data.values[at] as number
    }
    const { value, explained, missing, meanVariance } = local.solve()
    values[target] = value
    variances[target] = sill - explained + missing * missing * meanVariance
  }
  return { values, variances }
}

/**
 * Covariance of a few readings with three rows below it: covariance to the target, ones, and the values read. Factoring it
 * solves all three at once, and products of what comes of them are all that ordinary kriging through the generalised least
 * squares mean asks for (Cressie, Statistics for Spatial Data, 1993, 3.4.5).
 */
class LocalSystem {
  readonly rows: Float64Array
  readonly stride: number
  readonly #column: Float64Array

  constructor(readonly size: number) {
    this.stride = size
    this.rows = new Float64Array((size + 3) * size)
    this.#column = new Float64Array(size + 3)
  }

  solve(): {
    readonly value: number
    readonly explained: number
    readonly missing: number
    readonly meanVariance: number
  } {
    const { rows, size, stride } = this
    const column = this.#column
    for (let pivot = 0; pivot < size; pivot += 1) {
      const root = pivotRoot(rows[pivot * stride + pivot] as number)
      for (let row = pivot + 1; row < size + 3; row += 1) column[row] = (rows[row * stride + pivot] as number) / root
      for (let row = pivot + 1; row < size + 3; row += 1) {
        const at = row * stride
        const share = column[row] as number
        rows[at + pivot] = share
        const last = row < size ? row : size - 1
        for (let k = pivot + 1; k <= last; k += 1)
          rows[at + k] = (rows[at + k] as number) - share * (column[k] as number)
      }
    }
    const toTarget = size * stride
    const ones = toTarget + stride
    const own = ones + stride
    const information = this.#product(ones, ones)
    const missing = 1 - this.#product(toTarget, ones)
    const mean = this.#product(ones, own) / information
    return {
      value: mean * missing + this.#product(toTarget, own),
      explained: this.#product(toTarget, toTarget),
      missing,
      meanVariance: 1 / information,
    }
  }

  #product(one: number, other: number): number {
    let sum = 0
    for (let k = 0; k < this.size; k += 1) sum += (this.rows[one + k] as number) * (this.rows[other + k] as number)
    return sum
  }
}

/** The lower half written into the upper one as well, so that a pair is found in either order. */
function symmetric(lower: Float64Array, n: number): Float64Array {
  for (let row = 0; row < n; row += 1)
    for (let column = 0; column < row; column += 1) lower[column * n + row] = lower[row * n + column] as number
  return lower
}

function pivotRoot(pivot: number): number {
  if (pivot > 0) return Math.sqrt(pivot)
  throw new ProblemError(
    'rule-of-the-trade',
    'Two readings stand at one place and the model gives readings no error: put them together as one spot, or state the error of the gauge.',
  )
}

function joined(one: Float64Array, other: Float64Array): Float64Array {
  const both = new Float64Array(one.length + other.length)
  both.set(one)
  both.set(other, one.length)
  return both
}
