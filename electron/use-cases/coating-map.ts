import type { CoatingFieldAnswer, CoatingFieldInput, DeclaredError } from '../../shared-types/coating.ts'
import type { CoatingMap, MapLayer, MappedSpot } from '../../shared-types/coating-map.ts'
import type { PlanPanel, PlanView } from '../../shared-types/figure.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Spot } from '../../shared-types/reading.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { carFilm } from '../analysis/coating/car-film.ts'
import { groupedBy } from '../analysis/statistics/grouped-by.ts'
import { spotSummary } from '../analysis/statistics/spot-summary.ts'
import { bodyPlan } from '../figures/body-plan.ts'
import { bandColours, mapBands } from '../figures/map-bands.ts'
import { panelAreaM2 } from '../figures/panel-areas.ts'
import { middleOf, type PanelGrid, panelGrid } from '../figures/panel-grid.ts'
import { computeAside } from './computing/compute-aside.ts'
import type { UseCases } from './program.ts'
import { rowMark } from './row-marks.ts'

/** Where bands begin, µm. The third and fourth fence the film of most refinished cars off from filler (practice, no source). */
const THICKNESS_LIMITS_UM = [60, 120, 200, 300, 500, 1000, 2000]
const UNCERTAINTY_LIMITS_UM = [20, 50, 100, 200, 400, 800]
const CHANCE_LIMITS = [10, 50, 90]
const THRESHOLD_UM = 300

/** Supposed where a gauge declares none: common practice, no source. */
const USUAL_ERROR: DeclaredError = { constantUm: 3, percent: 3, meaning: 'tolerance' }

const CANNOT_TELL =
  'A map of thickness cannot tell factory paint from a skilful strip and refinish of the same thickness, nor filler from thick paint or lead by thickness alone, nor whether metal is missing behind: that takes a look at the back.'

interface Placed {
  readonly view: PlanView
  readonly panel: PlanPanel
}

/** The view in which most spots of the panel stand; among those the one in which it is largest. */
function placeOf(views: readonly PlanView[], panelId: string, spots: readonly Spot[]): Placed | null {
  const standing = (view: PlanView) => spots.filter(({ at, view: own }) => at !== null && own === view.id).length
  const shown = views.flatMap((view) =>
    view.panels.flatMap((panel) => (panel.panelId === panelId ? [{ view, panel }] : [])),
  )
  return shown.toSorted((a, b) => standing(b.view) - standing(a.view) || b.panel.areaMm2 - a.panel.areaMm2)[0] ?? null
}

function readOf(spot: Spot): { um: number | null; orMore: boolean } {
  const { meanUm, atLeast } = spotSummary({ values: spot.values, gauge: null })
  return { um: meanUm, orMore: atLeast }
}

/** Declared error of the gauge that read most of the spots, and how it is said. */
function gaugeOf(view: RecordView, spots: readonly Spot[]): { error: DeclaredError; words: string } {
  const numbers = spots.flatMap(({ gauge }) => gauge ?? [])
  const [most] = [...groupedBy(numbers, (number) => number)].toSorted(([, a], [, b]) => b.length - a.length)
  const gauge = view.gauges.find(({ number }) => number === most?.[0])
  if (gauge === undefined || gauge.errorUm === null) {
    const words = `declared error not noted; ${USUAL_ERROR.constantUm} µm + ${USUAL_ERROR.percent} % of the reading supposed (common practice, no source)`
    return { error: USUAL_ERROR, words }
  }
  const { number, name, errorUm, errorPercent } = gauge
  const error: DeclaredError = { constantUm: errorUm, percent: errorPercent ?? 0, meaning: 'tolerance' }
  return {
    error,
    words: `${rowMark('gauges', number)} ${name}, declared error ${errorUm} µm + ${errorPercent ?? 0} % of the reading`,
  }
}

const surfaceMm2 = (view: RecordView, { panelId, areaMm2 }: PlanPanel): number => {
  const developed = panelAreaM2(view.particulars.body, panelId)
  return developed === null ? areaMm2 : developed * 1e6
}

function questionOf(
  view: RecordView,
  placed: Placed,
  grid: PanelGrid,
  spots: readonly Spot[],
  error: DeclaredError,
): CoatingFieldInput {
  const { panelId } = placed.panel
  // A panel that turns away from the eye has more surface than its drawing: each cell stands for its share of it.
  const cellMm2 = (grid.cellMm ** 2 * surfaceMm2(view, placed.panel)) / placed.panel.areaMm2
  const others = view.spots.flatMap((spot) => {
    const { um, orMore } = readOf(spot)
    return spot.panelId === panelId || um === null || orMore ? [] : [{ panel: spot.panelId, um }]
  })
  return {
    readings: spots.flatMap((spot) => {
      if (spot.at === null) return []
      const { um, orMore } = readOf(spot)
      const value =
        um === null ? ({ kind: 'no reading' } as const) : ({ kind: orMore ? 'more than' : 'value', um } as const)
      return [{ xMm: spot.at.u, yMm: spot.at.v, value }]
    }),
    nodes: grid.onPanel.map((cell) => {
      const { u, v } = middleOf(grid, cell)
      return { xMm: u, yMm: v, areaMm2: cellMm2, readable: true }
    }),
    gauge: error,
    reference: carFilm(others),
    thresholdUm: THRESHOLD_UM,
    draws: 399,
    seed: `coating of ${panelId}`,
  }
}

