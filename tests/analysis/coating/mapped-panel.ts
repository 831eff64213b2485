import type { ExtentQuestion } from '../../../electron/analysis/coating/extent-answer.ts'
import type { FillerDraws } from '../../../electron/analysis/coating/field-draws.ts'
import { fieldPrior } from '../../../electron/analysis/coating/field-prior.ts'
import { extentDraws } from '../../../electron/analysis/coating/field-summary.ts'
import { filmOfPanel } from '../../../electron/analysis/coating/film-reference.ts'
import { drawFiller } from '../../../electron/analysis/coating/latent-field.ts'
import { type FieldReading, isPaint, type PaintFilm } from '../../../electron/analysis/coating/latent-sites.ts'
import type { gridNodes } from './simulated-nodes.ts'
import type { SimulatedPanel } from './simulated-panels.ts'

/** Film and filler together thicker than this count as filler in the studies, um. */
export const THRESHOLD_UM = 300

/** Filler of a simulated panel as its readings tell it: area and volume draw by draw, and what their intervals rest on. */
export interface MappedPanel {
  readonly film: PaintFilm
  readonly drawn: FillerDraws
  readonly areaMm2: Float64Array
  readonly volumeMm3: Float64Array
  readonly question: ExtentQuestion
}

/** The field of a panel given some readings of it. */
export function mappedPanel(
  { widthMm, heightMm, reference }: SimulatedPanel,
  readings: readonly FieldReading[],
  nodes: ReturnType<typeof gridNodes>,
  { seed, draws }: { readonly seed: string; readonly draws: number },
): MappedPanel {
  const film = filmOfPanel(readings, reference)
  const drawn = drawFiller(readings, nodes, film, fieldPrior, { draws, seed, keepOn: () => undefined })
  const question: ExtentQuestion = {
    readings: readings.length,
    paint: readings.filter((reading) => isPaint(reading, film)).length,
    saturated: readings.filter(({ kind }) => kind === 'more than').length,
    assessedMm2: widthMm * heightMm,
    deepestUm: fieldPrior.deepestUm,
    thresholdUm: THRESHOLD_UM,
  }
  return { film, drawn, question, ...extentDraws(drawn, nodes.areaMm2, THRESHOLD_UM - film.medianUm) }
}
