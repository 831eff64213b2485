import type { CutLine } from '../../shared-types/coating-cut.ts'
import { middleOf, type PanelGrid } from './panel-grid.ts'

const RULE = 'through the place where the middle of the field is thickest, along the longer side of the panel'

/**
 * The line a panel is cut along unless somebody draws another: through the cell whose middle value is greatest, along the
 * longer side of the panel's box, from the first cell of that row or column on the panel to the last. Null where no value
 * passes the threshold.
 * @param values one for each cell of `grid.onPanel`, µm
 */
export function cutThroughThickest(
  grid: PanelGrid,
  values: readonly number[],
  thresholdUm: number,
): (CutLine & { readonly rule: string }) | null {
  const { columns, rows, cellMm, onPanel } = grid
  const most = values.reduce((best, value, at) => (value > (values[best] ?? 0) ? at : best), 0)
  const cell = onPanel[most]
  if (cell === undefined || (values[most] ?? 0) <= thresholdUm) return null
  const level = columns >= rows
  const own = onPanel.filter((other) =>
    level ? Math.floor(other / columns) === Math.floor(cell / columns) : other % columns === cell % columns,
  )
  const ends = [Math.min(...own), Math.max(...own)].map((end) => middleOf(grid, end))
  const [from, to] = ends
  if (from === undefined || to === undefined) return null
  const half = cellMm / 2
  return level
    ? { from: { u: from.u - half, v: from.v }, to: { u: to.u + half, v: to.v }, rule: RULE }
    : { from: { u: from.u, v: from.v - half }, to: { u: to.u, v: to.v + half }, rule: RULE }
}
