import type { Places } from './covariance.ts'
import type { NodeNeighbours } from './node-neighbours.ts'

/** For each node in simulated order: weights of its earlier places, and the deviation left. */
export interface NodeWeights {
  readonly weights: Float64Array
  readonly deviations: Float64Array
}

const JITTER = 1e-6

/**
 * Simple kriging weights of every node from its earlier neighbours for a Matern 3/2 correlation of one range, variance one
 * and mean nought.
 */
export function nodeWeights(
  readings: Places,
  nodes: Places,
  { order, perNode, before }: NodeNeighbours,
  rangeMm: number,
): NodeWeights {
  const n = readings.x.length
  const weights = new Float64Array(order.length * perNode)
  const deviations = new Float64Array(order.length)
  const x = new Float64Array(perNode + 1)
  const y = new Float64Array(perNode + 1)
  const matrix = new Float64Array(perNode * perNode)
  const side = new Float64Array(perNode)
  for (let at = 0; at < order.length; at += 1) {
    const row = at * perNode
    let size = 0
    for (; size < perNode; size += 1) {
      const place = before[row + size] as number
      if (place < 0) break
      const node = place < n ? -1 : (order[place - n] as number)
      x[size] = node < 0 ? (readings.x[place] as number) : (nodes.x[node] as number)
      y[size] = node < 0 ? (readings.y[place] as number) : (nodes.y[node] as number)
    }
    x[size] = nodes.x[order[at] as number] as number
    y[size] = nodes.y[order[at] as number] as number
    fillCorrelations(matrix, side, x, y, size, rangeMm)
    deviations[at] = solveSmall(matrix, side, size, perNode)
    for (let slot = 0; slot < size; slot += 1) weights[row + slot] = side[slot] as number
  }
  return { weights, deviations }
}

function fillCorrelations(
  matrix: Float64Array,
  side: Float64Array,
  x: Float64Array,
  y: Float64Array,
  size: number,
  rangeMm: number,
): void {
  const stride = side.length
  for (let one = 0; one <= size; one += 1)
    for (let other = 0; other < one; other += 1) {
      const dx = (x[one] as number) - (x[other] as number)
      const dy = (y[one] as number) - (y[other] as number)
      const share = Math.sqrt(dx * dx + dy * dy) / rangeMm
      const value = (1 + share) * Math.exp(-share)
      if (one === size) side[other] = value
      else matrix[one * stride + other] = value
    }
  for (let one = 0; one < size; one += 1) matrix[one * stride + one] = 1 + JITTER
}

/** Solves for the weights in place of the right-hand side; answers the deviation that is left. */
function solveSmall(matrix: Float64Array, side: Float64Array, size: number, stride: number): number {
  let left = 1
  for (let row = 0; row < size; row += 1) {
    const at = row * stride
    for (let column = 0; column <= row; column += 1) {
      const own = column * stride
      let sum = matrix[at + column] as number
      for (let k = 0; k < column; k += 1) sum -= (matrix[at + k] as number) * (matrix[own + k] as number)
      matrix[at + column] = column === row ? Math.sqrt(Math.max(sum, JITTER)) : sum / (matrix[own + column] as number)
    }
    let sum = side[row] as number
    for (let k = 0; k < row; k += 1) sum -= (matrix[at + k] as number) * (side[k] as number)
    sum /= matrix[at + row] as number
    side[row] = sum
    left -= sum * sum
  }
  for (let row = size - 1; row >= 0; row -= 1) {
    let sum = side[row] as number
    for (let k = row + 1; k < size; k += 1) sum -= (matrix[k * stride + row] as number) * (side[k] as number)
    side[row] = sum / (matrix[row * stride + row] as number)
  }
  return Math.sqrt(Math.max(0, left))
}
