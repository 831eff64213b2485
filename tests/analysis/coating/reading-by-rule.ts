import type { FieldReading } from '../../../electron/analysis/coating/latent-sites.ts'
import { nextReadingTerms, worthwhileSpots } from '../../../electron/analysis/coating/next-reading.ts'
import { mappedPanel } from './mapped-panel.ts'
import { gridNodes } from './simulated-nodes.ts'
import type { SimulatedPanel } from './simulated-panels.ts'

/** Draws and nodes a place is chosen on. */
const DRAWS = 150
const NODES = 900

/** The readings of a panel and `more` where the rule would have each, the field drawn anew after every one. */
export function readByRule(panel: SimulatedPanel, more: number, seed: string): readonly FieldReading[] {
  const nodes = gridNodes(panel.widthMm, panel.heightMm, NODES)
  const readings = [...panel.readings]
  for (let step = 0; step < more; step += 1) {
    const { film, drawn, volumeMm3 } = mappedPanel(panel, readings, nodes, { seed: `${seed} ${step}`, draws: DRAWS })
    const terms = nextReadingTerms(film, readings, (thicknessUm) => (2 + 0.03 * thicknessUm) / 2)
    const [spot] = worthwhileSpots(drawn, volumeMm3, new Uint8Array(drawn.nodes).fill(1), terms, 1)
    const node = spot?.node ?? 0
    readings.push(panel.readAt(nodes.x[node] as number, nodes.y[node] as number))
  }
  return readings
}

/** As many more readings at random places, any place of the panel as likely as the next. */
export const readAtRandom = (panel: SimulatedPanel, more: number, draw: () => number): readonly FieldReading[] => [
  ...panel.readings,
  ...Array.from({ length: more }, () => panel.readAt(panel.widthMm * draw(), panel.heightMm * draw())),
]
