/** t(to) - t(from) <= atMost, in days; `because` is the number of the fact or rule that says so. */
export interface Bound {
  readonly from: number
  readonly to: number
  readonly atMost: number
  readonly because: number
}

/** Node that stands for day 0; facts bound others against it. */
export const ORIGIN = 0

interface Distances {
  readonly distance: Float64Array
  /** Last bound of the shortest way to each node; -1 where there is none. */
  readonly last: Int32Array
}

/** Bounds that contradict each other: numbers of what said them, along one ring whose sum is negative. */
interface Contradiction {
  readonly ring: readonly number[]
}

/** First and last day of every node, and the reasons along the way that sets them. */
export interface Windows {
  readonly earliest: Float64Array
  readonly latest: Float64Array
  earliestBecause(node: number): readonly number[]
  latestBecause(node: number): readonly number[]
}

/**
 * The days each node of a simple temporal network can have (Dechter, Meiri and Pearl, Artificial Intelligence 49 (1991)
 * 61-95): the last day is the shortest way from the origin, the first the negative of the shortest way to it; the network
 * has a solution exactly when no ring of bounds is negative. Bellman-Ford in rounds, ended when nothing changes; a ring that
 * neither way reaches is looked for apart.
 */
export function windowsOf(nodes: number, bounds: readonly Bound[]): Windows | Contradiction {
  const from = Int32Array.from(bounds, (bound) => bound.from)
  const to = Int32Array.from(bounds, (bound) => bound.to)
  const atMost = Float64Array.from(bounds, (bound) => bound.atMost)
  const onwards = { from, to, atMost }
  const back = { from: to, to: from, atMost }
  const forward = shortest(nodes, onwards, ORIGIN)
  if ('ring' in forward) return { ring: said(forward.ring, bounds) }
  const backward = shortest(nodes, back, ORIGIN)
  if ('ring' in backward) return { ring: said(backward.ring, bounds) }
  if (forward.distance.some((distance, node) => distance === OPEN && backward.distance[node] === OPEN)) {
    const apart = shortest(nodes, onwards, null)
    if ('ring' in apart) return { ring: said(apart.ring, bounds) }
  }
  return {
    earliest: backward.distance.map((distance) => -distance),
    latest: forward.distance,
    earliestBecause: (node) => said(way(node, backward, back), bounds),
    latestBecause: (node) => said(way(node, forward, onwards), bounds),
  }
}

const OPEN = Number.POSITIVE_INFINITY

/** The bounds as columns, in the direction they are followed. */
interface Columns {
  readonly from: Int32Array
  readonly to: Int32Array
  readonly atMost: Float64Array
}

const said = (some: readonly number[], bounds: readonly Bound[]): readonly number[] =>
  some.flatMap((at) => bounds[at]?.because ?? [])

/** Shortest ways from one node, or from all at once when `start` is null. A ring is looked for in rounds 1, 2, 4, 8 ... */
function shortest(nodes: number, { from, to, atMost }: Columns, start: number | null): Distances | Contradiction {
  const distance = new Float64Array(nodes).fill(start === null ? 0 : OPEN)
  const last = new Int32Array(nodes).fill(-1)
  if (start !== null) distance[start] = 0
  let changed = true
  for (let round = 1; changed; round += 1) {
    changed = false
    for (let at = 0; at < from.length; at += 1) {
      const target = to[at] ?? 0
      const reached = (distance[from[at] ?? 0] ?? OPEN) + (atMost[at] ?? 0)
      if (reached >= (distance[target] ?? 0)) continue
      distance[target] = reached
      last[target] = at
      changed = true
    }
    const ring = changed && (round & (round - 1)) === 0 ? ringIn(last, from) : null
    if (ring !== null) return { ring }
  }
  return { distance, last }
}

/** A ring among the last bounds is a negative one (Cherkassky and Goldberg, Mathematical Programming 85 (1999) 277-311). */
function ringIn(last: Int32Array, from: Int32Array): readonly number[] | null {
  const seenFrom = new Int32Array(last.length).fill(-1)
  for (let start = 0; start < last.length; start += 1) {
    let node = start
    while (seenFrom[node] === -1 && (last[node] ?? -1) >= 0) {
      seenFrom[node] = start
      node = from[last[node] ?? 0] ?? ORIGIN
    }
    if (seenFrom[node] !== start || (last[node] ?? -1) < 0) continue
    const ring: number[] = []
    let at = node
    do {
      ring.push(last[at] ?? -1)
      at = from[last[at] ?? 0] ?? ORIGIN
    } while (at !== node)
    return ring
  }
  return null
}

/** Bounds along the shortest way, from the date it starts at to the node. */
function way(node: number, { last }: Distances, { from }: Columns): readonly number[] {
  const bounds: number[] = []
  for (let at = node; at !== ORIGIN && (last[at] ?? -1) >= 0; at = from[last[at] ?? 0] ?? ORIGIN)
    bounds.push(last[at] ?? -1)
  return bounds.reverse()
}
