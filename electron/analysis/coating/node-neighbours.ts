import type { Places } from './covariance.ts'
import { PlaceCells } from './place-cells.ts'

/** Nodes in the order they are simulated, and for each the earlier places it depends on. */
export interface NodeNeighbours {
  /** Numbers of the nodes, from coarse to fine. */
  readonly order: Int32Array
  /** Places per node; fewer stand before the first nodes, and then -1 fills up. */
  readonly perNode: number
  /** Readings are numbered 0 to n - 1, the node simulated k-th n + k. Row k belongs to the k-th node. */
  readonly before: Int32Array
}

/**
 * Nearest earlier places of each node, the readings being earlier than all nodes and nodes taken from coarse to fine, so
 * that the chain of conditional distributions is close to the joint one (Katzfuss and Guinness, Statistical Science 36
 * (2021) 124-141).
 */
export function nodeNeighbours(readings: Places, nodes: Places, perNode: number): NodeNeighbours {
  const n = readings.x.length
  const count = nodes.x.length
  const order = coarseToFine(nodes)
  const x = new Float64Array(n + count)
  const y = new Float64Array(n + count)
  x.set(readings.x)
  y.set(readings.y)
  order.forEach((node, at) => {
    x[n + at] = nodes.x[node] as number
    y[n + at] = nodes.y[node] as number
  })
  const before = new Int32Array(count * perNode).fill(-1)
  const cells = new PlaceCells(x, y, nodes)
  for (let place = 0; place < n; place += 1) cells.add(place)
  for (let at = 0; at < count; at += 1) {
    cells.nearest(n + at, before.subarray(at * perNode, (at + 1) * perNode))
    cells.add(n + at)
  }
  return { order, perNode, before }
}

/** One node out of every cell of ever finer squares. */
export function coarseToFine(nodes: Places): Int32Array {
  const count = nodes.x.length
  const left = nodes.x.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY)
  const low = nodes.y.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY)
  const right = nodes.x.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY)
  const top = nodes.y.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY)
  const order = new Int32Array(count)
  const taken = new Uint8Array(count)
  let filled = 0
  for (let side = Math.max(right - left, top - low, 1); filled < count; side /= 2) {
    const seen = new Set<number>()
    const finest = side * 4096 < Math.max(right - left, top - low, 1)
    for (let node = 0; node < count; node += 1) {
      const column = Math.floor(((nodes.x[node] as number) - left) / side)
      const row = Math.floor(((nodes.y[node] as number) - low) / side)
      const cell = row * 8192 + column
      if (taken[node] === 1 || (!finest && seen.has(cell))) continue
      seen.add(cell)
      taken[node] = 1
      order[filled] = node
      filled += 1
    }
  }
  return order
}
