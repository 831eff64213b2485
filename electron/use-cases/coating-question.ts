import type { CoatingFieldInput } from '../../shared-types/coating.ts'
import type { CoatingMeasures } from '../../shared-types/coating-measures.ts'
import type { PlanPanel, PlanView } from '../../shared-types/figure.ts'
import type { PanelId } from '../../shared-types/panel.ts'
import type { Spot } from '../../shared-types/reading.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { carFilm } from '../analysis/coating/car-film.ts'
import { type PairedModes, pairedModes } from '../analysis/coating/paired-modes.ts'
import { groupedBy } from '../analysis/statistics/grouped-by.ts'
import { bodyPlan } from '../figures/body-plan.ts'
import { middleOf, type PanelGrid } from '../figures/panel-grid.ts'
import { classRanges } from '../sheets/coating-lists.ts'
import { panelAreaM2 } from '../sheets/panel-areas.ts'
import { rowMark } from './row-marks.ts'
import { shownIn } from './shown-in.ts'
import type { GaugeRead, SpotRead } from './spots-read.ts'

/** Film and filler together thicker than this are asked about as filler, µm. Common practice, no source. */
export const THRESHOLD_UM = 300

/** A panel where it is drawn. */
export interface PlacedPanel {
  readonly view: PlanView
  readonly panel: PlanPanel
}

/** The view in which most spots of the panel stand; among those the one in which it is largest; null where it is drawn in none. */
export function placedPanel(
  { particulars, commission }: RecordView,
  panelId: PanelId,
  spots: readonly Spot[],
): PlacedPanel | null {
  const { sheets } = bodyPlan(particulars.body, commission.names, particulars.dimensions, particulars.conditions)
  const standing = (view: PlanView) => spots.filter(({ at, view: own }) => at !== null && own === view.id).length
  const shown = sheets
    .flatMap(({ views }) => views)
    .flatMap((view) => view.panels.flatMap((panel) => (panel.panelId === panelId ? [{ view, panel }] : [])))
  return shown.toSorted((a, b) => standing(b.view) - standing(a.view) || b.panel.areaMm2 - a.panel.areaMm2)[0] ?? null
}

/** True surface of a panel, mm2: what turns away from the eye counts as well. */
export const surfaceMm2 = ({ particulars }: RecordView, { panelId, areaMm2 }: PlanPanel): number => {
  const developed = panelAreaM2(particulars.body, panelId)
  return developed === null ? areaMm2 : developed * 1e6
}

/** Spots sorted into those a map is drawn from and those it leaves to the comparison of modes. */
export interface SortedSpots {
  readonly mapped: readonly SpotRead[]
  readonly pairs: readonly PairedModes[]
  readonly leftOut: readonly string[]
}

/**
 * A map is of one mode, that of most spots: numbers of two modes do not mean the same. Where both were read at one place and
 * lead is what they are compatible with, the reading of the paint above it counts instead of paint and lead together.
 */
export function sortedByMode(standing: readonly SpotRead[], measures: CoatingMeasures): SortedSpots {
  const noted = standing.filter(({ spot }) => spot.mode !== 'not noted')
  const [most] = [...groupedBy(noted, ({ spot }) => spot.mode)].toSorted(([, a], [, b]) => b.length - a.length)
  const main = most?.[0] ?? 'not noted'
  const pairs = pairedModes(standing.flatMap(modeSpotOf), measures)
  const solder = pairs.filter(({ compatibleWith }) => main === 'magnetic' && compatibleWith === 'body solder')
  const overLead = new Set(solder.map(({ magnetic }) => magnetic.spot))
  const aboveLead = new Set(solder.map(({ eddyCurrent }) => eddyCurrent.spot))
  const inMode = ({ spot }: SpotRead) => spot.mode === main || spot.mode === 'not noted'
  const mapped = standing.filter((read) => {
    const { number } = read.spot
    return aboveLead.has(number) || (inMode(read) && !overLead.has(number))
  })
  const others = standing.filter((read) => !inMode(read) && !aboveLead.has(read.spot.number))
  return {
    mapped,
    pairs,
    leftOut: [
      ...solder.map(
        ({ magnetic, eddyCurrent }) =>
          `${rowMark('spots', magnetic.spot)}: paint and lead together; ${rowMark('spots', eddyCurrent.spot)} at the same place counts instead, the coating above the lead`,
      ),
      ...others.map(
        ({ spot }) => `${rowMark('spots', spot.number)}: read in ${spot.mode} mode, and a map is of one mode`,
      ),
    ],
  }
}

function modeSpotOf({ spot, kind, um, uncertaintyUm }: SpotRead) {
  if (spot.at === null || (spot.mode !== 'magnetic' && spot.mode !== 'eddy current')) return []
  const { number, mode, at } = spot
  return [{ spot: number, mode, uMm: at.u, vMm: at.v, kind, um: um ?? 0, standardUncertaintyUm: uncertaintyUm }]
}

/** What is asked of the field of one panel; the film of the rest of the car is its reference. */
export function coatingQuestion(
  view: RecordView,
  { panel }: PlacedPanel,
  grid: PanelGrid,
  mapped: readonly SpotRead[],
  others: readonly SpotRead[],
  { checked }: GaugeRead,
): CoatingFieldInput {
  // A panel that turns away from the eye has more surface than its drawing: each cell stands for its share of it.
  const cellMm2 = (grid.cellMm ** 2 * surfaceMm2(view, panel)) / panel.areaMm2
  const car = carFilm(
    others.flatMap(({ spot, kind, um }) => (kind === 'value' && um !== null ? [{ panel: spot.panelId, um }] : [])),
  )
  return {
    readings: mapped.flatMap(({ spot, kind, um, uncertaintyUm }) => {
      if (spot.at === null) return []
      const value = kind === 'no reading' || um === null ? ({ kind: 'no reading' } as const) : { kind, um }
      return [{ xMm: spot.at.u, yMm: spot.at.v, value, gaugeUm: Math.max(0.01, uncertaintyUm) }]
    }),
    nodes: grid.onPanel.map((cell) => {
      const { u, v } = middleOf(grid, cell)
      return { xMm: u, yMm: v, areaMm2: cellMm2, readable: true }
    }),
    gauge: checked.declared,
    reference: car === null ? null : { medianUm: car.medianUm, logDeviation: car.logDeviation },
    thresholdUm: THRESHOLD_UM,
    ...(car === null
      ? {}
      : {
          classes: {
            ranges: [...classRanges()],
            carFilm: { medianUm: car.medianUm, standardUncertaintyUm: car.standardUncertaintyUm },
          },
        }),
    draws: 399,
    seed: `coating of ${panel.panelId}`,
    shownIn: shownIn(view),
  }
}
