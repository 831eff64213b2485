import { ProblemError } from '../../../shared-types/problem-error.ts'
import { KernelMemory, roomOfPairs } from '../kernel/kernel-memory.ts'
import { PIVOT } from '../statistics/cholesky.ts'
import { covariance, errorVariance, type Places } from './covariance.ts'
import { structureNumbers, writeStructures } from './kernel-structures.ts'
import type { KrigingSystem, Predictions } from './ordinary-kriging.ts'
import { PlaceCells } from './place-cells.ts'

/** Targets whose neighbours are found before the kernel is asked. */
const CHUNK = 512
/** Right-hand sides of each target: covariance with it, ones, values read. */
const SIDES = 3

/**
 * Kriging of each target from its nearest readings alone, each with a mean of its own.
 * @throws ProblemError when two readings stand at one place and have neither nugget nor error.
 */
export function krigeNearest(
  system: Pick<KrigingSystem, 'data' | 'structures'>,
  targets: Places,
  neighbours: number,
): Predictions {
  const { places } = system.data
  const n = places.x.length
  const count = targets.x.length
  const size = Math.min(neighbours, n)
  const values = new Float64Array(count)
  const variances = new Float64Array(count)
  const cells = new PlaceCells(joined(places.x, targets.x), joined(places.y, targets.y), places, n)
  for (let place = 0; place < n; place += 1) cells.add(place)
  const solver = solverOf(system, size)
  for (let first = 0; first < count; first += CHUNK) {
    const used = Math.min(CHUNK, count - first)
    solver.x.set(targets.x.subarray(first, first + used))
    solver.y.set(targets.y.subarray(first, first + used))
    for (let t = 0; t < used; t += 1) cells.nearest(n + first + t, solver.near.subarray(t * size, (t + 1) * size))
    solver.solve(used)
    values.set(solver.values.subarray(0, used), first)
    variances.set(solver.variances.subarray(0, used), first)
  }
  return { values, variances }
}

/** The readings laid out for the kernel: `solve` reads x, y and nearest readings of so many targets. */
function solverOf({ data, structures }: Pick<KrigingSystem, 'data' | 'structures'>, size: number) {
  const n = data.values.length
  const room = roomOfPairs(size, SIDES)
  const memory = new KernelMemory(
    4 * n + 4 * CHUNK + Math.ceil((CHUNK * size) / 2) + room + structureNumbers(structures),
    11,
  )
  const vector = (numbers: Float64Array): number => {
    const taken = memory.numbers(n)
    taken.set(numbers)
    return taken.byteOffset
  }
  const [readX, readY, read] = [vector(data.places.x), vector(data.places.y), vector(data.values)]
  const readingVariance = data.readingVariance === null ? 0 : vector(data.readingVariance)
  const [x, y, values, variances] = [
    memory.numbers(CHUNK),
    memory.numbers(CHUNK),
    memory.numbers(CHUNK),
    memory.numbers(CHUNK),
  ]
  const near = memory.wholes(CHUNK * size)
  const rooms = memory.numbers(room).byteOffset
  const model = memory.numbers(structureNumbers(structures))
  writeStructures(model, structures)
  const sill = covariance(structures, 0)
  const own = sill + errorVariance(structures)
  const solve = (count: number): void => {
    const sound = memory.kernel.nearestPredictions(
      readX,
      readY,
      read,
      readingVariance,
      x.byteOffset,
      y.byteOffset,
      count,
      near.byteOffset,
      size,
      model.byteOffset,
      structures.length,
      own,
      sill,
      own * PIVOT,
      rooms,
      values.byteOffset,
      variances.byteOffset,
    )
    if (sound === 0)
      throw new ProblemError(
        'rule-of-the-trade',
        'Two readings stand at one place and the model gives readings no error: put them together as one spot, or state the error of the gauge.',
      )
  }
  return { x, y, near, values, variances, solve }
}

const joined = (one: Float64Array, other: Float64Array): Float64Array => {
  const both = new Float64Array(one.length + other.length)
  both.set(one)
  both.set(other, one.length)
  return both
}
