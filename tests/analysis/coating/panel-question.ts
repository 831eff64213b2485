import { normalDraw, seededDraw } from '../../../electron/analysis/sampling/seeded-draws.ts'
import { type CoatingFieldInput, coatingFieldInput } from '../../../shared-types/coating.ts'
import { looseGrid } from './simulated-panels.ts'

const WIDTH_MM = 1000
const HEIGHT_MM = 700
const SATURATION_UM = 2000

/** A panel of 1,000 by 700 mm with a known filler, read at loosely spread places with a gauge of ±(2 µm + 3 %). */
export function panelQuestion({
  fillerUm,
  filmUm,
  readings,
  seed = 'question',
  nodesAcross = 25,
}: {
  fillerUm: (xMm: number, yMm: number) => number
  filmUm: number
  readings: number
  seed?: string
  nodesAcross?: number
}): CoatingFieldInput {
  const draw = seededDraw(seed)
  const normal = normalDraw(draw)
  const up = Math.round((nodesAcross * HEIGHT_MM) / WIDTH_MM)
  return coatingFieldInput.parse({
    readings: looseGrid(readings, WIDTH_MM, HEIGHT_MM, draw).map(([xMm, yMm]) => {
      const thickness = filmUm * Math.exp(0.08 * normal()) + fillerUm(xMm, yMm)
      const um = Math.max(0, thickness + ((2 + 0.03 * thickness) / 2) * normal())
      return {
        xMm,
        yMm,
        value: um > SATURATION_UM ? { kind: 'more than', um: SATURATION_UM } : { kind: 'value', um },
      }
    }),
    nodes: Array.from({ length: nodesAcross * up }, (_, at) => ({
      xMm: ((at % nodesAcross) + 0.5) * (WIDTH_MM / nodesAcross),
      yMm: (Math.floor(at / nodesAcross) + 0.5) * (HEIGHT_MM / up),
      areaMm2: (WIDTH_MM * HEIGHT_MM) / (nodesAcross * up),
    })),
    gauge: { constantUm: 2, percent: 3, meaning: '95 % limit' },
    reference: { medianUm: filmUm },
    draws: 199,
  })
}
