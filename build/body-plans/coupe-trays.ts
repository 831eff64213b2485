import type { Point } from '../../electron/figures/cubic-path.ts'
import { plan, size } from './coupe-shape.ts'
import {
  type Curve,
  ellipse,
  joined,
  lines,
  mirroredDown,
  moved,
  points,
  rounded,
  roundedBox,
  smooth,
} from './curve.ts'
import { bothDown, wholeDown } from './mirror.ts'
import { type InkCurve, line, loop, type SetInPanel, solid, type ViewDrawing } from './view-drawing.ts'

const block = (from: number, to: number, low: number, high: number, radius = 10): Curve =>
  rounded(
    [
      [from, low],
      [to, low],
      [to, high],
      [from, high],
    ],
    radius,
  )
/** A piece for each side of the car, drawn for the driver's left. */
const sides = (name: string, curve: Curve, within: string | null = null): SetInPanel[] => [
  { panelId: `${name}.L`, curve, within: within && `${within}.L` },
  { panelId: `${name}.R`, curve: mirroredDown(curve), within: within && `${within}.R` },
]
const middle = (panelId: string, curve: Curve, within: string | null = null): SetInPanel => ({ panelId, curve, within })

/** The underside as seen through the car from above: axes of the roof view. */
export function under(at: { x: number; y: number }): ViewDrawing {
  const rail = rounded(points`226 236, 226 356, 1190 356, 1560 452, 1560 336, 1214 236`, 26)
  const rearRail = rounded(points`2590 440, 2590 570, 2980 540, 3140 516, 4026 516, 4026 386, 3110 386, 2950 420`, 24)
  const arch = joined(
    smooth(points`2900 806, 2940 690, 3060 606, 3260 584, 3460 606, 3580 690, 3616 798`, [0, -1], [0, 1]),
    smooth(points`3616 798, 3260 806, 2900 806`),
  )
  const box = (station: number): Curve => block(station - 315, station + 315, 566, 714, 40)
  return {
    id: 'under',
    name: 'Underside, seen through the car from above',
    box: { u: 0, v: -size.width / 2, width: size.length, height: size.width },
    at,
    mirror: 'none',
    curves: [],
    faces: {},
    setIn: [
      ...sides('front-rail', rail),
      middle('front-crossmember', block(600, 790, -232, 232, 20)),
      ...sides('front-bumper-mount', block(116, 222, 240, 342, 12)),
      ...sides('front-suspension-mount', block(580, 810, 362, 530, 40)),
      middle('steering-mount', block(470, 580, -226, -90, 14)),
      ...sides('front-splash-shield', rounded(points`1160 470, 1340 470, 1340 790, 1180 790`, 16)),
      ...sides('outrigger', rounded(points`1364 460, 1560 470, 1560 672, 1364 672`, 14)),
      ...sides('front-lift-point', block(1390, 1480, 690, 780, 16)),
      middle(
        'mid-crossmember',
        wholeDown(
          joined(lines([1720, 0], [1730, 430]), lines([1730, 430], [1850, 430]), lines([1850, 430], [1850, 0])),
        ),
      ),
      middle(
        'floor-crossmember',
        wholeDown(
          joined(lines([2200, 0], [2200, 660]), lines([2200, 660], [2290, 660]), lines([2290, 660], [2290, 0])),
        ),
      ),
      ...sides('rear-lift-point', block(2560, 2650, 690, 780, 16)),
      ...sides('rear-spring-mount', block(2670, 2830, 580, 722, 30)),
      ...sides('rear-rail', rearRail),
      ...sides('rear-arch-outer', arch),
      middle('tank-area', block(3560, 3990, -372, 372, 50)),
      middle('rear-crossmember', block(4032, 4104, -560, 560, 16)),
      ...sides('rear-bumper-mount', block(4108, 4156, 240, 470, 12)),
    ],
    cutouts: [],
    silhouette: wholeDown(plan.edge),
    ink: [
      ...loop('detail', ...bothDown(box(size.frontAxle), box(size.rearAxle))),
      ...loop('form', ...bothDown(block(1100, 2920, 664, 790, 20))),
      ...solid('detail', block(3220, 3300, -560, 560, 12)),
      ...solid('detail', ellipse([3260, 30], 118)),
      ...line('detail', lines([1860, 14], [3142, 24]), lines([1860, -14], [3142, -2])),
      ...solid(
        'detail',
        rounded(points`840 -160, 840 160, 1190 150, 1330 90, 1660 76, 1660 -76, 1330 -90, 1190 -150`, 24),
      ),
      ...line(
        'detail',
        smooth(points`1000 -190, 1320 -236, 1700 -240, 2180 -236`),
        smooth(points`2790 -230, 3000 -236, 3180 -330, 3380 -620, 3540 -620, 3640 -540, 4170 -560`),
      ),
      ...solid('detail', block(2340, 2790, -296, -170, 56)),
      ...line('centre', lines([-120, 0], [4370, 0])),
    ],
  }
}

