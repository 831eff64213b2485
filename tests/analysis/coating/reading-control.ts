import { extentInterval } from '../../../electron/analysis/coating/extent-answer.ts'
import type { FieldReading } from '../../../electron/analysis/coating/latent-sites.ts'
import { seededDraw } from '../../../electron/analysis/sampling/seeded-draws.ts'
import { mappedPanel } from './mapped-panel.ts'
import { readAtRandom, readByRule } from './reading-by-rule.ts'
import type { PanelKind } from './simulated-filler.ts'
import { gridNodes } from './simulated-nodes.ts'
import { simulatedPanel } from './simulated-panels.ts'

/** Readings a panel of the control has before any more are taken. */
const FIRST = 25

/** Widths of the volume's interval as it is shown, mm3: as read first, and after more readings by the rule and at random. */
export interface ControlOutcome {
  readonly startWidth: number
  readonly ruleWidth: number
  readonly randomWidth: number
}

/** One panel read at 25 places, then `more` times by the rule, drawing the field anew each time, and `more` times at random. */
export function ruleAgainstRandom(kind: PanelKind, seed: string, more: number): ControlOutcome {
  const panel = simulatedPanel(kind, FIRST, seed)
  const nodes = gridNodes(panel.widthMm, panel.heightMm, 900)
  const width = (readings: readonly FieldReading[]): number => {
    const { volumeMm3, question } = mappedPanel(panel, readings, nodes, { seed: `${seed} last`, draws: 399 })
    const { low, high } = extentInterval('volume', volumeMm3, question)
    return high - low
  }
  return {
    startWidth: width(panel.readings),
    ruleWidth: width(readByRule(panel, more, seed)),
    randomWidth: width(readAtRandom(panel, more, seededDraw(`${seed} at random`))),
  }
}
