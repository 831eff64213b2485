import { contours } from 'd3-contour'
import type { MapBand } from '../../shared-types/coating-map.ts'
import { cividis } from '../../shared-types/tokens.ts'
import { contourPlaces } from './contour-places.ts'
import type { PanelGrid } from './panel-grid.ts'

/**
 * One path for each band of a map: the area in which the value is at least `from`, by marching squares with ends
 * interpolated between the middles of cells. Bands are drawn over each other, thin first, and cut to the outline of the panel;
 * so cells beside the panel are given the value of the nearest cell on it. Bands nobody would see are left out.
 * @param values one for each cell of `grid.onPanel`
 * @param limits rising; the first band holds everything and begins at nought
 */
export function mapBands(grid: PanelGrid, values: readonly number[], limits: readonly number[]): MapBand[] {
  const { columns, rows, onPanel } = grid
  const cells = spread(grid, values)
  const framed = (columns + 2) * (rows + 2)
  // One cell more all round, so that no band ends short of the outline.
  const wide = Array.from({ length: framed }, (_, at) => {
    const column = Math.min(columns - 1, Math.max(0, (at % (columns + 2)) - 1))
    const row = Math.min(rows - 1, Math.max(0, Math.floor(at / (columns + 2)) - 1))
    return cells[row * columns + column] ?? 0
  })
  if (onPanel.length === 0) return []
  const draw = contours()
    .size([columns + 2, rows + 2])
    .smooth(true)
  const colours = bandColours(limits)
  return [0, ...limits].flatMap((from, level) => {
    const shape = from === 0 ? wholeBox(columns, rows) : draw.contour(wide, from).coordinates
    const path = shape.map((rings) => rings.map((ring) => ringPath(grid, ring)).join('')).join('')
    const places = from === 0 ? [] : contourPlaces(grid, shape, level)
    return path === '' ? [] : [{ from, level, colour: colours[level] ?? cividis[0], path, places }]
  })
}

/** Colours of the bands between limits: evenly along cividis, thin to thick. */
export const bandColours = (limits: readonly number[]): readonly string[] =>
  [0, ...limits].map(
    (_, level) => cividis[Math.round((level / Math.max(1, limits.length)) * (cividis.length - 1))] ?? cividis[0],
  )

const wholeBox = (columns: number, rows: number): number[][][][] => [
  [
    [
      [0, 0],
      [columns + 2, 0],
      [columns + 2, rows + 2],
      [0, rows + 2],
      [0, 0],
    ],
  ],
]

/** The contour library counts from the corner of the frame; a frame cell is one cell wide. */
function ringPath({ u, v, cellMm }: PanelGrid, ring: readonly (readonly number[])[]): string {
  const text = ring.map(([x = 0, y = 0]) => `${rounded(u + (x - 1) * cellMm)} ${rounded(v + (y - 1) * cellMm)}`)
  return `M${text.slice(0, -1).join('L')}Z`
}

const rounded = (value: number): number => Math.round(value * 10) / 10

/** Values of all cells: those beside the panel take the value of the nearest one on it, ring by ring. */
function spread({ columns, rows, onPanel }: PanelGrid, values: readonly number[]): Float64Array {
  const cells = new Float64Array(columns * rows).fill(Number.NaN)
  onPanel.forEach((cell, at) => {
    cells[cell] = values[at] ?? 0
  })
  let edge = [...onPanel]
  while (edge.length > 0) {
    const next: number[] = []
    for (const cell of edge) {
      const column = cell % columns
      for (const beside of [
        column > 0 ? cell - 1 : -1,
        column < columns - 1 ? cell + 1 : -1,
        cell - columns,
        cell + columns,
      ]) {
        if (beside < 0 || beside >= cells.length || !Number.isNaN(cells[beside])) continue
        cells[beside] = cells[cell] as number
        next.push(beside)
      }
    }
    edge = next
  }
  return cells
}
