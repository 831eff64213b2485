/**
 * Cheapest matching of every row to a column of its own, for at least as many columns as rows: the Hungarian method
 * (H. W. Kuhn, Naval Research Logistics Quarterly 2, 1955) by shortest augmenting paths with potentials, O(rows² · columns).
 * Returns for each row its column.
 */
export function shortestAssignment(cost: readonly (readonly number[])[]): number[] {
  const rows = cost.length
  const columns = cost[0]?.length ?? 0
  if (columns < rows) throw new Error('There are fewer places than things to be placed.')
  const rowPotential = new Float64Array(rows + 1)
  const columnPotential = new Float64Array(columns + 1)
  const rowOfColumn = new Int32Array(columns + 1)
  for (let row = 1; row <= rows; row++) augment(cost, row, rowPotential, columnPotential, rowOfColumn)
  const result = new Array<number>(rows).fill(0)
  for (let column = 1; column <= columns; column++) {
    const row = rowOfColumn[column] ?? 0
    if (row > 0) result[row - 1] = column - 1
  }
  return result
}

/** Gives one more row its column, moving others along the cheapest alternating path. Index 0 stands for "none". */
function augment(
  cost: readonly (readonly number[])[],
  newRow: number,
  rowPotential: Float64Array,
  columnPotential: Float64Array,
  rowOfColumn: Int32Array,
): void {
  const columns = columnPotential.length - 1
  const least = new Float64Array(columns + 1).fill(Number.POSITIVE_INFINITY)
  const cameFrom = new Int32Array(columns + 1)
  const done = new Uint8Array(columns + 1)
  rowOfColumn[0] = newRow
  let column = 0
  while ((rowOfColumn[column] ?? 0) !== 0) {
    done[column] = 1
    const row = rowOfColumn[column] ?? 0
    let step = Number.POSITIVE_INFINITY
    let next = 0
    for (let other = 1; other <= columns; other++) {
      if (done[other]) continue
      const slack = (cost[row - 1]?.[other - 1] ?? 0) - (rowPotential[row] ?? 0) - (columnPotential[other] ?? 0)
      if (slack < (least[other] ?? 0)) {
        least[other] = slack
        cameFrom[other] = column
      }
      if ((least[other] ?? 0) < step) {
        step = least[other] ?? 0
        next = other
      }
    }
    for (let other = 0; other <= columns; other++) {
      if (done[other]) {
        const moved = rowOfColumn[other] ?? 0
        rowPotential[moved] = (rowPotential[moved] ?? 0) + step
        columnPotential[other] = (columnPotential[other] ?? 0) - step
      } else {
        least[other] = (least[other] ?? 0) - step
      }
    }
    column = next
  }
  while (column !== 0) {
    const previous = cameFrom[column] ?? 0
    rowOfColumn[column] = rowOfColumn[previous] ?? 0
    column = previous
  }
}
