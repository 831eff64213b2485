import type { BodyFrame } from '../body-shape/body-frame.ts'
import { flattened, type Point, signedArea } from '../cubic-path.ts'
import { type Curve, ellipse, lines, moved, roundedBox, smooth } from '../curve.ts'
import { bothDown, type InkCurve, line, loop } from '../ink-curve.ts'
import { clearOf, extentOf, inset, outlineThrough, polygonOf, reachAt, shifted } from './inset.ts'
import { aperture, leaf, type Row } from './openings-doors.ts'
import type { DoorShape, OutsideShapes } from './outside-shapes.ts'
import { wholeOf } from './tiles.ts'
import { piece } from './tray-drawing.ts'

const GROUP_MM = 150
const SLAM_MM = 112

/** The bonnet from below, and the panel it shuts on in front of it. */
export function bonnetRow({ bonnetFrontHalfMm }: BodyFrame, { bonnet }: OutsideShapes): Row {
  const box = extentOf(bonnet)
  const slam = slamPanel(bonnet, Math.min(bonnetFrontHalfMm, box.bottom * 0.82))
  const left = extentOf(slam).left
  const place = (curve: Curve): Curve => shifted(curve, -left, -box.top)
  return {
    pieces: [piece('front-lid-opening', place(slam)), piece('front-lid-inner', place(bonnet))],
    ink: [
      ...line('form', ...lidRibs(bonnet).map(place)),
      ...loop('form', ...lidHoles(bonnet).map(place)),
      ...loop('detail', place(ellipse([box.left + 92, 0], 26)), place(ellipse([box.left + 92, 0], 9))),
      ...loop('detail', ...bothDown(hinge(bonnet, 'rear', 0.62)).map(place)),
      ...loop('detail', place(roundedBox([left + SLAM_MM * 0.6, 0], 42, 92, 10))),
      ...loop('form', ...bothDown(ellipse([left + SLAM_MM * 0.8, bonnetFrontHalfMm * 0.5], 15)).map(place)),
    ],
    widthMm: box.right - left,
    heightMm: box.bottom - box.top,
  }
}

/** A strip before the front edge of the bonnet, following it from side to side and clear of it. */
function slamPanel(bonnet: Curve, half: number): Curve {
  const polygon = polygonOf(bonnet)
  const follow = [0, 0.25, 0.5, 0.75, 0.92].map((share): Point => {
    const v = share * half
    return [reachAt(polygon, 1, Math.max(v, 0.01))?.[0] ?? 0, v]
  })
  const by = clearOf(smooth(follow, [0, 1]), polygon, -1, 34)
  const rear = follow.map(([u, v]): Point => [u + by, v])
  const front = rear.map(([u, v], index): Point => [u - SLAM_MM + (index === 4 ? 30 : 0), v * 1.015])
  const outer = front.at(-1) ?? [0, 0]
  return wholeOf([
    ...smooth(front, [0, 1]),
    ...lines(outer, rear.at(-1) ?? outer),
    ...smooth([...rear].reverse(), undefined, [0, -1]),
  ])
}

/** Ribs of a lid: spine and two struts on each side running together towards the rear. */
function lidRibs(lid: Curve): Curve[] {
  const { left, right, bottom: half } = extentOf(lid)
  const long = right - left
  const struts = [
    smooth([
      [left + long * 0.14, half * 0.62],
      [left + long * 0.5, half * 0.4],
      [right - long * 0.1, half * 0.16],
    ]),
    smooth([
      [left + long * 0.12, half * 0.54],
      [left + long * 0.48, half * 0.33],
      [right - long * 0.1, half * 0.09],
    ]),
  ]
  return bothDown(...struts, lines([left + long * 0.16, half * 0.05], [right - long * 0.1, half * 0.05]))
}

/** A hinge at the front or rear edge of a lid, at a share of its half width. */
function hinge(lid: Curve, end: 'front' | 'rear', share: number): Curve {
  const v = extentOf(lid).bottom * share
  const reach = reachAt(polygonOf(lid), 1, v) ?? [0, 0]
  return roundedBox([end === 'front' ? reach[0] + 66 : reach[1] - 66, v], 84, 32, 10)
}

const lidHoles = (lid: Curve): Curve[] => [inset(lid, 62), inset(lid, 84)]

/** The boot lid, tail door or pair of loading doors from inside, beside the aperture it shuts; null for none. */
export function tailRow(outside: OutsideShapes, split: boolean): Row | null {
  if (outside.bootLid) return bootRow(outside.bootLid)
  if (outside.tailDoor) return tailDoorRow(outside.tailDoor, split)
  return outside.cargoDoor ? cargoRow(outside.cargoDoor) : null
}

function bootRow(lid: Curve): Row {
  const box = extentOf(lid)
  const apart = box.right - box.left + GROUP_MM
  const place = (curve: Curve): Curve => shifted(curve, -box.left, -box.top)
  const beside = (curve: Curve): Curve => shifted(curve, apart - box.left, -box.top)
  const shape = { outline: lid, glass: null }
  return {
    pieces: [leaf('rear-lid-inner', shape, place), aperture('rear-lid-opening', shape, beside)],
    ink: [
      ...line(
        'form',
        ...lidRibs(moved(lid, ([u, v]) => [box.left + box.right - u, v])).map((rib) =>
          place(moved(rib, ([u, v]) => [box.left + box.right - u, v])),
        ),
      ),
      ...loop('form', ...lidHoles(lid).map(place)),
      ...loop('detail', ...bothDown(hinge(lid, 'front', 0.66)).map(place)),
      ...loop('detail', place(roundedBox([box.right - 74, 0], 44, 80, 10))),
      ...loop('detail', beside(roundedBox([box.right - 26, 0], 26, 74, 8))),
      ...loop('form', beside(inset(lid, 18))),
    ],
    widthMm: apart + box.right - box.left,
    heightMm: box.bottom - box.top,
  }
}

