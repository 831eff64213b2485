import type { HatchName } from '../../shared-types/figure.ts'
import { hatches } from '../../shared-types/tokens.ts'

/**
 * A hatch as an SVG pattern in screen pixels, laid on the page and not on the panel, so that neighbours of one state
 * run on and nothing scales with the plan. Empty for `clean`.
 */
export function hatchPattern(name: HatchName, colour: string, thinner: number, pixelsPerMm: number): string {
  const hatch = hatches[name]
  if (hatch === null) return ''
  if (hatch.kind === 'stipple') {
    const p = hatch.quincunxPx
    const dot = (x: number, y: number) => `<circle cx="${x}" cy="${y}" r="${hatch.radiusPx}" fill="${colour}"/>`
    return pattern(name, p, p * 2, 0, pixelsPerMm, `${dot(p / 4, p / 2)}${dot((p * 3) / 4, (p * 3) / 2)}`)
  }
  const pen = `stroke="${colour}" stroke-width="${(hatch.weightPx * thinner).toFixed(2)}"`
  const [first = 0, second] = hatch.angles
  const period = hatch.dashPx ? hatch.dashPx[0] + hatch.dashPx[1] : hatch.pitchPx
  const dash = hatch.dashPx ? `stroke-dasharray="${hatch.dashPx.join(' ')}"` : ''
  const stroke = (y: number) => `<path d="M0 ${y}H${period}" ${pen} ${dash}/>`
  const rows = [hatch.pitchPx / 2, ...(hatch.pairGapPx === null ? [] : [hatch.pitchPx / 2 + hatch.pairGapPx])]
  const across = second === undefined ? '' : `<path d="M${period / 2} 0V${hatch.pitchPx}" ${pen}/>`
  return pattern(name, period, hatch.pitchPx, -first, pixelsPerMm, rows.map(stroke).join('') + across)
}

const pattern = (
  name: string,
  width: number,
  height: number,
  turn: number,
  pixelsPerMm: number,
  inside: string,
): string =>
  `<pattern id="${name}" width="${width}" height="${height}" patternUnits="userSpaceOnUse" patternTransform="scale(${1 / pixelsPerMm}) rotate(${turn})">${inside}</pattern>`
