import type { PlanSheet, PlanView, ViewCaption } from '../../shared-types/figure.ts'
import { CAPS_SPACING, typeScale } from '../../shared-types/tokens.ts'
import type { CalloutGround, SheetBox } from './callout-ground.ts'
import { textWidthPx } from './text-room.ts'

/** Room kept round the name of a view, and its distance from the view, px. */
const AIR_PX = 3
const LIFT_PX = 8
const BESIDE_PX = 14
/** How far a name may reach past the right edge of the sheet, px. */
const BEYOND_PX = 12

/**
 * Where rulers stand on screen, sheet mm: the ruler along the car under the left side, heights between a side and the
 * end beside it, and the list of marks beside the roof. Where the ends stand beneath the sides, as in print, there are
 * none. No callout and no name stands there.
 */
export function rulerBoxes(sheet: PlanSheet, pixelsPerMm: number): SheetBox[] {
  const named = (id: PlanView['id']) => sheet.views.find((view) => view.id === id)
  const px = (length: number) => length / pixelsPerMm
  const [left, right, front, rear, roof] = [named('left'), named('right'), named('front'), named('rear'), named('roof')]
  if (left && front && front.at.x < left.at.x + left.box.width) return []
  const boxes: SheetBox[] = []
  if (left) {
    const ground = left.at.y - left.box.v
    boxes.push({
      left: left.at.x - px(20),
      right: left.at.x + left.box.width + px(60),
      top: ground + px(7),
      foot: ground + px(31),
    })
  }
  for (const [side, end] of [
    [left, front],
    [right, rear],
  ] as const) {
    if (!side || !end) continue
    const edge = side.at.x + side.box.width
    const x = edge + (end.at.x - edge) * 0.36
    boxes.push({ left: x - px(8), right: x + px(46), top: side.at.y - px(12), foot: side.at.y - side.box.v + px(4) })
  }
  if (roof && front) {
    boxes.push({
      left: front.at.x - px(4),
      right: front.at.x + px(190),
      top: roof.at.y + px(20),
      foot: roof.at.y + roof.box.height,
    })
  }
  return boxes
}

/** Names of the views, each at the first place round its view where it touches neither a line nor another name. */
export function viewCaptions(sheet: PlanSheet, ground: CalloutGround, pixelsPerMm: number): ViewCaption[] {
  const taken = rulerBoxes(sheet, pixelsPerMm)
  return sheet.views.map((view) => {
    const places = captionPlaces(
      view,
      textWidthPx(view.name.toUpperCase(), typeScale.caps[0], CAPS_SPACING),
      pixelsPerMm,
    )
    const boxOf = (at: { x: number; y: number }) => captionBox({ text: view.name, at }, pixelsPerMm)
    const free = places.find((at) => {
      const box = boxOf(at)
      const touches = taken.some(
        (other) => box.left < other.right && other.left < box.right && box.top < other.foot && other.top < box.foot,
      )
      return !touches && box.right <= sheet.widthMm + BEYOND_PX / pixelsPerMm && ground.isPaper(box)
    })
    const at = free ?? places[0] ?? view.at
    taken.push(boxOf(at))
    return { view: view.id, text: view.name, at }
  })
}

/** The box of a name, with air round it, sheet mm. */
export function captionBox({ text, at }: Pick<ViewCaption, 'text' | 'at'>, pixelsPerMm: number): SheetBox {
  const px = (length: number) => length / pixelsPerMm
  const [size] = typeScale.caps
  return {
    left: at.x - px(AIR_PX),
    right: at.x + px(textWidthPx(text.toUpperCase(), size, CAPS_SPACING) + AIR_PX),
    top: at.y - px(size * 0.72 + AIR_PX),
    foot: at.y + px(AIR_PX),
  }
}

function captionPlaces(view: PlanView, widthPx: number, pixelsPerMm: number): { x: number; y: number }[] {
  const px = (length: number) => length / pixelsPerMm
  const { x, y } = view.at
  const [right, foot] = [x + view.box.width, y + view.box.height]
  const inCorner = [14, 24, 36, 50].flatMap((drop) => [
    { x, y: y + px(drop) },
    { x: right - px(widthPx), y: y + px(drop) },
  ])
  const above = (left: number) => ({ x: left, y: y - px(LIFT_PX) })
  return [
    above(x),
    ...inCorner,
    { x: right + px(BESIDE_PX), y: y + px(12) },
    above(right - px(widthPx)),
    above((x + right - px(widthPx)) / 2),
    ...[-14, -28].map((rise) => ({ x, y: foot + px(rise) })),
    { x, y: foot + px(LIFT_PX + 8) },
  ]
}
