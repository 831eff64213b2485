import type { PlanPoint } from '../../shared-types/finding.ts'
import type { PanelGrid } from './panel-grid.ts'

/** Fewest points of a contour on the panel that are given a figure: less is a speck. */
const LABELLED_POINTS = 12
/** Turn from the figure of one contour to that of the next, so that figures of contours near each other stand apart. */
const LABEL_TURN = 2.4
/** Most places offered for the figure of one contour: more than a drawing can fill with marks. */
const MOST_PLACES = 24
/** How far about a place the panel goes on, in cells, where the figure is to lie on it whole. */
const INSIDE_CELLS = 2

/**
 * Places on a contour where its figure may stand, best first: the figure is set at the first one that is free. They lie
 * on the panel, evenly about the contour, beginning in a direction from its middle that turns with the level; those well
 * inside the panel come before those at its edge. None for a speck.
 * @param shape rings of the contour in cells of the framed grid, its frame one cell wide
 */
export function contourPlaces(grid: PanelGrid, shape: readonly number[][][][], level: number): PlanPoint[] {
  const { columns, onPanel } = grid
  const panel = new Set(onPanel)
  const holds = (x: number, y: number): boolean =>
    x >= 0 && x < columns && y >= 0 && panel.has(Math.floor(y) * columns + Math.floor(x))
  const onIt = shape
    .flat(2)
    .map(([x = 0, y = 0]) => ({ x: x - 1, y: y - 1 }))
    .filter(({ x, y }) => holds(x, y))
  if (onIt.length < LABELLED_POINTS) return []
  const middleX = onIt.reduce((sum, { x }) => sum + x, 0) / onIt.length
  const middleY = onIt.reduce((sum, { y }) => sum + y, 0) / onIt.length
  const towards = onIt
    .map((at) => ({ ...at, along: Math.cos(Math.atan2(at.y - middleY, at.x - middleX) - level * LABEL_TURN) }))
    .sort((one, other) => other.along - one.along)
  const step = Math.max(1, towards.length / MOST_PLACES)
  const even = Array.from({ length: Math.min(MOST_PLACES, towards.length) }, (_, at) => towards[Math.floor(at * step)])
  const offered = even.filter((at) => at !== undefined)
  const isInside = ({ x, y }: { x: number; y: number }): boolean =>
    [-INSIDE_CELLS, INSIDE_CELLS].every((by) => holds(x + by, y) && holds(x, y + by))
  return [...offered.filter(isInside), ...offered.filter((at) => !isInside(at))].map(({ x, y }) => ({
    u: rounded(grid.u + x * grid.cellMm),
    v: rounded(grid.v + y * grid.cellMm),
  }))
}

const rounded = (value: number): number => Math.round(value * 10) / 10
