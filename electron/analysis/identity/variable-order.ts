/** A graph over variables: who stands in a rule or a table with whom, and how many classes each has. */
export interface VariableGraph {
  readonly neighbours: readonly ReadonlySet<number>[]
  readonly classCounts: readonly number[]
}

export interface EliminationOrder {
  /** By variable: steps between the middle of the tree of bags and the nearest bag the variable is in. Decide small first. */
  readonly distance: Int32Array
  /** Logarithm of the greatest number of combinations met at once, and the variables that make it. */
  readonly greatest: number
  readonly densest: readonly number[]
  /** Logarithm of the sum of the combinations over all steps. */
  readonly cost: number
}

/** Joins all variables that stand in one scope. */
export function variableGraph(classCounts: readonly number[], scopes: Iterable<readonly number[]>): VariableGraph {
  const neighbours = classCounts.map(() => new Set<number>())
  for (const scope of scopes)
    for (const one of scope) for (const other of scope) if (one !== other) neighbours[one]?.add(other)
  return { neighbours, classCounts }
}

const missingEdges = (around: readonly number[], neighbours: readonly ReadonlySet<number>[]): number => {
  let missing = 0
  around.forEach((one, at) => {
    for (let next = at + 1; next < around.length; next++)
      if (neighbours[one]?.has(around[next] ?? -1) !== true) missing += 1
  })
  return missing
}

type Score = (fill: number, weight: number) => number

/** Greedy elimination: what is eliminated last is decided first. */
function eliminate({ neighbours, classCounts }: VariableGraph, score: Score): EliminationOrder {
  const left = neighbours.map((around) => new Set(around))
  const logOf = classCounts.map((count) => Math.log(Math.max(1, count)))
  const scores = new Map<number, number>()
  const rate = (variable: number) => {
    const around = [...(left[variable] ?? [])]
    const weight = around.reduce((sum, other) => sum + (logOf[other] ?? 0), logOf[variable] ?? 0)
    scores.set(variable, score(missingEdges(around, left), weight))
  }
  for (let variable = 0; variable < left.length; variable++) rate(variable)
  const bags: (readonly number[])[] = []
  let [greatest, densest, sum] = [0, [] as readonly number[], 0]
  while (scores.size > 0) {
    let [chosen, least] = [-1, Number.POSITIVE_INFINITY]
    for (const [variable, own] of scores) if (own < least) [chosen, least] = [variable, own]
    const around = [...(left[chosen] ?? [])]
    const bag = around.reduce((total, other) => total + (logOf[other] ?? 0), logOf[chosen] ?? 0)
    sum += Math.exp(bag)
    if (bag > greatest) [greatest, densest] = [bag, [chosen, ...around]]
    const touched = new Set(around)
    for (const one of around) {
      const own = left[one]
      own?.delete(chosen)
      for (const other of around) if (other !== one) own?.add(other)
      for (const further of own ?? []) touched.add(further)
    }
    scores.delete(chosen)
    for (const variable of touched) if (scores.has(variable)) rate(variable)
    bags.push([chosen, ...around])
  }
  return { distance: distances(bags), greatest, densest, cost: Math.log(sum) }
}

/**
 * Distance of every variable from the middle of the tree of bags: the bag whose removal leaves the smallest largest part.
 * A bag's parent is the bag of the first of its other variables to be eliminated.
 */
function distances(bags: readonly (readonly number[])[]): Int32Array {
  const stepOf = new Int32Array(bags.length)
  bags.forEach(([own], step) => {
    stepOf[own as number] = step
  })
  const parents = bags.map(([, ...others]) =>
    others.reduce((least, other) => Math.min(least, stepOf[other] as number), bags.length),
  )
  const below = new Int32Array(bags.length).fill(1)
  const largestBelow = new Int32Array(bags.length)
  parents.forEach((parent, step) => {
    if (parent === bags.length) return
    below[parent] = (below[parent] as number) + (below[step] as number)
    largestBelow[parent] = Math.max(largestBelow[parent] as number, below[step] as number)
  })
  // A forest is joined at an unseen root, so that every tree has its own middle.
  const root = new Int32Array(bags.length)
  for (let step = bags.length - 1; step >= 0; step--) {
    const parent = parents[step] as number
    root[step] = parent === bags.length ? step : (root[parent] as number)
  }
  const middle = new Map<number, { readonly step: number; readonly largest: number }>()
  bags.forEach((_, step) => {
    const tree = root[step] as number
    const above = (below[tree] as number) - (below[step] as number)
    const largest = Math.max(above, largestBelow[step] as number)
    if (largest < (middle.get(tree)?.largest ?? Number.POSITIVE_INFINITY)) middle.set(tree, { step, largest })
  })
  const away = new Int32Array(bags.length).fill(-1)
  for (const { step } of middle.values()) {
    away[step] = 0
    for (let up = step; (parents[up] as number) < bags.length; up = parents[up] as number)
      away[parents[up] as number] = (away[up] as number) + 1
  }
  for (let step = bags.length - 1; step >= 0; step--)
    if (away[step] === -1) away[step] = (away[parents[step] as number] as number) + 1
  const distance = new Int32Array(bags.length).fill(bags.length)
  bags.forEach((bag, step) => {
    for (const variable of bag) distance[variable] = Math.min(distance[variable] as number, away[step] as number)
  })
  return distance
}

/**
 * The better of three greedy orders: least fill (Kjaerulff 1990), least weight, and fill weighed by weight.
 * What "better" means: fewer combinations summed over all steps.
 */
export function eliminationOrder(graph: VariableGraph): EliminationOrder {
  const scores: readonly Score[] = [
    (fill, weight) => fill + weight * 1e-3,
    (_, weight) => weight,
    (fill, weight) => (fill + 0.5) * weight,
  ]
  const orders = scores.map((score) => eliminate(graph, score))
  return orders.reduce((best, order) => (order.cost < best.cost ? order : best))
}
