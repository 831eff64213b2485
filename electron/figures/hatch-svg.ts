import type { HatchName } from '../../shared-types/figure.ts'
import { type HatchLines, type HatchStipple, hatches } from '../../shared-types/tokens.ts'

/**
 * A hatch as an SVG pattern in screen pixels, laid on the page and not on the panel, so that neighbours of one state
 * run on and nothing scales with the plan. `thinner` is the factor of line weight, `pixelsPerUnit` the size of the
 * group that is filled. Empty for `clean`.
 */
export function hatchPattern(name: HatchName, colour: string, thinner: number, pixelsPerUnit: number): string {
  const hatch = hatches[name]
  if (hatch === null) return ''
  return hatch.kind === 'stipple'
    ? stipple(name, hatch, colour, pixelsPerUnit)
    : strokes(name, hatch, colour, thinner, pixelsPerUnit)
}

function stipple(name: string, hatch: HatchStipple, colour: string, pixelsPerUnit: number): string {
  const pitch = hatch.quincunxPx
  const dot = (at: number) => `<circle cx="${at}" cy="${at}" r="${hatch.radiusPx}" fill="${colour}"/>`
  return pattern(name, pitch, pitch, 0, pixelsPerUnit, dot(pitch / 4) + dot((pitch * 3) / 4))
}

function strokes(name: string, hatch: HatchLines, colour: string, thinner: number, pixelsPerUnit: number): string {
  const pen = `stroke="${colour}" stroke-width="${(hatch.weightPx * thinner).toFixed(2)}"`
  const [first = 0, second] = hatch.angles
  const period = hatch.dashPx ? hatch.dashPx[0] + hatch.dashPx[1] : hatch.pitchPx
  const dash = hatch.dashPx ? ` stroke-dasharray="${hatch.dashPx.join(' ')}"` : ''
  const stroke = (y: number) => `<path d="M0 ${y}H${period}" ${pen}${dash}/>`
  const rows = [hatch.pitchPx / 2, ...(hatch.pairGapPx === null ? [] : [hatch.pitchPx / 2 + hatch.pairGapPx])]
  const across = second === undefined ? '' : `<path d="M${period / 2} 0V${hatch.pitchPx}" ${pen}/>`
  return pattern(name, period, hatch.pitchPx, -first, pixelsPerUnit, rows.map(stroke).join('') + across)
}

const pattern = (
  name: string,
  width: number,
  height: number,
  turn: number,
  pixelsPerUnit: number,
  inside: string,
): string =>
  `<pattern id="${name}" width="${width}" height="${height}" patternUnits="userSpaceOnUse" patternTransform="scale(${1 / pixelsPerUnit}) rotate(${turn})">${inside}</pattern>`
