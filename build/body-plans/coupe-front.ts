import type { Point } from '../../electron/figures/cubic-path.ts'
import { lamp, raised, size, up } from './coupe-shape.ts'
import { type Curve, ellipse, endOf, joined, lines, mirrored, points, rounded, startOf, stretch } from './curve.ts'
import { bothAcross, wholeAcross } from './mirror.ts'
import { type InkCurve, line, loop, solid, type ViewDrawing } from './view-drawing.ts'

const flat = (...points: Point[]): Curve => lines(...points.map(up))

/** Lines of the half that lies to the driver's left. */
const half = {
  foot: raised(points`0 266, 360 264, 620 258, 716 266, 768 316`, [1, 0]),
  flank: raised(points`768 316, 790 400, 808 540, 806 680, 790 780, 756 846, 714 876`),
  wingTop: raised(points`714 876, 668 876, 612 866, 556 872`, [-1, 0.1]),
  bonnetTop: raised(points`556 872, 420 900, 220 936, 0 950`, [-1, 0.24], [-1, 0]),
  cab: raised(points`706 840, 660 1040, 610 1196, 578 1264, 526 1312, 430 1334, 220 1347, 0 1350`, undefined, [-1, 0]),
  screenFoot: raised(points`0 960, 260 950, 500 918, 640 886, 656 860`, [1, 0]),
  screenEdge: raised(points`640 886, 604 1040, 556 1188, 506 1282`),
  screenTop: raised(points`0 1303, 260 1300, 440 1291, 506 1282, 620 1262`, [1, 0]),
  bonnetLip: raised(points`0 742, 240 740, 392 742, 440 758, 462 800, 556 872`, [1, 0]),
  bowl: ellipse(up([lamp.out, lamp.height]), lamp.bowl),
  noseSeamTop: raised(points`450 778, 462 752, 484 742`),
  noseSeam: raised(points`484 600, 470 540, 466 480, 470 402`),
  apronTop: raised(points`0 396, 240 397, 470 402`, [1, 0]),
  apronSide: raised(points`470 402, 510 320, 604 250`),
  middle: lines([0, -1400], [0, 0]),
} as const

const faces: Record<string, Point> = {
  'front-side.L': [740, 500],
  'lamp-housing.L': [588, 690],
  'nose-panel': [300, 460],
  'front-apron': [300, 330],
  'front-lid': [300, 830],
  'air-chamber': [300, 934],
  'front-post-upper.L': [640, 1040],
  'front-glass-surround': [300, 1100],
  'roof-skin': [300, 1325],
}

/** Tyre seen from its end, from where the body lets it out down to the ground; the same at both ends of the car. */
export function tyreInk(foot: Curve): InkCurve[] {
  const hem = stretch(foot, 0, 570, 712)
  const tyre = joined(
    hem,
    lines(endOf(hem), up([714, 40])),
    raised(points`714 40, 708 14, 688 0`, [0, -1], [-1, 0]),
    lines(up([688, 0]), up([592, 0])),
    raised(points`592 0, 572 14, 566 40`, [-1, 0], [0, 1]),
    lines(up([566, 40]), startOf(hem)),
  )
  const treads = [598, 626, 654, 682].map((u) => flat([u, 6], [u, 236]))
  return [...solid('shut', ...bothAcross(tyre)), ...line('form', ...bothAcross(...treads))]
}

const glass = wholeAcross(
  joined(
    raised(points`0 972, 280 963, 480 938, 580 914, 606 910`, [1, 0]),
    raised(points`606 910, 574 1040, 526 1180, 488 1252`),
    raised(points`488 1252, 430 1264, 260 1275, 0 1278`, [-1, 0.5], [-1, 0]),
  ),
)

function glassInk(): InkCurve[] {
  return [
    ...line('form', flat([-240, 1010], [-110, 1200]), flat([-200, 1010], [-70, 1200]), flat([250, 1060], [330, 1180])),
    ...line('detail', raised(points`-430 944, -424 992, -370 1024, -306 1020, -268 982, -262 958`)),
    ...line('detail', raised(points`60 968, 190 990, 370 1000`), raised(points`-420 948, -290 990, -110 1002`)),
  ]
}

