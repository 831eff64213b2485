import type { Point } from '../../electron/figures/cubic-path.ts'
import { blended, plan, size } from './coupe-shape.ts'
import {
  after,
  before,
  type Curve,
  ellipse,
  joined,
  lines,
  mirroredDown,
  offset,
  points,
  pointWhere,
  rounded,
  smooth,
} from './curve.ts'
import { bothDown, wholeDown } from './mirror.ts'
import { type InkCurve, line, loop, solid, type ViewDrawing } from './view-drawing.ts'

/** Lines of the left half seen from above; stations agree with the side elevation. */
const top = {
  bonnetFront: smooth(points`188 0, 196 220, 224 380, 236 422, 272 448`, [0, 1], [1, 0.3]),
  bonnetSide: smooth(points`272 448, 600 545, 1000 612, 1434 650`),
  bonnetRear: smooth(points`1340 0, 1352 280, 1396 520, 1434 650`, [0, 1]),
  noseSeam: smooth(points`272 448, 206 462, 140 484`),
  bowl: smooth(points`70 448, 150 478, 172 590, 166 680, 110 740`),
  scuttleSide: smooth(points`1434 650, 1490 672, 1566 714`),
  screenFoot: smooth(points`1446 0, 1464 280, 1528 510, 1594 638`, [0, 1]),
  screenEdge: smooth(points`1594 638, 1745 586, 1912 506`),
  screenFootEnd: smooth(points`1594 638, 1590 660, 1584 712`),
  screenTop: smooth(points`1870 0, 1874 240, 1894 430, 1912 506`, [0, 1]),
  frameFront: smooth(points`1640 712, 1796 624, 1934 566`),
  frameTop: smooth(points`1934 566, 1990 573, 2290 580, 2510 571, 2640 556, 2712 544`),
  gutter: smooth(points`1912 506, 1946 536, 2100 552, 2290 556, 2510 546, 2650 526, 2744 494, 2818 462`),
  railFront: smooth(points`1934 566, 1924 540, 1912 506`),
  railEnd: lines([2706, 546], [2744, 494]),
  postFront: smooth(points`2494 560, 2504 640, 2508 712`),
  postRear: smooth(points`2534 560, 2548 640, 2554 712`),
  sideGlassRear: smooth([[2712, 544], [2830, 596], [2922, 646], pointWhere(plan.crest, 0, 2976)]),
  postFoot: smooth([pointWhere(plan.crest, 0, 2976), [3060, 686], [3112, 642], [3140, 598]]),
  rearScreenTop: smooth(points`2836 0, 2834 240, 2826 400, 2818 462`, [0, 1]),
  rearScreenEdge: smooth(points`2818 462, 2975 534, 3140 598`),
  rearScreenFoot: smooth(points`3306 0, 3298 240, 3242 440, 3140 598`, [0, 1]),
  deckSide: smooth(points`3140 598, 3236 528, 3346 466`),
  lidFront: smooth(points`3356 0, 3350 220, 3326 400, 3326 440, 3346 466`, [0, 1]),
  lidSide: smooth(points`3346 466, 3700 508, 4000 516, 4064 506`),
  lidRear: smooth(points`4120 0, 4116 300, 4102 450, 4064 506`, [0, 1]),
  tailSeam: smooth(points`4064 506, 4098 580, 4112 652`),
  rearLamp: smooth(points`4176 642, 4092 644, 4068 690, 4080 760`),
  doorFront: smooth(points`1573 694, 1570 740, 1564 830`),
  doorRear: smooth(points`2530 690, 2528 740, 2524 830`),
  crestFront: before(after(plan.crest, 0, 1548), 0, 1664),
  crestRear: before(after(plan.crest, 0, 2494), 0, 2990),
} as const

const faces: Record<string, Point> = {
  'front-lid': [800, 200],
  'front-side.L': [900, 740],
  'nose-panel': [150, 200],
  'lamp-housing.L': [130, 600],
  'air-chamber': [1420, 200],
  'front-glass-surround': [1700, 200],
  'front-post-upper.L': [1740, 618],
  'front-door.L': [2000, 740],
  'roof-rail.L': [2290, 568],
  'roof-skin': [2300, 200],
  'mid-post-upper.L': [2526, 640],
  'side-glass-surround.L': [2700, 640],
  'rear-post.L': [2930, 600],
  'rear-glass-surround': [3050, 200],
  'rear-deck-panel': [3320, 200],
  'rear-lid': [3700, 200],
  'rear-side.L': [3300, 760],
  'rear-lamp-housing.L': [4104, 680],
  'tail-panel': [4140, 200],
}

const frontOuter = smooth(points`28 0, 34 330, 66 560, 140 718, 270 790, 392 808`, [0, 1])
const frontInner = smooth(points`78 0, 84 330, 112 540, 182 684, 296 754, 392 774`, [0, 1])
const rearOuter = smooth(points`4222 0, 4216 330, 4190 560, 4120 704, 4000 784, 3862 808`, [0, 1])
const rearInner = smooth(points`4172 0, 4166 330, 4144 540, 4082 668, 3974 746, 3862 774`, [0, 1])