function tailDoorRow(door: DoorShape, split: boolean): Row {
  const box = extentOf(door.outline)
  const apart = box.right - box.left + GROUP_MM
  const place = (curve: Curve): Curve => shifted(curve, -box.left, -box.top)
  const beside = (curve: Curve): Curve => shifted(curve, apart - box.left, -box.top)
  const belt = door.glass ? extentOf(door.glass).bottom : (box.top + box.bottom) / 2
  const room = box.bottom - belt
  const across = box.right * 0.78
  return {
    pieces: [leaf('tail-door-inner', door, place), aperture('rear-lid-opening', door, beside)],
    ink: [
      ...loop(
        'form',
        ...[-0.5, 0.5].map((share) =>
          place(roundedBox([across * share, belt + room * 0.52], across * 0.84, room * 0.5, 46)),
        ),
      ),
      ...loop('detail', place(roundedBox([0, box.bottom - room * 0.12], 110, 36, 12))),
      ...loop('detail', ...tailHinges(door.outline).map(place)),
      ...(split
        ? line('shut', place(lines([box.left + 14, belt + room * 0.12], [box.right - 14, belt + room * 0.12])))
        : []),
      ...loop('form', beside(inset(door.outline, 18))),
    ],
    widthMm: apart + box.right - box.left,
    heightMm: box.bottom - box.top,
  }
}

/** Hinges under the upper edge of a tail door. */
function tailHinges(outline: Curve): Curve[] {
  const polygon = polygonOf(outline)
  return [-0.56, 0.56].map((share) => {
    const u = extentOf(outline).right * share
    return roundedBox([u, (reachAt(polygon, 0, u)?.[0] ?? 0) + 34], 84, 28, 9)
  })
}

const across = (curve: Curve): Curve => moved(curve, ([u, v]) => [-u, v])

/** The left door, the aperture, the right door, as one meets them from behind. */
function cargoRow(door: DoorShape): Row {
  const box = extentOf(door.outline)
  const wide = box.right - box.left
  const opening = cargoOpening(door.outline)
  const full = extentOf(opening)
  const place = (curve: Curve, du: number): Curve => shifted(curve, du, -box.top)
  const middle = wide + GROUP_MM - full.left
  const last = middle + full.right + GROUP_MM - -box.right
  const right = { outline: across(door.outline), glass: door.glass && across(door.glass) }
  const shape = { outline: opening, glass: null }
  return {
    pieces: [
      leaf('rear-cargo-door-inner.L', door, (curve) => place(curve, -box.left)),
      aperture('rear-lid-opening', shape, (curve) => place(curve, middle)),
      leaf('rear-cargo-door-inner.R', right, (curve) => place(curve, last)),
    ],
    ink: [
      ...cargoInk(door, (curve) => place(curve, -box.left)),
      ...cargoInk(door, (curve) => place(across(curve), last)),
      ...loop('form', place(inset(opening, 18), middle)),
    ],
    widthMm: last - box.left,
    heightMm: box.bottom - box.top,
  }
}

function cargoInk(door: DoorShape, place: (curve: Curve) => Curve): InkCurve[] {
  const box = extentOf(door.outline)
  const low = door.glass ? extentOf(door.glass).bottom + 70 : box.top + 160
  const middle = (box.left + box.right) / 2 + 10
  const wide = box.right - box.left - 190
  const tall = Math.max(60, box.bottom - low - 90)
  const polygon = polygonOf(door.outline)
  const hinges = [0.18, 0.84].map((share) => {
    const v = box.top + (box.bottom - box.top) * share
    return roundedBox([(reachAt(polygon, 1, v)?.[0] ?? box.left) + 42, v], 50, 96, 10)
  })
  return [
    ...loop('form', place(roundedBox([middle, low + tall / 2], wide, tall, 44))),
    ...loop('detail', place(roundedBox([box.right - 44, low - 20], 44, 130, 12))),
    ...loop('detail', ...hinges.map((hinge) => place(hinge))),
    ...line('form', place(lines([box.right - 44, low + 60], [box.right - 44, box.bottom - 50]))),
  ]
}

/** Outline of the aperture of both doors: the left door without the edge where they meet, and its mirror image. */
function cargoOpening(door: Curve): Curve {
  const turned = signedArea(door) >= 0 ? flattened(door, 10) : flattened(door, 10).reverse()
  const most = Math.max(...turned.map(([u]) => u))
  const outer = turned.map(([u]) => u < most - 16)
  const start = outer.findIndex((is, index) => is && !outer.at(index - 1))
  const run: Point[] = []
  for (let index = 0; index < turned.length && outer[(start + index) % turned.length]; index++) {
    run.push(turned[(start + index) % turned.length] as Point)
  }
  return outlineThrough([...run, ...[...run].reverse().map(([u, v]): Point => [-u, v])], 6)
}
