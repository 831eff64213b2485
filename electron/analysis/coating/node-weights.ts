import { type KernelMemory, roomOfPairs } from '../kernel/kernel-memory.ts'
import type { Places } from './covariance.ts'
import { structureNumbers, writeStructures } from './kernel-structures.ts'
import type { NodeNeighbours } from './node-neighbours.ts'

/** For each node in simulated order: weights of its earlier places, and the deviation left, in a kernel's memory. */
export interface NodeWeights {
  /** Numbers of the earlier places, as in the neighbours. */
  readonly before: Int32Array
  readonly weights: Float64Array
  readonly deviations: Float64Array
  /** Works the weights out for another range. */
  forRange(rangeMm: number): void
}

const JITTER = 1e-6

/** Numbers and takings that `nodeWeights` needs of a kernel's memory, for so many readings and nodes. */
export function roomOfWeights(readings: number, nodes: number, perNode: number): { numbers: number; takings: number } {
  const numbers = 2 * (readings + nodes) + nodes * (1.5 * perNode + 1) + roomOfPairs(perNode, 1) + 3
  return { numbers: Math.ceil(numbers), takings: 7 }
}

/**
 * Simple kriging weights of every node from its earlier neighbours for a Matern 3/2 correlation, variance one and mean nought.
 */
export function nodeWeights(
  memory: KernelMemory,
  readings: Places,
  nodes: Places,
  neighbours: NodeNeighbours,
): NodeWeights {
  const n = readings.x.length
  const { order, perNode } = neighbours
  const count = order.length
  const inOrder = (own: Float64Array, theirs: Float64Array): number => {
    const placed = memory.numbers(n + count)
    placed.set(own)
    order.forEach((node, at) => {
      placed[n + at] = theirs[node] as number
    })
    return placed.byteOffset
  }
  const x = inOrder(readings.x, nodes.x)
  const y = inOrder(readings.y, nodes.y)
  const before = memory.wholes(count * perNode)
  before.set(neighbours.before)
  const weights = memory.numbers(count * perNode)
  const deviations = memory.numbers(count)
  const rooms = memory.numbers(roomOfPairs(perNode, 1)).byteOffset
  const matern = (range: number) => ({ model: 'matern 3/2', sill: 1, range }) as const
  const model = memory.numbers(structureNumbers([matern(1)]))
  const forRange = (rangeMm: number): void => {
    writeStructures(model, [matern(rangeMm)])
    memory.kernel.nodeWeights(
      x,
      y,
      n,
      count,
      before.byteOffset,
      perNode,
      model.byteOffset,
      1,
      1 + JITTER,
      1,
      JITTER,
      rooms,
      weights.byteOffset,
      deviations.byteOffset,
    )
  }
  return { before, weights, deviations, forRange }
}