function bumperInk(): InkCurve[] {
  const bar = (outer: Curve, inner: Curve) =>
    wholeDown(
      joined(
        outer,
        [...inner].reverse().map(([a, b, c, d]) => [d, c, b, a] as const),
      ),
    )
  const overrider = (from: number, to: number): Curve =>
    rounded(
      [
        [from, 296],
        [from, 364],
        [to, 358],
        [to, 302],
      ],
      [26, 26, 8, 8],
    )
  return [
    ...solid('shut', bar(frontOuter, frontInner), bar(rearOuter, rearInner)),
    ...line('form', ...bothDown(blended(frontOuter, frontInner, 0.5), blended(rearOuter, rearInner, 0.5))),
    ...solid('shut', ...bothDown(overrider(0, 92), overrider(4250, 4158))),
  ]
}

const glass = {
  screen: wholeDown(
    joined(
      smooth(points`1474 0, 1492 272, 1552 494, 1600 600, 1640 590`, [0, 1]),
      smooth(points`1640 590, 1750 552, 1878 490`),
      smooth(points`1878 490, 1872 440, 1852 230, 1848 0`, undefined, [0, -1]),
    ),
  ),
  rearScreen: wholeDown(
    joined(
      smooth(points`2862 0, 2860 230, 2852 384, 2850 440`, [0, 1]),
      smooth(points`2850 440, 2980 502, 3090 546, 3130 552`),
      smooth(points`3130 552, 3212 430, 3266 236, 3274 0`, undefined, [0, -1]),
    ),
  ),
  door: joined(
    smooth(points`1706 686, 1822 636, 1946 588`),
    smooth(points`1946 588, 2060 594, 2290 598, 2470 590`),
    lines([2470, 590], [2482, 690]),
    smooth(points`2482 690, 2100 694, 1706 686`),
  ),
  side: joined(
    smooth(points`2566 588, 2640 574, 2704 562`),
    smooth(points`2704 562, 2816 612, 2928 686`),
    smooth(points`2928 686, 2760 690, 2578 690`),
    lines([2578, 690], [2566, 588]),
  ),
}

function glassInk(): InkCurve[] {
  return [
    ...line(
      'form',
      lines([1570, -330], [1800, -230]),
      lines([1570, -280], [1800, -180]),
      lines([1570, 130], [1720, 200]),
      lines([2920, -260], [3120, -330]),
      lines([2920, -210], [3120, -280]),
    ),
  ]
}

/** Axles and shut lines run on to the sides above and below, as far as the sheet of `make-body-plans.ts` sets them apart. */
const stations: Curve[] = [
  [size.frontAxle, 1440],
  [1573, 1300],
  [2530, 1020],
  [size.rearAxle, 1370],
].flatMap(([station = 0, reach = 0]) => [
  lines([station, -1180], [station, -830]),
  lines([station, 830], [station, reach]),
])

function detailInk(): InkCurve[] {
  const slots = Array.from({ length: 13 }, (_, index) => (index - 6) * 34).map((v) =>
    lines([1372 + Math.abs(v) * 0.05, v], [1424 + Math.abs(v) * 0.05, v]),
  )
  const blade = (v: number) => lines([1448, v], [1570, v - 290])
  const handle = rounded(points`2290 794, 2424 794, 2424 812, 2290 812`, 6)
  return [
    ...line('detail', ...slots, blade(-300), blade(210)),
    ...solid('detail', ellipse([1446, -300], 12), ellipse([1446, 210], 12)),
    ...line(
      'form',
      ...bothDown(
        before(after(plan.crest, 0, 260), 0, 1570),
        before(after(plan.crest, 0, 3090), 0, 4060),
        smooth(points`330 150, 700 176, 1240 186`),
        smooth(points`420 166, 700 186, 1060 194`),
        smooth(points`3420 300, 3700 318, 4000 318`),
        smooth(points`2040 430, 2300 440, 2600 424`),
      ),
    ),
    ...line('detail', ...bothDown(offset(before(after(plan.crest, 0, 1664), 0, 2490), 0), offset(top.gutter, 10))),
    ...line('detail', ...bothDown(smooth(points`66 500, 54 540, 52 590, 62 636, 90 676`))),
    ...solid('detail', ...bothDown(handle)),
    ...loop('detail', ellipse([262, 0], 18)),
    ...line('centre', lines([-120, 0], [4370, 0])),
    ...line('station', ...stations),
  ]
}

/** Plan from above; the half drawn is the driver's left. */
export function roof(at: { x: number; y: number }): ViewDrawing {
  return {
    id: 'roof',
    name: 'Roof, in plan',
    box: { u: 0, v: -size.width / 2, width: size.length, height: size.width },
    at,
    mirror: 'v',
    curves: [plan.edge, ...Object.values(top), lines([0, 0], [4250, 0])],
    faces,
    setIn: [],
    cutouts: [
      { panelId: 'front-glass-surround', curve: glass.screen, weight: 'shut' },
      { panelId: 'rear-glass-surround', curve: glass.rearScreen, weight: 'shut' },
      { panelId: 'front-door.L', curve: glass.door, weight: 'detail' },
      { panelId: 'front-door.R', curve: mirroredDown(glass.door), weight: 'detail' },
      { panelId: 'side-glass-surround.L', curve: glass.side, weight: 'detail' },
      { panelId: 'side-glass-surround.R', curve: mirroredDown(glass.side), weight: 'detail' },
    ],
    silhouette: null,
    ink: [...bumperInk(), ...glassInk(), ...detailInk()],
  }
}
