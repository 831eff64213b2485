import type { CoatingFieldInput } from '../../shared-types/coating.ts'
import { coatingMeasures } from '../../shared-types/coating-measures.ts'
import type { PanelId } from '../../shared-types/panel.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { type PanelGrid, panelGrid } from '../figures/panel-grid.ts'
import { coatingQuestion, type PlacedPanel, placedPanel, type SortedSpots, sortedByMode } from './coating-question.ts'
import { withEdge } from './spot-marks.ts'
import { type GaugeRead, gaugesRead, mainGauge, type SpotRead, spotsRead, standingSpots } from './spots-read.ts'

/** The readings of one panel as a map or a cut takes them, and what they are taken with. */
export interface PanelRead extends SortedSpots {
  /** Spots of the panel, of the whole car, and those read before work that has been done, with the correction. */
  readonly own: readonly SpotRead[]
  readonly every: readonly SpotRead[]
  readonly before: ReturnType<typeof standingSpots>['before']
  /** Its spots with a place in the view drawn. */
  readonly standing: readonly SpotRead[]
  readonly gauge: GaugeRead
  readonly placed: PlacedPanel | null
  /** What is asked of its field, over the cells of a grid; null where the panel is drawn nowhere. Readings stand in the order of `mapped`. */
  readonly asked: { readonly grid: PanelGrid; readonly question: CoatingFieldInput } | null
}

export function panelRead(view: RecordView, panelId: PanelId): PanelRead {
  const measures = coatingMeasures(view.commission)
  const gauges = gaugesRead(view)
  const { standing: stillTrue, before } = standingSpots(view)
  const every = spotsRead(gauges, stillTrue)
  const own = every.filter(({ spot }) => spot.panelId === panelId)
  const placed = placedPanel(
    view,
    panelId,
    own.map(({ spot }) => spot),
  )
  const standing = own
    .filter(({ spot }) => spot.at !== null && spot.view === placed?.view.id)
    .map((read) => (placed === null ? read : withEdge(read, placed, gauges, measures)))
  const gauge = mainGauge(
    gauges,
    standing.map(({ spot }) => spot),
  )
  const sorted = sortedByMode(standing, measures)
  const read = { own, every, before, standing, gauge, placed, ...sorted }
  if (placed === null) return { ...read, asked: null }
  const grid = panelGrid(placed.view, placed.panel)
  const others = every.filter(({ spot }) => spot.panelId !== panelId)
  return { ...read, asked: { grid, question: coatingQuestion(view, placed, grid, sorted.mapped, others, gauge) } }
}
