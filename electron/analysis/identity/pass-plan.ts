import { type Circuit, PRODUCT, SUM, SUM_OF_INPUTS } from './circuit.ts'

/**
 * A circuit laid out for passes: inputs and nodes are slots of one row of numbers, a sum of one input is that input, and
 * nodes of one depth, kind and number of children stand together, so that a pass runs straight through them.
 */
export interface PassPlan {
  readonly inputCount: number
  readonly slotCount: number
  /** Slot of the total. */
  readonly root: number
  /** By run of alike nodes: kind (`PRODUCT` or `SUM`), number of children, first slot after the run. */
  readonly runs: Int32Array
  /** Slots of the children, node by node. Node n, at slot `inputCount + n`, has those from `start[n]` to `start[n + 1] - 1`. */
  readonly children: Int32Array
  readonly start: Int32Array
  /** By node, `PRODUCT` or `SUM`. */
  readonly kind: Uint8Array
}

/** Numbers of one run in `runs`. */
export const RUN_STRIDE = 3

/** Lays a circuit out for passes. */
export function planPasses(circuit: Circuit): PassPlan {
  const { inputCount } = circuit
  const ranked = rankedNodes(circuit)
  const slotOf = new Int32Array(circuit.kind.length)
  ranked.forEach(({ node }, at) => {
    slotOf[node] = inputCount + at
  })
  const slotOfNode = (node: number): number => {
    const only = onlyInput(circuit, node)
    return only >= 0 ? only : (slotOf[node] as number)
  }
  const children: number[] = []
  const start = new Int32Array(ranked.length + 1)
  const runs: number[] = []
  ranked.forEach(({ node, depth, kind, count }, at) => {
    for (let child = circuit.start[node] as number; child < (circuit.start[node + 1] as number); child++) {
      const own = circuit.children[child] as number
      children.push(circuit.kind[node] === SUM_OF_INPUTS ? own : slotOfNode(own))
    }
    start[at + 1] = children.length
    const next = ranked[at + 1]
    if (next?.depth !== depth || next.kind !== kind || next.count !== count) runs.push(kind, count, inputCount + at + 1)
  })
  return {
    inputCount,
    slotCount: inputCount + ranked.length,
    root: slotOfNode(circuit.kind.length - 1),
    runs: Int32Array.from(runs),
    children: Int32Array.from(children),
    start,
    kind: Uint8Array.from(ranked, ({ kind }) => kind),
  }
}

/** The input a node is the sum of; -1 where it is anything else. */
function onlyInput({ kind, start, children }: Circuit, node: number): number {
  const first = start[node] as number
  return kind[node] === SUM_OF_INPUTS && start[node + 1] === first + 1 ? (children[first] as number) : -1
}

interface RankedNode {
  readonly node: number
  readonly depth: number
  readonly kind: number
  readonly count: number
}

/** Nodes that need a slot of their own, children before parents, alike ones together. */
function rankedNodes(circuit: Circuit): readonly RankedNode[] {
  const depths = new Int32Array(circuit.kind.length)
  const nodes: RankedNode[] = []
  for (let node = 0; node < circuit.kind.length; node++) {
    if (onlyInput(circuit, node) >= 0) continue
    const [from, end] = [circuit.start[node] as number, circuit.start[node + 1] as number]
    let depth = 1
    if (circuit.kind[node] !== SUM_OF_INPUTS)
      for (let at = from; at < end; at++)
        depth = Math.max(depth, 1 + (depths[circuit.children[at] as number] as number))
    depths[node] = depth
    nodes.push({ node, depth, kind: circuit.kind[node] === PRODUCT ? PRODUCT : SUM, count: end - from })
  }
  return nodes.sort(
    (one, other) =>
      one.depth - other.depth || one.kind - other.kind || one.count - other.count || one.node - other.node,
  )
}

/** Nodes whose value depends on any of the inputs from `first` to `end - 1`, children before parents. */
export function nodesAbove(
  { inputCount, slotCount, start, children }: PassPlan,
  first: number,
  end: number,
): Int32Array {
  const above = new Uint8Array(slotCount)
  above.fill(1, first, end)
  const found: number[] = []
  for (let node = 0; node < slotCount - inputCount; node++)
    for (let at = start[node] as number; at < (start[node + 1] as number); at++)
      if (above[children[at] as number] === 1) {
        above[inputCount + node] = 1
        found.push(node)
        break
      }
  return Int32Array.from(found)
}
