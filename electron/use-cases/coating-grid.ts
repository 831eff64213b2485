import type { GridPlace, ReadingGrid } from '../../shared-types/coating-import.ts'
import { coatingMeasures } from '../../shared-types/coating-measures.ts'
import type { PlanPoint } from '../../shared-types/finding.ts'
import type { PanelId } from '../../shared-types/panel.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { boundsOf, flattened } from '../figures/cubic-path.ts'
import { edgeDistanceMm } from '../figures/edge-distance.ts'
import { middleOf, panelGrid } from '../figures/panel-grid.ts'
import { readOutline } from '../figures/path-text.ts'
import { placedPanel } from './coating-question.ts'
import type { UseCases } from './program.ts'

/** Places on a panel: enough for a first map whose intervals may be called 90 %. */
const PLACES = 25
/** A square of the grid counts when this share of it lies on the panel: a strip of window frame is read as single spots. */
const SQUARE_SHARE = 0.4

/** A grid laid over what of the panel can be read, row by row from its upper left corner as drawn; `spot` names what was read within a third of the spacing. */
export function readingGrid(view: RecordView, panelId: PanelId): ReadingGrid {
  const placed = placedPanel(view, panelId, [])
  if (placed === null)
    throw new ProblemError('not-found', 'This panel is on no sheet of the plan: read it as single spots with R.', {
      field: 'panelId',
    })
  const grid = panelGrid(placed.view, placed.panel)
  const apartMm = Math.max(40, Math.round(Math.sqrt((grid.onPanel.length * grid.cellMm ** 2) / PLACES) / 10) * 10)
  // No place may be called out that would be struck through once it is read.
  const widestProbeMm = Math.max(0, ...view.gauges.map(({ probeDiameterMm }) => probeDiameterMm ?? 0))
  const isClear = (at: PlanPoint) => widestProbeMm === 0 || edgeDistanceMm(placed.panel.outline, at) >= widestProbeMm
  const middles = new Map<string, { at: PlanPoint; clear: boolean }>()
  const cells = new Map<string, number>()
  const box = boundsOf(flattened(readOutline(placed.panel.outline)))
  // Of each square of the grid the readable cell nearest to its middle is read, clear of the edge where one is: at an outline the place moves inward.
  const away = ({ u, v }: PlanPoint, row: number, column: number) =>
    Math.hypot(u - box.u - (column + 0.5) * apartMm, v - box.v - (row + 0.5) * apartMm)
  for (const cell of grid.onPanel) {
    const here = middleOf(grid, cell)
    const row = Math.floor((here.v - box.v) / apartMm)
    const column = Math.floor((here.u - box.u) / apartMm)
    const key = `${row} ${column}`
    const known = middles.get(key)
    cells.set(key, (cells.get(key) ?? 0) + 1)
    const nearer = known === undefined || away(here, row, column) < away(known.at, row, column)
    if (!nearer && known.clear) continue
    const clear = isClear(here)
    if (known === undefined || (clear && !known.clear) || (nearer && clear === known.clear))
      middles.set(key, { at: here, clear })
  }
  const enough = SQUARE_SHARE * (apartMm / grid.cellMm) ** 2
  const rows = [...middles]
    .filter(([key]) => (cells.get(key) ?? 0) >= enough)
    .map(([key, { at }]) => ({ row: Number(key.split(' ')[0]), at }))
    .toSorted((one, other) => one.row - other.row || one.at.u - other.at.u)
  const own = view.spots.filter((spot) => spot.panelId === panelId && spot.view === placed.view.id)
  const { length } = coatingMeasures(view.commission)
  const rowNumbers = [...new Set(rows.map(({ row }) => row))]
  const places = rows.map(({ row, at }): GridPlace => {
    const inRow = rows.filter((other) => other.row === row)
    const read = own.find((spot) => spot.at !== null && Math.hypot(spot.at.u - at.u, spot.at.v - at.v) <= apartMm / 3)
    const words = `row ${rowNumbers.indexOf(row) + 1} of ${rowNumbers.length}, place ${inRow.findIndex((other) => other.at === at) + 1} of ${inRow.length}: ${length.text(at.u - box.u)} from the left and ${length.text(at.v - box.v)} from the upper edge as drawn`
    return { at, words, spot: read?.number ?? null }
  })
  return { panelId, view: placed.view.id, apartMm, places }
}

export const coatingGridUseCases: Pick<UseCases, 'coating.grid'> = {
  'coating.grid': async (program, { panelId }) => readingGrid(program.record().view(), panelId),
}
