/** Node that stands for day 0; facts bound others against it. */
export const ORIGIN = 0

/** Where each bound leads; bounds are numbered, and nothing of this changes while days are worked out. */
export interface Network {
  readonly nodes: number
  readonly onwards: Direction
  readonly back: Direction
}

/** All bounds followed one way, with those that leave each node side by side. */
interface Direction {
  readonly from: Int32Array
  readonly to: Int32Array
  /** Bounds that leave node n are `leaving[first[n]]` to before `leaving[first[n + 1]]`. */
  readonly first: Int32Array
  readonly leaving: Int32Array
}

/** Days of every node, while bounds become tighter. */
export interface Days {
  /** t(to) - t(from) <= atMost of each bound, in days; an infinite one says nothing. */
  readonly atMost: Float64Array
  readonly forward: Ways
  readonly backward: Ways
}

/** Shortest ways found so far. */
interface Ways {
  readonly distance: Float64Array
  /** Last bound of the shortest way to each node; -1 where there is none. */
  readonly last: Int32Array
}

/** First and last day of every node, and the numbers of the bounds along the way that sets them. */
export interface Windows {
  earliest(node: number): number
  latest(node: number): number
  earliestBecause(node: number): readonly number[]
  latestBecause(node: number): readonly number[]
}

const OPEN = Number.POSITIVE_INFINITY

/** Network of bounds `from` to `to`. */
export function networkOf(nodes: number, from: Int32Array, to: Int32Array): Network {
  return { nodes, onwards: directed(nodes, from, to), back: directed(nodes, to, from) }
}

function directed(nodes: number, from: Int32Array, to: Int32Array): Direction {
  const first = new Int32Array(nodes + 1)
  for (const node of from) first[node + 1] = (first[node + 1] ?? 0) + 1
  for (let node = 0; node < nodes; node += 1) first[node + 1] = (first[node + 1] ?? 0) + (first[node] ?? 0)
  const next = first.slice()
  const leaving = new Int32Array(from.length)
  for (const [bound, node] of from.entries()) {
    const slot = next[node] ?? 0
    leaving[slot] = bound
    next[node] = slot + 1
  }
  return { from, to, first, leaving }
}

/** Days before any bound has been followed. */
export function openDays({ nodes }: Network, atMost: Float64Array): Days {
  const ways = (): Ways => {
    const distance = new Float64Array(nodes).fill(OPEN)
    distance[ORIGIN] = 0
    return { distance, last: new Int32Array(nodes).fill(-1) }
  }
  return { atMost, forward: ways(), backward: ways() }
}

/**
 * Works out the days of a simple temporal network (Dechter, Meiri and Pearl, Artificial Intelligence 49 (1991) 61-95): the
 * last day of a node is the shortest way from the origin, the first the negative of the shortest way to it; the network has
 * a solution exactly when no ring of bounds is negative. `tightened` are the nodes some bound of which has become tighter
 * since; what was found before is kept. Null, or the bounds of one negative ring.
 */
export function follow(network: Network, days: Days, tightened: readonly number[]): readonly number[] | null {
  const { atMost, forward, backward } = days
  return shortened(network.onwards, atMost, forward, tightened) ?? shortened(network.back, atMost, backward, tightened)
}

/** A negative ring among nodes that no way joins with the origin, or null. */
export function ringApart(network: Network, { atMost, forward, backward }: Days): readonly number[] | null {
  const apart: number[] = []
  for (let node = 0; node < network.nodes; node += 1)
    if (forward.distance[node] === OPEN && backward.distance[node] === OPEN) apart.push(node)
  if (apart.length === 0) return null
  const distance = new Float64Array(network.nodes).fill(OPEN)
  for (const node of apart) distance[node] = 0
  const ways = { distance, last: new Int32Array(network.nodes).fill(-1) }
  return shortened(network.onwards, atMost, ways, apart)
}

export function windowsOf({ onwards, back }: Network, { forward, backward }: Days): Windows {
  return {
    earliest: (node) => -(backward.distance[node] ?? OPEN),
    latest: (node) => forward.distance[node] ?? OPEN,
    earliestBecause: (node) => way(node, backward, back),
    latestBecause: (node) => way(node, forward, onwards),
  }
}

/** Bellman and Ford in rounds, each from the nodes the last one changed. A ring is looked for in rounds 1, 2, 4, 8 ... */
function shortened(
  { from, to, first, leaving }: Direction,
  atMost: Float64Array,
  { distance, last }: Ways,
  tightened: readonly number[],
): readonly number[] | null {
  const waiting = new Uint8Array(distance.length)
  let nodes = tightened
  for (let round = 1; nodes.length > 0; round += 1) {
    const changed: number[] = []
    for (const node of nodes) {
      waiting[node] = 0
      const here = distance[node] ?? OPEN
      if (here === OPEN) continue
      const end = first[node + 1] ?? 0
      for (let slot = first[node] ?? 0; slot < end; slot += 1) {
        const bound = leaving[slot] ?? 0
        const target = to[bound] ?? 0
        const reached = here + (atMost[bound] ?? OPEN)
        if (reached >= (distance[target] ?? 0)) continue
        distance[target] = reached
        last[target] = bound
        if (waiting[target] === 1) continue
        waiting[target] = 1
        changed.push(target)
      }
    }
    const ring = changed.length > 0 && (round & (round - 1)) === 0 ? ringIn(last, from) : null
    if (ring !== null) return ring
    nodes = changed
  }
  return null
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
function way(node: number, { last }: Ways, { from }: Direction): readonly number[] {
  const bounds: number[] = []
  for (let at = node; at !== ORIGIN && (last[at] ?? -1) >= 0; at = from[last[at] ?? 0] ?? ORIGIN)
    bounds.push(last[at] ?? -1)
  return bounds.reverse()
}
