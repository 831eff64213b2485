import type { HatchName } from '../../../shared-types/figure.ts'
import { type HatchLines, hatches, MM_PER_HATCH_PIXEL } from '../../../shared-types/tokens.ts'
import { type PageCanvas, POINTS_PER_MM, type StrokeStyle } from '../document/page-canvas.ts'
import { inks } from '../layout/text-style.ts'

interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Draws a hatch over a box, cut to `outline` (operators in points). Angle and pitch are the tokens', in page mm. */
export function drawHatch(page: PageCanvas, name: HatchName, outline: string, box: Box): void {
  const hatch = hatches[name]
  if (hatch === null) return
  page.saved(() => {
    page.rawPath(outline, 'W n', { weightMm: 0.1, colour: inks.ink })
    if (hatch.kind === 'stipple') {
      stipple(page, box, hatch.radiusPx * MM_PER_HATCH_PIXEL, hatch.quincunxPx * MM_PER_HATCH_PIXEL)
    } else {
      for (const angle of hatch.angles) strokes(page, box, hatch, angle)
    }
  })
}

/** Dots as dashes of no length with round ends: rows a half pitch apart, every other row shifted. */
function stipple(page: PageCanvas, box: Box, radiusMm: number, pitchMm: number): void {
  const style = { weightMm: radiusMm * 2, colour: inks.ink, dashMm: [0, pitchMm], round: true }
  for (let row = 0, y = box.top; y <= box.bottom; row++, y += pitchMm / 2) {
    page.line(box.left + (row % 2) * (pitchMm / 2), y, box.right, y, style)
  }
}

function strokes(page: PageCanvas, box: Box, hatch: HatchLines, angleDegrees: number): void {
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
  // Strokes hang on the page's own origin, so that neighbouring panels of one state meet line on line.
  const start = middle.x * across.x + middle.y * across.y
  const pitch = mm(hatch.pitchPx)
  const path: string[] = []
  for (let index = Math.ceil((start - reach) / pitch); index * pitch <= start + reach; index++) {
    for (const offset of offsets) {
      const distance = index * pitch + offset - start
      const at = { x: middle.x + across.x * distance, y: middle.y + across.y * distance }
      path.push(
        point(page, at.x - along.x * reach, at.y - along.y * reach, 'm'),
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
