import type { CoatingFieldAnswer } from '../../shared-types/coating.ts'
import type { MapLayer } from '../../shared-types/coating-map.ts'
import type { CoatingMeasures, ShownQuantity } from '../../shared-types/coating-measures.ts'
import { bandColours, mapBands } from '../figures/map-bands.ts'
import type { PanelGrid } from '../figures/panel-grid.ts'

/** Where bands begin, µm. The third and fourth fence the film of most refinished cars off from filler (practice, no source). */
const THICKNESS_LIMITS_UM = [60, 120, 200, 300, 500, 1000, 2000]
const UNCERTAINTY_LIMITS_UM = [20, 50, 100, 200, 400, 800]
const CHANCE_LIMITS = [10, 50, 90]

/** The three drawings of an answer over the cells it was asked about. */
export function layersOf(
  grid: PanelGrid,
  answer: CoatingFieldAnswer,
  thresholdUm: number,
  { thickness }: CoatingMeasures,
): readonly MapLayer[] {
  const { low, middle, high } = answer.thicknessUm
  const halfWidths = middle.map((_, at) => ((high[at] ?? 0) - (low[at] ?? 0)) / 2)
  const chances = answer.fillerChance.map((chance) => 100 * chance)
  return [
    layer('thickness', 'Thickness, most likely', thickness, grid, middle, THICKNESS_LIMITS_UM),
    layer(
      'uncertainty',
      'Half width of the 90 % interval of thickness',
      thickness,
      grid,
      halfWidths,
      UNCERTAINTY_LIMITS_UM,
    ),
    layer(
      'filler chance',
      `Chance of more than ${thickness.text(thresholdUm)}`,
      { unit: '%', figure: String },
      grid,
      chances,
      CHANCE_LIMITS,
    ),
  ]
}

function layer(
  id: MapLayer['id'],
  title: string,
  { unit, figure }: Pick<ShownQuantity, 'unit' | 'figure'>,
  grid: PanelGrid,
  values: readonly number[],
  limits: readonly number[],
): MapLayer {
  const printed = { unit, limits: limits.map((limit) => figure(limit)) }
  return { id, title, limits, printed, colours: bandColours(limits), bands: mapBands(grid, values, limits) }
}
