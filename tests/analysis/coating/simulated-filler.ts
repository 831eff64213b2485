/** What lies on a simulated panel. None of it is drawn from the model that is tested. */
export const panelKinds = [
  'patches',
  'skim',
  'many small',
  'none',
  'all over',
  'sharp-edged',
  'graded',
  'saturated',
  'wrong reference',
  'patch and skim',
] as const
export type PanelKind = (typeof panelKinds)[number]

/** Depth of filler at a place, um. */
export type FillerShape = (xMm: number, yMm: number) => number

interface Panel {
  readonly widthMm: number
  readonly heightMm: number
  readonly between: (low: number, high: number) => number
}

/** How filler lies on a panel of the kind. */
export function shapesOf(kind: PanelKind, panel: Panel): FillerShape[] {
  const { between } = panel
  const times = (least: number, most: number, make: () => FillerShape): FillerShape[] =>
    Array.from({ length: Math.floor(between(least, most + 1)) }, make)
  switch (kind) {
    case 'patches':
    case 'wrong reference':
      return times(1, 3, () => ellipse(panel, [60, 250], [500, 4000], between(0.4, 1.5)))
    case 'skim':
      return times(1, 2, () => ellipse(panel, [150, 450], [200, 800], between(0.3, 0.8)))
    case 'many small':
      return times(4, 7, () => ellipse(panel, [40, 120], [300, 2500], between(0.4, 1.2)))
    case 'none':
      return []
    case 'all over':
      return [waves(panel, between(500, 1600), between(0.1, 0.45))]
    case 'sharp-edged':
      return times(1, 3, () => (between(0, 1) < 0.5 ? plate(panel) : ellipse(panel, [60, 250], [400, 3000], 0)))
    case 'graded':
      return [ellipse(panel, [200, 450], [800, 3000], between(1.2, 2.5))]
    case 'saturated':
      return times(1, 2, () => ellipse(panel, [80, 250], [1800, 5000], between(0.3, 0.8)))
    case 'patch and skim':
      return [
        ellipse(panel, [60, 200], [800, 3000], between(0.4, 1.2)),
        ellipse(panel, [150, 400], [200, 600], between(0.3, 0.8)),
      ]
  }
}

/** A turned ellipse: depth falls from the middle as (1 - r^2) to the power; nought gives an upright edge. */
function ellipse(
  { widthMm, heightMm, between }: Panel,
  halfAxes: readonly [number, number],
  depths: readonly [number, number],
  power: number,
): FillerShape {
  const x0 = between(0, widthMm)
  const y0 = between(0, heightMm)
  const one = between(...halfAxes)
  const other = between(...halfAxes)
  const angle = between(0, Math.PI)
  const depth = depths[0] * (depths[1] / depths[0]) ** between(0, 1)
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)]
  return (x, y) => {
    const along = ((x - x0) * cosine + (y - y0) * sine) / one
    const across = ((y - y0) * cosine - (x - x0) * sine) / other
    const inside = 1 - along * along - across * across
    return inside <= 0 ? 0 : depth * inside ** power
  }
}

/** A rectangle of even depth, as where a new piece of metal was let in low. */
function plate({ widthMm, heightMm, between }: Panel): FillerShape {
  const width = between(120, 500)
  const height = between(100, 350)
  const x0 = between(-0.3 * width, widthMm - 0.5 * width)
  const y0 = between(-0.3 * height, heightMm - 0.5 * height)
  const depth = between(400, 2000)
  return (x, y) => (x > x0 && x < x0 + width && y > y0 && y < y0 + height ? depth : 0)
}

/** Filler everywhere, its depth in slow waves. */
function waves({ between }: Panel, depth: number, share: number): FillerShape {
  const parts = Array.from({ length: 4 }, () => ({
    u: (between(-1, 1) * (2 * Math.PI)) / 600,
    v: (between(-1, 1) * (2 * Math.PI)) / 600,
    phase: between(0, 2 * Math.PI),
  }))
  return (x, y) =>
    depth *
    Math.max(0, 1 + share * parts.reduce((sum, { u, v, phase }) => sum + Math.cos(u * x + v * y + phase), 0) * 0.7)
}