/** The bay from above, upright panels folded flat: stations along, the bulkhead folded back. */
export function bay(at: { x: number; y: number }): ViewDrawing {
  const ink: InkCurve[] = [
    ...solid('detail', block(620, 1120, -170, 190, 40)),
    ...solid('detail', block(660, 1080, -120, 40, 24)),
    ...loop('form', ...[720, 830, 940, 1040].map((u) => ellipse([u, -40], 34))),
    ...solid('detail', ellipse([560, 10], 100)),
    ...line('form', ...[440, 470, 500].map((u) => lines([u, -290], [u, 290]))),
    ...line(
      'form',
      ...bothDown(smooth(points`420 690, 700 770, 1160 796`), smooth(points`960 470, 1080 480, 1200 476`)),
    ),
    ...line('centre', lines([100, 0], [1900, 0])),
  ]
  return {
    id: 'bay',
    name: 'Engine bay from above, upright panels folded flat',
    box: { u: 160, v: -860, width: 1640, height: 1720 },
    at,
    mirror: 'v',
    curves: [
      smooth(points`190 0, 194 300, 216 500`, [0, 1]),
      smooth(points`216 500, 300 650, 480 760, 800 828, 1250 850`),
      smooth(points`400 0, 404 300, 410 420`, [0, 1]),
      lines([410, 420], [216, 500]),
      smooth(points`410 420, 600 410, 900 404, 1250 396`),
      smooth(points`1250 0, 1250 396`),
      smooth(points`1250 396, 1256 640, 1250 850`),
      smooth(points`1250 850, 1420 826, 1600 760, 1700 640`),
      smooth(points`1700 640, 1736 300, 1740 0`, undefined, [0, -1]),
      lines([0, 0], [2000, 0]),
    ],
    faces: {
      'radiator-support': [300, 200],
      'front-side-inner.L': [900, 600],
      'open engine': [800, 200],
      'front-bulkhead': [1500, 300],
    },
    setIn: [
      ...sides('spring-tower', ellipse([780, 610], 164), 'front-side-inner'),
      middle('battery-tray', block(1300, 1500, -560, -260, 14), 'front-bulkhead'),
    ],
    cutouts: [],
    silhouette: null,
    ink,
  }
}

/** The inside with its upright panels folded down: stations hold from the toe board to the heel board. */
export function floor(at: { x: number; y: number }): ViewDrawing {
  return {
    id: 'floor',
    name: 'Inside, unfolded: stations hold from toe board to heel board, upright panels are folded flat',
    box: { u: 860, v: -1080, width: 3820, height: 2160 },
    at,
    mirror: 'v',
    curves: [
      smooth(points`900 0, 904 300, 930 560, 970 640`, [0, 1]),
      smooth(points`970 640, 1060 664, 1180 668, 1230 640`),
      smooth(points`1230 640, 1236 300, 1236 0`, undefined, [0, -1]),
      smooth(points`1236 0, 1236 300, 1230 640`, [0, 1]),
      lines([1230, 640], [1230, 668], [1450, 668]),
      lines([1450, 0], [1450, 800], [2700, 800]),
      smooth(points`1450 150, 1900 132, 2720 122`),
      lines([1450, 668], [2715, 668]),
      lines([2030, 100], [2030, 680]),
      lines([2150, 100], [2150, 680]),
      smooth(points`2700 0, 2704 400, 2700 800`, [0, 1]),
      lines([2695, 668], [2880, 668]),
      smooth(points`2880 0, 2884 300, 2880 668`, [0, 1]),
      smooth(points`2700 800, 2690 960, 2760 1050, 3100 1040, 3250 940, 3300 640`),
      smooth(points`2880 668, 3000 640, 3300 632`),
      smooth(points`3300 0, 3308 320, 3300 640`, [0, 1]),
      smooth(points`3300 640, 3440 620, 3590 560`),
      smooth(points`3590 0, 3600 260, 3590 560`, [0, 1]),
      smooth(points`3590 470, 3640 440, 3860 432, 4080 452, 4140 500`),
      smooth(points`3590 560, 3620 760, 3760 832, 3960 826, 4120 740, 4140 500`),
      smooth(points`4140 500, 4380 524, 4600 500`),
      smooth(points`4140 500, 4200 610, 4260 720, 4540 724, 4600 500`),
      smooth(points`4600 500, 4628 260, 4632 0`, undefined, [0, -1]),
      lines([800, 0], [4760, 0]),
    ],
    faces: {
      'instrument-panel': [1080, 300],
      'toe-board': [1340, 300],
      tunnel: [2000, 60],
      'front-floor.L': [1700, 400],
      'seat-mount.L': [2090, 400],
      'rear-floor.L': [2400, 400],
      'lower-rail-inner.L': [2000, 730],
      'heel-board': [2780, 300],
      'rear-side-inner.L': [3000, 850],
      'rear-bulkhead': [3100, 300],
      'rear-shelf': [3450, 200],
      'rear-arch-inner.L': [3860, 640],
      'luggage-side-floor.L': [4280, 640],
      'luggage-floor': [3720, 100],
    },
    setIn: [middle('spare-well', ellipse([4140, 60], 312), 'luggage-floor')],
    cutouts: [],
    silhouette: null,
    ink: [
      ...line('form', ...bothDown(...[230, 330, 430, 530].map((v) => lines([1500, v], [1980, v])))),
      ...line('form', ...bothDown(...[230, 330, 430, 530].map((v) => lines([2200, v], [2640, v])))),
      ...loop('form', ellipse([4140, 60], 280), ellipse([4140, 60], 60)),
      ...loop('detail', ...bothDown(ellipse([1090, 300], 56)), roundedBox([1090, 0], 120, 300, 20)),
      ...line(
        'form',
        ...bothDown(
          smooth(points`3650 330, 3690 300, 3700 200`),
          lines([2930, 200], [3250, 200]),
          lines([2930, 420], [3250, 420]),
        ),
      ),
      ...line('centre', lines([800, 0], [4760, 0])),
    ],
  }
}

/** Moves a curve on its sheet. */
export const shifted = (curve: Curve, du: number, dv: number): Curve =>
  moved(curve, ([u, v]: Point): Point => [u + du, v + dv])
