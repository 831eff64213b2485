import type { FillerDraws } from '../../../electron/analysis/coating/field-draws.ts'
import { fieldPrior } from '../../../electron/analysis/coating/field-prior.ts'
import { extentDraws } from '../../../electron/analysis/coating/field-summary.ts'
import { filmOfPanel } from '../../../electron/analysis/coating/film-reference.ts'
import { drawnInterval } from '../../../electron/analysis/coating/interval-calibration.ts'
import { drawFiller } from '../../../electron/analysis/coating/latent-field.ts'
import type { FieldReading } from '../../../electron/analysis/coating/latent-sites.ts'
import { worthwhileSpots } from '../../../electron/analysis/coating/next-reading.ts'
import { seededDraw } from '../../../electron/analysis/sampling/seeded-draws.ts'
import { gridNodes } from './coverage-study.ts'
import type { PanelKind } from './simulated-filler.ts'
import { type SimulatedPanel, simulatedPanel, truthOf } from './simulated-panels.ts'

const THRESHOLD_UM = 300

/** Widths of the interval of volume after more readings, at the places of the rule and at random ones, and whether each holds the truth. */
export interface ControlOutcome {
  readonly startWidth: number
  readonly ruleWidth: number
  readonly randomWidth: number
  readonly ruleHolds: boolean
  readonly randomHolds: boolean
}

/** One panel read at 25 places, then `more` times by the rule, drawing the field anew each time, and `more` times at random. */
export function ruleAgainstRandom(kind: PanelKind, seed: string, more: number): ControlOutcome {
  const panel = simulatedPanel(kind, 25, seed)
  const nodes = gridNodes(panel.widthMm, panel.heightMm, 900)
  const draw = seededDraw(`${seed} at random`)
  const byRule = [...panel.readings]
  for (let step = 0; step < more; step += 1) {
    const { drawn, volume } = mapped(panel, byRule, nodes, `${seed} ${step}`, 150)
    const film = filmOfPanel(byRule, panel.reference)
    const terms = {
      saturationUm: 2000 - film.medianUm,
      paintUm: 0.35 * film.medianUm,
      readingDeviationUm: (fillerUm: number) => Math.hypot(0.1 * film.medianUm, 1 + 0.015 * (film.medianUm + fillerUm)),
    }
    const [spot] = worthwhileSpots(drawn, volume, new Uint8Array(drawn.nodes).fill(1), terms, 1)
    const node = spot?.node ?? 0
    byRule.push(panel.readAt(nodes.x[node] as number, nodes.y[node] as number))
  }
  const atRandom = [
    ...panel.readings,
    ...Array.from({ length: more }, () => panel.readAt(panel.widthMm * draw(), panel.heightMm * draw())),
  ]
  const truth = truthOf(panel, THRESHOLD_UM).volumeMm3
  const outcome = (readings: readonly FieldReading[]) => {
    const { low, high } = drawnInterval(mapped(panel, readings, nodes, `${seed} last`, 399).volume)
    return { width: high - low, holds: low <= truth && truth <= high }
  }
  const [start, rule, random] = [outcome(panel.readings), outcome(byRule), outcome(atRandom)]
  return {
    startWidth: start.width,
    ruleWidth: rule.width,
    randomWidth: random.width,
    ruleHolds: rule.holds,
    randomHolds: random.holds,
  }
}

function mapped(
  panel: SimulatedPanel,
  readings: readonly FieldReading[],
  nodes: ReturnType<typeof gridNodes>,
  seed: string,
  draws: number,
): { readonly drawn: FillerDraws; readonly volume: Float64Array } {
  const film = filmOfPanel(readings, panel.reference)
  const drawn = drawFiller(readings, nodes, film, fieldPrior, { draws, seed, keepOn: () => undefined })
  return { drawn, volume: extentDraws(drawn, nodes.areaMm2, THRESHOLD_UM - film.medianUm).volumeMm3 }
}
