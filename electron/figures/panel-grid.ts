import type { PlanPanel, PlanView } from '../../shared-types/figure.ts'
import { boundsOf, flattened, isInside, type Point } from './cubic-path.ts'
import { readOutline, readPath } from './path-text.ts'

/** Square cells over the box of a panel, row by row from the left upper corner. */
export interface PanelGrid {
  readonly u: number
  readonly v: number
  readonly cellMm: number
  readonly columns: number
  readonly rows: number
  /** Numbers of the cells whose middle lies on the panel. */
  readonly onPanel: readonly number[]
}

/** Cells across the longer side of a panel, and at most in all: fine enough to draw, few enough to compute at once. */
const ALONG = 64
const FINEST_MM = 12

/**
 * Lays square cells over one panel of a view. Another panel let into it (a lid, a flap) is left out: a cell belongs to the
 * smallest outline it lies in. So is what stands before it or is no metal: glass, bumpers, lamps, wheels.
 */
export function panelGrid(view: PlanView, panel: PlanPanel): PanelGrid {
  const known = laid.get(panel)
  if (known !== undefined) return known
  const grid = laidGrid(view, panel)
  laid.set(panel, grid)
  return grid
}

/** Grids already laid: a plan keeps its panels for as long as it is drawn, and a grid takes longer than a map's question. */
const laid = new WeakMap<PlanPanel, PanelGrid>()

function laidGrid(view: PlanView, panel: PlanPanel): PanelGrid {
  const outline = flattened(readOutline(panel.outline))
  const box = boundsOf(outline)
  const cellMm = Math.max(FINEST_MM, Math.max(box.width, box.height) / ALONG)
  const columns = Math.max(1, Math.ceil(box.width / cellMm))
  const rows = Math.max(1, Math.ceil(box.height / cellMm))
  const letIn = [
    ...view.panels
      .filter((other) => other.panelId !== panel.panelId && other.areaMm2 < panel.areaMm2)
      .map(({ outline: other }) => flattened(readOutline(other))),
    ...view.ink.filter(({ occlude }) => occlude).flatMap(({ path }) => readPath(path).map((ring) => flattened(ring))),
  ].filter((other) => meet(boundsOf(other), box))
  const onPanel: number[] = []
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const middle: Point = [box.u + (column + 0.5) * cellMm, box.v + (row + 0.5) * cellMm]
      if (isInside(outline, middle) && !letIn.some((other) => isInside(other, middle)))
        onPanel.push(row * columns + column)
    }
  return { u: box.u, v: box.v, cellMm, columns, rows, onPanel }
}

/** Middle of a cell, view millimetres. */
export function middleOf({ u, v, cellMm, columns }: PanelGrid, cell: number): { u: number; v: number } {
  return { u: u + ((cell % columns) + 0.5) * cellMm, v: v + (Math.floor(cell / columns) + 0.5) * cellMm }
}

type Box = ReturnType<typeof boundsOf>
const meet = (a: Box, b: Box): boolean =>
  a.u < b.u + b.width && b.u < a.u + a.width && a.v < b.v + b.height && b.v < a.v + a.height
