/** What a node is: a sum of inputs, a product of nodes, a sum of nodes that exclude each other. */
export const SUM_OF_INPUTS = 0
export const PRODUCT = 1
export const SUM = 2

/**
 * A smooth, deterministic, decomposable circuit (Darwiche, J. ACM 48 (2001) 608-647): children stand before parents,
 * the last node is the root. `children` of a sum of inputs are inputs, of any other node nodes.
 */
export interface Circuit {
  readonly kind: Uint8Array
  /** Node n has children `children[start[n]]` to `children[start[n + 1] - 1]`. */
  readonly start: Int32Array
  readonly children: Int32Array
  /** Inputs: one per class of each variable, then one per label of each table. */
  readonly inputCount: number
  readonly classAt: Int32Array
  readonly labelAt: Int32Array
}

export const nodeCount = (circuit: Circuit): number => circuit.kind.length

/** Grows a circuit node by node; equal nodes are one node. */
export class CircuitBuilder {
  readonly #kind: number[] = []
  readonly #start: number[] = [0]
  readonly #children: number[] = []
  readonly #known = new Map<string, number>()

  get edges(): number {
    return this.#children.length
  }

  /** The node of this kind with these children; a product or sum of one node is that node. */
  node(kind: number, children: readonly number[]): number {
    const [only] = children
    if (kind !== SUM_OF_INPUTS && children.length === 1 && only !== undefined) return only
    const key = `${kind}:${children.join()}`
    const known = this.#known.get(key)
    if (known !== undefined) return known
    const made = this.#kind.push(kind) - 1
    for (const child of children) this.#children.push(child)
    this.#start.push(this.#children.length)
    this.#known.set(key, made)
    return made
  }

  /** The circuit below `root`, without nodes it does not need. */
  finish(root: number, classAt: Int32Array, labelAt: Int32Array, inputCount: number): Circuit {
    const needed = new Uint8Array(this.#kind.length)
    needed[root] = 1
    for (let node = root; node >= 0; node--) {
      if (needed[node] === 0 || this.#kind[node] === SUM_OF_INPUTS) continue
      for (let at = this.#start[node] ?? 0; at < (this.#start[node + 1] ?? 0); at++) needed[this.#children[at] ?? 0] = 1
    }
    const moved = new Int32Array(this.#kind.length)
    const kind: number[] = []
    const start = [0]
    const children: number[] = []
    for (let node = 0; node <= root; node++) {
      if (needed[node] === 0) continue
      const own = this.#kind[node] ?? 0
      for (let at = this.#start[node] ?? 0; at < (this.#start[node + 1] ?? 0); at++) {
        const child = this.#children[at] ?? 0
        children.push(own === SUM_OF_INPUTS ? child : (moved[child] ?? 0))
      }
      start.push(children.length)
      moved[node] = kind.push(own) - 1
    }
    return {
      kind: Uint8Array.from(kind),
      start: Int32Array.from(start),
      children: Int32Array.from(children),
      inputCount,
      classAt,
      labelAt,
    }
  }
}
