import type { IndexedModel } from './identity-model.ts'

/** Values of one variable that no clause and no table tells apart, as classes; each value's class and each class's values. */
export interface ValueClasses {
  readonly classOf: Int32Array
  readonly members: readonly Int32Array[]
}

/** A table seen through the classes: for each class of each variable its slice, and for slices a label of the weight. */
export interface SlicedTable {
  readonly scope: readonly number[]
  /** By position in scope, class to slice. */
  readonly sliceOf: readonly Int32Array[]
  readonly slices: readonly number[]
  /** Row-major over slices: which of the table's distinct weights the cell has. */
  readonly labels: Int32Array
  readonly labelCount: number
  /** First cell of the table with each label. */
  readonly cellOfLabel: Int32Array
  /** Label of every cell of the table itself. */
  readonly labelOfCell: Int32Array
}

/** Splits classes until values with different keys are apart. */
function refine(classOf: Int32Array<ArrayBuffer>, keyOf: (value: number) => number): Int32Array<ArrayBuffer> {
  const found = new Map<string, number>()
  return classOf.map((before, value) => {
    const key = `${before}:${keyOf(value)}`
    const known = found.get(key) ?? found.size
    found.set(key, known)
    return known
  })
}

const strideOf = (sizes: readonly number[], position: number): number =>
  sizes.slice(position + 1).reduce((product, size) => product * size, 1)

/** Label of each cell: its weight where weights are given, else the cell itself. */
function labelCells(weights: Float64Array, kind: 'given' | 'count' | 'tell') {
  if (kind !== 'given') {
    const each = Int32Array.from(weights, (_, cell) => cell)
    return { labelOfCell: each, cellOfLabel: each }
  }
  const found = new Map<number, number>()
  const cells: number[] = []
  const labelOfCell = Int32Array.from(weights, (weight, cell) => {
    const known = found.get(weight)
    if (known !== undefined) return known
    found.set(weight, cells.length)
    return cells.push(cell) - 1
  })
  return { labelOfCell, cellOfLabel: Int32Array.from(cells) }
}

/** For each value of one variable of a table, the number of its slice: equal numbers, equal cells. */
function slicesOf(labels: Int32Array, sizes: readonly number[], position: number): Int32Array {
  const stride = strideOf(sizes, position)
  const size = sizes[position] ?? 1
  const keys = Array.from({ length: size }, () => '')
  for (let cell = 0; cell < labels.length; cell++) {
    const value = Math.floor(cell / stride) % size
    keys[value] += `${labels[cell]},`
  }
  const found = new Map<string, number>()
  return Int32Array.from(keys, (key) => {
    const known = found.get(key) ?? found.size
    found.set(key, known)
    return known
  })
}

/** Classes of every variable and every table of two or more variables seen through them. */
export function valueClasses(model: IndexedModel): {
  readonly classes: readonly ValueClasses[]
  readonly tables: readonly SlicedTable[]
} {
  const classOf = model.variables.map((variable) => new Int32Array(variable.values.length))
  const split = (variable: number, keyOf: (value: number) => number) => {
    const before = classOf[variable]
    if (before !== undefined) classOf[variable] = refine(before, keyOf)
  }
  for (const { literals } of model.clauses)
    for (const { variable, allowed } of literals) split(variable, (value) => allowed[value] ?? 0)
  const sliced = model.tables.map(({ scope, weights, kind }) => {
    const sizes = scope.map((variable) => model.variables[variable]?.values.length ?? 1)
    const { labelOfCell, cellOfLabel } = labelCells(weights, kind)
    const sliceOfValue = sizes.map((_, position) => slicesOf(labelOfCell, sizes, position))
    scope.forEach((variable, position) => {
      split(variable, (value) => sliceOfValue[position]?.[value] ?? 0)
    })
    return { scope, sizes, labelOfCell, cellOfLabel, sliceOfValue }
  })
  const classes = classOf.map((of) => {
    const members: number[][] = []
    of.forEach((number, value) => {
      const own = members[number] ?? []
      members[number] = own
      own.push(value)
    })
    return { classOf: of, members: members.map((values) => Int32Array.from(values)) }
  })
  const tables = sliced.map(({ scope, sizes, labelOfCell, cellOfLabel, sliceOfValue }): SlicedTable => {
    const sliceOf = scope.map((variable, position) =>
      Int32Array.from(classes[variable]?.members ?? [], (values) => sliceOfValue[position]?.[values[0] ?? 0] ?? 0),
    )
    const slices = sliceOfValue.map((of) => of.reduce((most, slice) => Math.max(most, slice + 1), 0))
    const labels = new Int32Array(slices.reduce((product, count) => product * count, 1))
    for (let cell = 0; cell < labelOfCell.length; cell++) {
      let at = 0
      sizes.forEach((size, position) => {
        const value = Math.floor(cell / strideOf(sizes, position)) % size
        at = at * (slices[position] ?? 1) + (sliceOfValue[position]?.[value] ?? 0)
      })
      labels[at] = labelOfCell[cell] ?? 0
    }
    return { scope, sliceOf, slices, labels, labelCount: cellOfLabel.length, cellOfLabel, labelOfCell }
  })
  return { classes, tables }
}
