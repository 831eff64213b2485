import { normalDraw, seededDraw } from '../../../electron/analysis/sampling/seeded-draws.ts'
import { gaugeReads, looseGrid, type SimulatedPanel } from './simulated-panels.ts'

/** What was done to the filler of a simulated panel between two visits. */
export const correctionKinds = ['one side taken out', 'thinned', 'taken out', 'nothing'] as const
export type CorrectionKind = (typeof correctionKinds)[number]

/**
 * The panel after the work, painted anew with a film at least as thick as before, and read at as many places of their own.
 * None of it is drawn from the model that is tested.
 */
export function correctedPanel(
  before: SimulatedPanel,
  kind: CorrectionKind,
  count: number,
  seed: string,
): SimulatedPanel {
  const draw = seededDraw(seed)
  const normal = normalDraw(draw)
  const between = (low: number, high: number): number => low + (high - low) * draw()
  const left = kind === 'thinned' ? between(0.1, 0.5) : kind === 'nothing' ? 1 : 0
  const angle = between(0, 2 * Math.PI)
  const [x0, y0] = [before.widthMm * between(0.3, 0.7), before.heightMm * between(0.3, 0.7)]
  const worked = (x: number, y: number): boolean =>
    kind !== 'one side taken out' || (x - x0) * Math.cos(angle) + (y - y0) * Math.sin(angle) > 0
  const fillerUm = (x: number, y: number): number => (worked(x, y) ? left : 1) * before.fillerUm(x, y)
  const trueFilmUm = kind === 'nothing' ? before.trueFilmUm : before.trueFilmUm * between(1, 1.3)
  const readAt = gaugeReads({ ...before, trueFilmUm, fillerUm }, normal)
  const readings = looseGrid(count, before.widthMm, before.heightMm, draw).map(([x, y]) => readAt(x, y))
  return { ...before, trueFilmUm, fillerUm, readAt, readings }
}
