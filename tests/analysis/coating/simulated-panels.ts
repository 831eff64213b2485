import type { FieldReading, PaintFilm } from '../../../electron/analysis/coating/latent-sites.ts'
import { normalDraw, seededDraw } from '../../../electron/analysis/sampling/seeded-draws.ts'
import { type FillerShape, type PanelKind, shapesOf } from './simulated-filler.ts'

/** A panel with readings and the truth behind them. */
export interface SimulatedPanel {
  readonly kind: PanelKind
  readonly widthMm: number
  readonly heightMm: number
  readonly readings: readonly FieldReading[]
  readonly reference: PaintFilm
  readonly trueFilmUm: number
  /** True depth of filler at a place, um. */
  readonly fillerUm: (xMm: number, yMm: number) => number
  /** Reads the panel once more at a place, as the gauge would. */
  readonly readAt: (xMm: number, yMm: number) => FieldReading
  readonly filmDeviation: number
  readonly saturationUm: number
}

type Read = Pick<SimulatedPanel, 'trueFilmUm' | 'fillerUm' | 'filmDeviation' | 'saturationUm'>

/** How a gauge of ±(2 µm + 3 %) with a limit reads a panel whose filler is rough. */
export const gaugeReads =
  ({ trueFilmUm, fillerUm, filmDeviation, saturationUm }: Read, normal: () => number) =>
  (xMm: number, yMm: number): FieldReading => {
    const film = trueFilmUm * Math.exp(filmDeviation * normal())
    const filler = fillerUm(xMm, yMm) * Math.max(0, 1 + 0.15 * normal())
    const thickness = film + filler
    const read = Math.max(0, thickness + ((2 + 0.03 * thickness) / 2) * normal())
    return read > saturationUm
      ? { xMm, yMm, kind: 'more than', thicknessUm: saturationUm, gaugeUm: (2 + 0.03 * saturationUm) / 2 }
      : { xMm, yMm, kind: 'value', thicknessUm: read, gaugeUm: (2 + 0.03 * read) / 2 }
  }

/** A panel of the kind, read at `count` places: three in four times on a loose grid, else half of them around thick readings. */
export function simulatedPanel(kind: PanelKind, count: number, seed: string): SimulatedPanel {
  const draw = seededDraw(seed)
  const normal = normalDraw(draw)
  const between = (low: number, high: number): number => low + (high - low) * draw()
  const widthMm = between(700, 1400)
  const heightMm = between(500, 1000)
  const trueFilmUm = between(80, 180)
  const filmDeviation = between(0.06, 0.13)
  const saturationUm = kind === 'saturated' ? between(1200, 1600) : 2000
  const shapes = shapesOf(kind, { widthMm, heightMm, between })
  const fillerUm = (x: number, y: number): number => depthAt(shapes, x, y)
  const readAt = gaugeReads({ trueFilmUm, fillerUm, filmDeviation, saturationUm }, normal)
  const followed = draw() < 0.25
  const readings = looseGrid(followed ? Math.ceil(count / 2) : count, widthMm, heightMm, draw).map(([x, y]) =>
    readAt(x, y),
  )
  while (readings.length < count) {
    const thick = readings.filter(({ thicknessUm }) => thicknessUm > 1.6 * trueFilmUm)
    const near = thick[Math.floor(draw() * thick.length)]
    const x = near === undefined ? between(0, widthMm) : near.xMm + 90 * normal()
    const y = near === undefined ? between(0, heightMm) : near.yMm + 90 * normal()
    if (x > 0 && x < widthMm && y > 0 && y < heightMm) readings.push(readAt(x, y))
  }
  const off = kind === 'wrong reference' ? (draw() < 0.5 ? 0.75 : 1.3) : Math.exp(0.06 * normal())
  return {
    kind,
    widthMm,
    heightMm,
    readings,
    reference: { medianUm: trueFilmUm * off, logDeviation: 0.1 },
    trueFilmUm,
    fillerUm,
    readAt,
    filmDeviation,
    saturationUm,
  }
}

function depthAt(shapes: readonly FillerShape[], x: number, y: number): number {
  let deepest = 0
  for (const shape of shapes) deepest = Math.max(deepest, shape(x, y))
  return deepest
}

/** About `count` places on a grid, each moved within its cell; what is missing is strewn. */
export function looseGrid(count: number, widthMm: number, heightMm: number, draw: () => number): [number, number][] {
  const columns = Math.max(1, Math.min(count, Math.round(Math.sqrt((count * widthMm) / heightMm))))
  const rows = Math.max(1, Math.floor(count / columns))
  return Array.from({ length: count }, (_, at) =>
    at < columns * rows
      ? [
          ((at % columns) + 0.15 + 0.7 * draw()) * (widthMm / columns),
          (Math.floor(at / columns) + 0.15 + 0.7 * draw()) * (heightMm / rows),
        ]
      : [draw() * widthMm, draw() * heightMm],
  )
}

/** Area and volume of filler where film and filler together exceed a thickness, mm2 and mm3. */
export function truthOf(panel: SimulatedPanel, thresholdUm: number): { areaMm2: number; volumeMm3: number } {
  const side = 120
  const cell = (panel.widthMm * panel.heightMm) / side ** 2
  let areaMm2 = 0
  let volumeMm3 = 0
  for (let at = 0; at < side ** 2; at += 1) {
    const depth = panel.fillerUm(
      ((at % side) + 0.5) * (panel.widthMm / side),
      (Math.floor(at / side) + 0.5) * (panel.heightMm / side),
    )
    if (panel.trueFilmUm + depth <= thresholdUm) continue
    areaMm2 += cell
    volumeMm3 += (cell * depth) / 1000
  }
  return { areaMm2, volumeMm3 }
}