/** One plain opening, wider than it is high. */
const opening = (inset: number): Curve =>
  wholeAcross(
    joined(
      raised(
        [
          [0, 676 - inset],
          [230, 672 - inset],
          [370 - inset, 648 - inset],
        ],
        [1, 0],
      ),
      raised([
        [370 - inset, 648 - inset],
        [416 - inset, 616 - inset * 0.4],
        [418 - inset, 574],
        [384 - inset, 540 + inset * 0.6],
      ]),
      raised(
        [
          [384 - inset, 540 + inset * 0.6],
          [230, 524 + inset],
          [0, 520 + inset],
        ],
        undefined,
        [-1, 0],
      ),
    ),
  )

const lampGlass = ellipse(up([lamp.out, lamp.height]), lamp.radius)

/** The opening is closed by upright bars. */
function grilleInk(): InkCurve[] {
  const bars: Curve[] = []
  for (let u = 0; u <= 372; u += 24) {
    const fall = (u / 400) ** 3.2
    bars.push(flat([u, 534 + fall * 30], [u, 662 - fall * 60]))
  }
  return [
    ...loop('detail', opening(13)),
    ...line('detail', ...bothAcross(...bars.slice(1)), ...bars.slice(0, 1)),
    ...line('shut', flat([-396, 598], [396, 598])),
  ]
}

function lampInk(): InkCurve[] {
  const middle = up([lamp.out, lamp.height])
  const ribs = Array.from({ length: 9 }, (_, index) => (index - 4) * 18).map((du) => {
    const reach = Math.sqrt(88 * 88 - du * du)
    return raised([
      [lamp.out + du, lamp.height - reach],
      [lamp.out + du * 1.12, lamp.height],
      [lamp.out + du, lamp.height + reach],
    ])
  })
  return [
    ...loop('detail', ...bothAcross(ellipse(middle, 100), ellipse(middle, 90))),
    ...line('form', ...bothAcross(...ribs)),
  ]
}

/** Bumper bar with its overriders; the same at both ends of the car. */
export function bumperInk(): InkCurve[] {
  const bar = wholeAcross(
    joined(
      raised(points`0 505, 400 505, 700 502, 784 492`, [1, 0]),
      raised(points`784 492, 810 462, 806 424, 776 406`),
      raised(points`776 406, 400 398, 0 398`, undefined, [-1, 0]),
    ),
  )
  const overrider = rounded(points`298 560, 362 560, 366 372, 294 372`.map(up), [26, 26, 16, 16])
  return [
    ...solid('shut', bar),
    ...line(
      'form',
      ...bothAcross(raised(points`0 471, 400 471, 804 462`, [1, 0]), raised(points`0 432, 400 432, 802 436`, [1, 0])),
    ),
    ...solid('shut', ...bothAcross(overrider)),
    ...line('form', ...bothAcross(flat([314, 544], [317, 386]))),
  ]
}

/** Front elevation: driver's left on the reader's right. */
export function front(at: { x: number; y: number }): ViewDrawing {
  const plate = rounded(points`240 384, 240 288, -240 288, -240 384`.map(up), 8)
  return {
    id: 'front',
    name: 'Front',
    box: { u: -size.width / 2, v: -size.height, width: size.width, height: size.height },
    at,
    mirror: 'u',
    curves: Object.values(half),
    faces: Object.fromEntries(Object.entries(faces).map(([name, point]) => [name, up(point)])),
    setIn: [],
    cutouts: [
      { panelId: 'front-glass-surround', curve: glass, weight: 'shut' },
      { panelId: 'nose-panel', curve: opening(0), weight: 'shut' },
      { panelId: 'lamp-housing.L', curve: lampGlass, weight: 'shut' },
      { panelId: 'lamp-housing.R', curve: mirrored(lampGlass), weight: 'shut' },
    ],
    silhouette: null,
    ink: [
      ...tyreInk(half.foot),
      ...glassInk(),
      ...grilleInk(),
      ...lampInk(),
      ...line(
        'form',
        ...bothAcross(raised(points`110 930, 96 850, 70 764`), raised(points`330 890, 318 830, 296 768`)),
      ),
      ...line(
        'form',
        ...bothAcross(raised(points`700 850, 740 790, 760 720`), raised(points`690 330, 740 420, 752 500`)),
      ),
      ...bumperInk(),
      ...solid('detail', plate),
      ...solid('detail', ellipse(up([0, 792]), 20)),
      ...line('centre', lines([0, 60], [0, -1420])),
      ...line('station', lines([-900, 0], [900, 0])),
    ],
  }
}
