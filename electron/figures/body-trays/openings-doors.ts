import type { BodyFrame } from '../body-shape/body-frame.ts'
import { isInside, type Point } from '../cubic-path.ts'
import { type Curve, ellipse, joined, lines, roundedBox, smooth } from '../curve.ts'
import { type InkCurve, line, loop } from '../ink-curve.ts'
import { doorInk } from './door-ink.ts'
import { clearOf, extentOf, inset, polygonOf, reachAt, shifted } from './inset.ts'
import type { DoorShape, OutsideShapes } from './outside-shapes.ts'
import { type Piece, piece } from './tray-drawing.ts'

/** Between pieces that meet on the car, and between groups, mm. */
const APART_MM = 18
const GROUP_MM = 150
const POST_MM = 156
const FLANGE_MM = 46

/** A row of pieces, drawn with its left upper corner at the origin. */
export interface Row {
  readonly pieces: readonly Piece[]
  readonly ink: readonly InkCurve[]
  readonly widthMm: number
  readonly heightMm: number
}

/** One side: the apertures with their posts, the doors off their hinges beside them. Drawn nose to the left. */
export function doorRow(frame: BodyFrame, { frontDoor, rearDoor }: OutsideShapes): Row {
  const front = frontDoor.outline
  const box = extentOf(front)
  const polygon = polygonOf(front)
  const heights = postHeights(frame, box.bottom)
  const hinge = shutLine(heights, polygon, -1)
  const lock = shutLine(heights, polygon, 1)
  const postA = post(hinge, -POST_MM)
  const postB = post(lock, POST_MM)
  const shiftRear = rearDoor === null ? 0 : clearance(postB, rearDoor)
  const apertures = Math.max(extentOf(postB).right, rearDoor ? extentOf(rearDoor.outline).right + shiftRear : 0)
  const doorAt = apertures + GROUP_MM - box.left
  const rearAt = rearDoor === null ? 0 : box.right + doorAt + GROUP_MM - extentOf(rearDoor.outline).left
  const left = extentOf(postA).left
  const top = Math.min(box.top, rearDoor ? extentOf(rearDoor.outline).top : box.top)
  const place = (curve: Curve, along = 0): Curve => shifted(curve, along - left, -top)
  const pieces = [
    piece('front-post-lower.L', place(postA)),
    aperture('front-door-opening.L', frontDoor, (curve) => place(curve)),
    piece('mid-post-lower.L', place(postB)),
    ...(rearDoor ? [aperture('rear-door-opening.L', rearDoor, (curve) => place(curve, shiftRear))] : []),
    leaf('front-door-inner.L', frontDoor, (curve) => place(curve, doorAt)),
    ...(rearDoor ? [leaf('rear-door-inner.L', rearDoor, (curve) => place(curve, rearAt))] : []),
  ]
  const right = rearDoor ? extentOf(rearDoor.outline).right + rearAt : box.right + doorAt
  const ink = [
    ...postInk(hinge, lock, place),
    ...doorInk(frontDoor, frame.beltHeightMm, (curve) => place(curve, doorAt)),
    ...(rearDoor ? doorInk(rearDoor, frame.beltHeightMm, (curve) => place(curve, rearAt)) : []),
    ...line('form', place(lines([left - 60, box.bottom + 58], [apertures + 60, box.bottom + 58]))),
  ]
  return { pieces, ink, widthMm: right - left, heightMm: box.bottom - top + 58 }
}

/** Heights of the posts from the belt down to the sill, as the second axis of the view. */
function postHeights({ beltHeightMm }: BodyFrame, foot: number): number[] {
  const from = -beltHeightMm + 30
  const to = foot - 8
  return [0, 0.25, 0.5, 0.75, 1].map((share) => from + (to - from) * share)
}

/** Edge of a post beside a door: it follows the door and keeps clear of it. */
function shutLine(heights: readonly number[], door: readonly Point[], side: -1 | 1): Point[] {
  const follow = heights.map((v): Point => {
    const reach = reachAt(door, 1, v) ?? reachAt(door, 1, heights[2] ?? v) ?? [0, 0]
    return [side === 1 ? reach[1] : reach[0], v]
  })
  const by = clearOf(smooth(follow), door, side, APART_MM)
  return follow.map(([u, v]) => [u + by, v])
}

/** A post beside a shut line, its foot a little wider than its head. */
function post(beside: readonly Point[], wide: number): Curve {
  const far = [...beside].reverse().map(([u, v], index): Point => [u + wide * (1.06 - index * 0.05), v])
  const near = smooth(beside)
  const end = far[0] ?? [0, 0]
  const back = smooth(far)
  const foot = beside.at(-1) ?? [0, 0]
  return joined(
    near,
    lines(foot, [(foot[0] + end[0]) / 2, foot[1] + 10], end),
    back,
    lines(far.at(-1) ?? end, beside[0] ?? end),
  )
}

/** How far the rear aperture moves back to leave room for the post between the doors. */
function clearance(postB: Curve, rear: DoorShape): number {
  const polygon = polygonOf(rear.outline)
  return -clearOf(postB, polygon, -1, APART_MM)
}

export function aperture(id: string, { outline }: DoorShape, place: (curve: Curve) => Curve): Piece {
  return piece(id, place(outline), null, [place(inset(outline, FLANGE_MM))])
}

/** A door seen from inside; its window is cut out where it lies wholly in the door. */
export function leaf(id: string, { outline, glass }: DoorShape, place: (curve: Curve) => Curve): Piece {
  const polygon = polygonOf(outline)
  const cut = glass?.every((part) => isInside(polygon, part[0])) ? [place(glass)] : []
  return piece(id, place(outline), null, cut)
}

/** Hinges on the front post, striker on the rear one. */
function postInk(hinge: readonly Point[], lock: readonly Point[], place: (curve: Curve) => Curve): InkCurve[] {
  const at = (points: readonly Point[], index: number, du: number): Point => {
    const [u, v] = points[index] ?? [0, 0]
    return [u + du, v]
  }
  const hinges = [at(hinge, 1, -58), at(hinge, 3, -60)].flatMap((middle) => [
    roundedBox(middle, 62, 96, 12),
    ellipse([middle[0], middle[1] - 26], 8),
    ellipse([middle[0], middle[1] + 26], 8),
  ])
  const striker = at(lock, 2, 62)
  return [
    ...loop('detail', ...hinges.map((curve) => place(curve))),
    ...loop('detail', place(roundedBox(striker, 50, 92, 10)), place(roundedBox(striker, 20, 44, 8))),
    ...loop('form', place(ellipse(at(hinge, 2, -84), 22, 30)), place(ellipse(at(lock, 3, 96), 26, 34))),
    ...line('form', place(smooth(hinge.map(([u, v]): Point => [u - 18, v])))),
    ...line('form', place(smooth(lock.map(([u, v]): Point => [u + 18, v])))),
  ]
}
