import { sectionAlongLine } from '../../../electron/analysis/coating/section-along-line.ts'
import { normalDraw, seededDraw } from '../../../electron/analysis/sampling/seeded-draws.ts'
import { coatingFieldInput } from '../../../shared-types/coating.ts'
import { panelKinds } from './simulated-filler.ts'
import { gridNodes } from './simulated-nodes.ts'
import { simulatedPanel } from './simulated-panels.ts'

/** Shares of the places of lines over simulated panels whose thickness lies in the band. */
interface HeldAlongLines {
  readonly all: number
  /** Of the places where filler lies. */
  readonly onFiller: number
  /** With the band drawn to a third of its width. */
  readonly third: number
}

/** Cuts panels of every kind, read at so many places each, along random lines, and compares with what lies there. */
export function heldAlongLines(stage: string, readings: number, panels: number): HeldAlongLines {
  const counts = { places: 0, held: 0, third: 0, filled: 0, filledHeld: 0 }
  for (let at = 0; at < panels; at += 1) {
    const seed = `${stage} ${readings} ${at}`
    const panel = simulatedPanel(panelKinds[at % panelKinds.length] ?? 'patches', readings, seed)
    const draw = seededDraw(`${seed} line`)
    const normal = normalDraw(draw)
    const { x, y, areaMm2 } = gridNodes(panel.widthMm, panel.heightMm, 400)
    const { places } = sectionAlongLine({
      field: coatingFieldInput.parse({
        readings: panel.readings.map(({ xMm, yMm, kind, thicknessUm, gaugeUm }) => ({
          xMm,
          yMm,
          value: { kind, um: thicknessUm },
          gaugeUm,
        })),
        nodes: Array.from(x, (xMm, node) => ({ xMm, yMm: y[node], areaMm2: areaMm2[node] })),
        gauge: { constantUm: 2, percent: 3, meaning: '95 % limit' },
        reference: panel.reference,
        draws: 199,
        seed,
      }),
      line: {
        from: { xMm: 0, yMm: panel.heightMm * draw() },
        to: { xMm: panel.widthMm, yMm: panel.heightMm * draw() },
        nearMm: 50,
      },
    })
    const [from, to] = [places[0], places.at(-1)]
    if (from === undefined || to === undefined) throw new Error('A line has no places.')
    const ends = seededDraw(`${seed} line`)
    const [y0, y1] = [panel.heightMm * ends(), panel.heightMm * ends()]
    for (const { alongMm, um } of places) {
      if (um === null) continue
      const share = alongMm / to.alongMm
      const filler = panel.fillerUm(share * panel.widthMm, y0 + share * (y1 - y0))
      const truth = panel.trueFilmUm * Math.exp(panel.filmDeviation * normal()) + filler
      const isHeld = truth >= um.low && truth <= um.high
      const isThird = truth >= um.middle - (um.middle - um.low) / 3 && truth <= um.middle + (um.high - um.middle) / 3
      counts.places += 1
      counts.held += Number(isHeld)
      counts.third += Number(isThird)
      if (filler <= 0) continue
      counts.filled += 1
      counts.filledHeld += Number(isHeld)
    }
  }
  return {
    all: counts.held / counts.places,
    onFiller: counts.filledHeld / Math.max(1, counts.filled),
    third: counts.third / counts.places,
  }
}
