import type { HatchName } from '../../../shared-types/figure.ts'
import { type HatchLines, hatches, isSolid, MM_PER_HATCH_PIXEL } from '../../../shared-types/tokens.ts'
import { type PageCanvas, POINTS_PER_MM, type StrokeStyle } from '../document/page-canvas.ts'
import { inks } from '../layout/text-style.ts'
import { UNSTROKED } from './path-operators.ts'

interface PagePoint {
  readonly x: number
  readonly y: number
}
const corner: PagePoint = { x: 0, y: 0 }

interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/**
 * Draws a hatch over a box, cut to `outline` (operators in points). Angle and pitch are the tokens', in page mm. Strokes
 * and dots are counted from `origin`, so that neighbouring panels of one state meet line on line, as they do on screen.
 */
export function drawHatch(
  page: PageCanvas,
  name: HatchName,
  outline: string,
  box: Box,
  origin: PagePoint = corner,
): void {
  const hatch = hatches[name]
  if (hatch === null || page.onlyMeasured) return
  page.saved(() => {
    page.rawPath(outline, 'W n', UNSTROKED)
    if (hatch.kind === 'stipple') {
      stipple(page, box, hatch.radiusPx * MM_PER_HATCH_PIXEL, hatch.quincunxPx * MM_PER_HATCH_PIXEL, origin)
    } else if (isSolid(hatch)) {
      page.rectangle(box.left, box.top, box.right - box.left, box.bottom - box.top, null, inks.ink)
    } else {
      for (const angle of hatch.angles) strokes(page, box, hatch, angle, origin)
    }
  })
}

/** Dots as dashes of no length with round ends: rows a half pitch apart, every other row shifted. */
function stipple(page: PageCanvas, box: Box, radiusMm: number, pitchMm: number, origin: PagePoint): void {
  const style = { weightMm: radiusMm * 2, colour: inks.ink, dashMm: [0, pitchMm], round: true }
  const half = pitchMm / 2
  const first = Math.floor((box.top - origin.y) / half)
  for (let row = first; origin.y + row * half <= box.bottom; row++) {
    const start = origin.x + pitchMm / 4 + (Math.abs(row) % 2) * half
    const left = start + Math.floor((box.left - start) / pitchMm) * pitchMm
    const y = origin.y + pitchMm / 4 + row * half
    page.line(left, y, box.right, y, style)
  }
}

function strokes(page: PageCanvas, box: Box, hatch: HatchLines, angleDegrees: number, origin: PagePoint): void {
  const mm = (px: number) => px * MM_PER_HATCH_PIXEL
  const angle = (angleDegrees * Math.PI) / 180
  // Page millimetres run downwards, the angle is the reader's, anticlockwise from the right.
  const along = { x: Math.cos(angle), y: -Math.sin(angle) }
  const across = { x: Math.sin(angle), y: Math.cos(angle) }
  const middle = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 }
  const reach = Math.hypot(box.right - box.left, box.bottom - box.top) / 2 + mm(hatch.pitchPx)
  const style: StrokeStyle = {
    weightMm: mm(hatch.weightPx),
    colour: inks.ink,
    dashMm: hatch.dashPx?.map(mm),
  }
  const offsets = hatch.pairGapPx === null ? [0] : [0, mm(hatch.pairGapPx)]
  const [fromX, fromY] = [middle.x - origin.x, middle.y - origin.y]
  const [start, alongStart] = [fromX * across.x + fromY * across.y, fromX * along.x + fromY * along.y]
  const pitch = mm(hatch.pitchPx)
  // A dashed stroke begins where a dash does, counted from the origin.
  const period = hatch.dashPx === null ? 0 : mm(hatch.dashPx[0] + hatch.dashPx[1])
  const begin = period === 0 ? -reach : Math.floor((alongStart - reach) / period) * period - alongStart
  const path: string[] = []
  for (let index = Math.floor((start - reach) / pitch); index * pitch <= start + reach; index++) {
    for (const offset of offsets) {
      const distance = (index + 0.5) * pitch + offset - start
      const at = { x: middle.x + across.x * distance, y: middle.y + across.y * distance }
      path.push(
        point(page, at.x + along.x * begin, at.y + along.y * begin, 'm'),
        point(page, at.x + along.x * reach, at.y + along.y * reach, 'l'),
      )
    }
  }
  page.rawPath(path.join(' '), 'S', style)
}

const point = (page: PageCanvas, x: number, y: number, operator: string): string =>
  `${(x * POINTS_PER_MM).toFixed(2)} ${((page.heightMm - y) * POINTS_PER_MM).toFixed(2)} ${operator}`

/** Operators of a rectangle in page mm, for legend patches. */
export function rectangleOperators(page: PageCanvas, box: Box): string {
  return [
    point(page, box.left, box.top, 'm'),
    point(page, box.right, box.top, 'l'),
    point(page, box.right, box.bottom, 'l'),
    point(page, box.left, box.bottom, 'l h'),
  ].join(' ')
}