function layersOf(grid: PanelGrid, answer: CoatingFieldAnswer): readonly MapLayer[] {
  const { low, middle, high } = answer.thicknessUm
  const halfWidths = middle.map((_, at) => ((high[at] ?? 0) - (low[at] ?? 0)) / 2)
  const chances = answer.fillerChance.map((chance) => 100 * chance)
  return [
    {
      id: 'thickness',
      title: 'Thickness, most likely',
      unit: 'µm',
      limits: THICKNESS_LIMITS_UM,
      colours: bandColours(THICKNESS_LIMITS_UM),
      bands: mapBands(grid, middle, THICKNESS_LIMITS_UM),
    },
    {
      id: 'uncertainty',
      title: 'Half width of the 90 % interval of thickness',
      unit: 'µm',
      limits: UNCERTAINTY_LIMITS_UM,
      colours: bandColours(UNCERTAINTY_LIMITS_UM),
      bands: mapBands(grid, halfWidths, UNCERTAINTY_LIMITS_UM),
    },
    {
      id: 'filler chance',
      title: `Chance of more than ${THRESHOLD_UM} µm`,
      unit: '%',
      limits: CHANCE_LIMITS,
      colours: bandColours(CHANCE_LIMITS),
      bands: mapBands(grid, chances, CHANCE_LIMITS),
    },
  ]
}

const nothing = {
  layers: [],
  film: null,
  fillerArea: null,
  fillerVolume: null,
  assessedM2: 0,
  notAssessedM2: null,
  thresholdUm: THRESHOLD_UM,
  leftOut: [],
  next: [],
  stopping: '',
  method: '',
  cannotTell: CANNOT_TELL,
} as const

/** What the readings of one panel say of its coating, computed anew from the record. */
export async function coatingMap(view: RecordView, panelId: string): Promise<CoatingMap> {
  const { particulars, commission } = view
  const plan = bodyPlan(particulars.body, commission.names, particulars.dimensions, particulars.conditions)
  const own = view.spots.filter((spot) => spot.panelId === panelId)
  const placed = placeOf(
    plan.sheets.flatMap(({ views }) => views),
    panelId,
    own,
  )
  const standing = own.filter(({ at, view: in_ }) => at !== null && in_ === placed?.view.id)
  const { error, words: gauge } = gaugeOf(view, standing)
  const spots = standing.flatMap((spot): MappedSpot[] =>
    spot.at === null ? [] : [{ spot: spot.number, at: spot.at, ...readOf(spot) }],
  )
  const head = { ...nothing, panelId, view: placed?.view.id ?? null, spots, gauge }
  if (placed === null) return { ...head, problem: 'This panel is on no sheet of the plan, so there is nothing to map.' }
  const grid = panelGrid(placed.view, placed.panel)
  try {
    const answer = await computeAside('coating', questionOf(view, placed, grid, standing, error))
    const unplaced = own.length - standing.length
    return {
      ...head,
      problem: null,
      layers: layersOf(grid, answer),
      film: {
        um: answer.filmUm,
        words: `Film of this panel, where it may be paint: about ${Math.round(answer.filmUm)} µm.`,
      },
      fillerArea: answer.fillerAreaM2,
      fillerVolume: answer.fillerVolumeCm3,
      assessedM2: answer.assessedM2,
      notAssessedM2: Math.max(0, surfaceMm2(view, placed.panel) / 1e6 - answer.assessedM2),
      leftOut: [
        ...answer.leftOut.map(({ count, why }) => `${count}: ${why}`),
        ...(unplaced === 0 ? [] : [`${unplaced}: no place in this view`]),
      ],
      next: answer.next.spots.map(({ xMm, yMm, words }) => ({ at: { u: xMm, v: yMm }, words })),
      stopping: answer.next.words,
      method: answer.method,
    }
  } catch (fault) {
    if (fault instanceof ProblemError && fault.problem.code === 'rule-of-the-trade')
      return { ...head, problem: fault.message }
    throw fault
  }
}

/** A panel goes into the report when it has this many spots with a place, and one of them is over the threshold. */
const SPOTS_TO_PRINT = 5

/** Maps of the panels whose readings leave open how much filler there is, in the order they were first read. */
export async function coatingMapsOf(view: RecordView): Promise<readonly CoatingMap[]> {
  const panels = [
    ...groupedBy(
      view.spots.filter(({ at }) => at !== null),
      ({ panelId }) => panelId,
    ),
  ]
  const open = panels.filter(
    ([, spots]) => spots.length >= SPOTS_TO_PRINT && spots.some((spot) => (readOf(spot).um ?? 0) > THRESHOLD_UM),
  )
  const maps = await Promise.all(open.map(([panelId]) => coatingMap(view, panelId)))
  return maps.filter(({ problem }) => problem === null)
}

export const coatingMapUseCases: Pick<UseCases, 'coating.map'> = {
  'coating.map': (program, { panelId }) => coatingMap(program.record().view(), panelId),
}
