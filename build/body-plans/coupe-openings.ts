import { readOutline } from '../../electron/figures/path-text.ts'
import type { PlanView } from '../../shared-types/figure.ts'
import { profile, raised, up } from './coupe-shape.ts'
import { shifted } from './coupe-trays.ts'
import { type Curve, ellipse, joined, lines, moved, points, rounded, smooth } from './curve.ts'
import { type InkCurve, line, loop, type SetInPanel, type ViewDrawing } from './view-drawing.ts'

type Cutout = ViewDrawing['cutouts'][number]

/** Scales about the middle of a curve's own box: the inner edge of a frame. */
function shrunk(curve: Curve, by: number): Curve {
  const us = curve.map((piece) => piece[0][0])
  const vs = curve.map((piece) => piece[0][1])
  const [u0, u1, v0, v1] = [Math.min(...us), Math.max(...us), Math.min(...vs), Math.max(...vs)]
  const [u, v] = [(u0 + u1) / 2, (v0 + v1) / 2]
  const [across, down] = [1 - (2 * by) / (u1 - u0), 1 - (2 * by) / (v1 - v0)]
  return moved(curve, ([x, y]) => [u + (x - u) * across, v + (y - v) * down])
}

const outlineOf = (view: PlanView, panelId: string): Curve =>
  readOutline(view.panels.find((panel) => panel.panelId === panelId)?.outline ?? '')

/** One side: the aperture with its two posts, and the door off its hinges beside it. */
function doorSide(hand: 'L' | 'R', left: PlanView, du: number, dv: number) {
  const door = outlineOf(left, 'front-door.L')
  const glass = joined(
    raised(points`1694 884, 1822 1064, 1946 1226`),
    raised(points`1946 1226, 1974 1252, 2060 1271, 2290 1282, 2470 1272`, [0.6, 0.8]),
    lines(up([2470, 1272]), up([2482, 872])),
    raised(points`2482 872, 2100 888, 1694 884`),
  )
  const post = joined(
    raised(points`1560 868, 1544 760, 1508 540, 1508 400, 1524 286`),
    lines(up([1524, 286]), up([1360, 286])),
    raised(points`1360 286, 1352 540, 1376 760, 1396 870`),
    lines(up([1396, 870]), up([1560, 868])),
  )
  const lockPost = joined(
    raised(points`2462 290, 2500 400, 2522 600, 2534 760, 2538 846`),
    lines(up([2538, 846]), up([2680, 846])),
    raised(points`2680 846, 2690 700, 2700 500, 2712 290`),
    lines(up([2712, 290]), up([2462, 290])),
  )
  const place = (curve: Curve, more = 0) => shifted(curve, du + more, dv)
  const setIn: SetInPanel[] = [
    { panelId: `front-post-lower.${hand}`, curve: place(post), within: null },
    { panelId: `front-door-opening.${hand}`, curve: place(door), within: null },
    { panelId: `mid-post-lower.${hand}`, curve: place(lockPost), within: null },
    { panelId: `front-door-inner.${hand}`, curve: place(door, 1480), within: null },
  ]
  const cutouts: Cutout[] = [
    { panelId: `front-door-opening.${hand}`, curve: place(shrunk(door, 46)), weight: 'detail' },
    { panelId: `front-door-inner.${hand}`, curve: place(glass, 1480), weight: 'detail' },
  ]
  const opening = rounded(points`1700 760, 2040 752, 2040 420, 1680 420`.map(up), 60)
  const opening2 = rounded(points`2110 750, 2420 744, 2400 420, 2110 420`.map(up), 60)
  const ink: InkCurve[] = [
    ...loop('form', place(opening, 1480), place(opening2, 1480)),
    ...loop('detail', place(ellipse(up([1446, 700]), 26, 40)), place(ellipse(up([1428, 420]), 26, 40))),
    ...loop('detail', place(rounded(points`2560 640, 2620 640, 2620 540, 2560 540`.map(up), 10))),
    ...line('form', place(profile.sillFoot.slice(0, 3)), place(lines(up([1360, 286]), up([2712, 290])))),
  ]
  return { setIn, cutouts, ink }
}

/** Doors and lids open, laid flat. The right side is mirrored, nose to the left, as on the outside sheet. */
export function openings(left: PlanView, roof: PlanView, at: { x: number; y: number }): ViewDrawing {
  const sides = [doorSide('L', left, -1330, 1350), doorSide('R', left, -1330, 2790)]
  const bonnet = shifted(outlineOf(roof, 'front-lid'), 2960, 720)
  const lid = shifted(outlineOf(roof, 'rear-lid'), -330, 2180)
  const lidFrame = moved(outlineOf(roof, 'rear-lid'), ([u, v]) => [(u - 3735) * 1.15 + 4340, v * 1.11 + 2180])
  const landing = joined(
    smooth(points`3040 240, 2996 480, 2988 720, 2996 960, 3040 1200`),
    lines([3040, 1200], [3126, 1180]),
    smooth(points`3126 1180, 3108 960, 3104 720, 3108 480, 3126 260`),
    lines([3126, 260], [3040, 240]),
  )
  return {
    id: 'openings',
    name: 'Doors and lids open, laid flat; the right side mirrored',
    box: { u: 0, v: 0, width: 4900, height: 2740 },
    at,
    mirror: 'none',
    curves: [],
    faces: {},
    setIn: [
      ...sides.flatMap((one) => one.setIn),
      { panelId: 'front-lid-opening', curve: landing, within: null },
      { panelId: 'front-lid-inner', curve: bonnet, within: null },
      { panelId: 'rear-lid-inner', curve: lid, within: null },
      { panelId: 'rear-lid-opening', curve: lidFrame, within: null },
    ],
    cutouts: [
      ...sides.flatMap((one) => one.cutouts),
      { panelId: 'rear-lid-opening', curve: shifted(outlineOf(roof, 'rear-lid'), 605, 2180), weight: 'detail' },
    ],
    silhouette: [],
    ink: [
      ...sides.flatMap((one) => one.ink),
      ...loop('form', shrunk(bonnet, 110), shrunk(lid, 90)),
      ...line('form', lines([3310, 720], [4230, 720]), lines([3070, 2180], [3730, 2180])),
      ...line('form', smooth(points`3340 430, 3760 560, 4220 680`), smooth(points`3340 1010, 3760 880, 4220 760`)),
    ],
  }
}
