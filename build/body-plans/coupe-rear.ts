import type { Point } from '../../electron/figures/cubic-path.ts'
import { bumperInk, tyreInk } from './coupe-front.ts'
import { raised, size, up } from './coupe-shape.ts'
import { type Curve, ellipse, joined, lines, points, rounded } from './curve.ts'
import { bothAcross, wholeAcross } from './mirror.ts'
import { type InkCurve, line, loop, solid, type ViewDrawing } from './view-drawing.ts'

const flat = (...points: Point[]): Curve => lines(...points.map(up))
const box = (corners: readonly Point[], radius: number | number[]): Curve => rounded(corners.map(up), radius)

/** Lines of the half that lies to the driver's right. */
const half = {
  foot: raised(points`0 300, 360 298, 620 288, 716 294, 768 336`, [1, 0]),
  flank: raised(points`768 336, 788 410, 808 540, 804 680, 784 790, 756 850, 726 884`),
  shoulder: raised(points`726 884, 676 880, 598 872, 520 880, 468 894`, [-1, 0.1]),
  cab: raised(points`704 874, 660 1040, 610 1196, 578 1264, 526 1312, 430 1334, 220 1347, 0 1350`, undefined, [-1, 0]),
  screenTop: raised(points`0 1267, 260 1263, 420 1252, 470 1240`, [1, 0]),
  screenEdge: raised(points`470 1240, 534 1098, 590 926, 600 864`),
  postTop: raised(points`470 1240, 530 1254, 620 1240`),
  screenFoot: raised(points`0 946, 260 941, 470 926, 596 904`, [1, 0]),
  lidFront: raised(points`0 936, 220 931, 400 912, 440 906, 468 894`, [1, 0]),
  lidSide: raised(points`468 894, 506 876, 520 830, 520 740, 508 650, 484 602, 436 584`),
  lidFoot: raised(points`436 584, 300 572, 0 568`, undefined, [-1, 0]),
  rearLamp: ellipse(up([704, 742]), 58, 98),
  seamTop: raised(points`512 848, 580 830, 664 786`),
  seamFoot: raised(points`668 684, 640 560, 640 400, 612 280`),
  apronTop: raised(points`0 392, 300 392, 650 388`, [1, 0]),
  middle: lines([0, -1400], [0, 0]),
} as const

const faces: Record<string, Point> = {
  'rear-side.R': [740, 560],
  'rear-lamp-housing.R': [704, 740],
  'tail-panel': [580, 560],
  'rear-apron': [300, 340],
  'rear-lid': [200, 700],
  'rear-deck-panel': [300, 932],
  'rear-glass-surround': [200, 1100],
  'rear-post.R': [620, 1000],
  'roof-skin': [200, 1310],
}

const glass = wholeAcross(
  joined(
    raised(points`0 968, 260 963, 450 950, 552 934`, [1, 0]),
    raised(points`552 934, 502 1086, 448 1214`),
    raised(points`448 1214, 400 1228, 250 1238, 0 1242`, undefined, [-1, 0]),
  ),
)

function glassInk(): InkCurve[] {
  return [
    ...line('form', flat([-260, 1000], [-140, 1180]), flat([-220, 1000], [-100, 1180])),
    ...line('form', ...bothAcross(raised(points`150 976, 176 1030, 240 1054, 380 1048, 432 1010, 444 962`))),
  ]
}

function detailInk(): InkCurve[] {
  const lens = ellipse(up([708, 742]), 42, 82)
  return [
    ...solid('shut', ...bothAcross(lens)),
    ...line('detail', ...bothAcross(flat([667, 748], [749, 748]))),
    ...loop('form', ...bothAcross(ellipse(up([708, 700]), 20))),
    ...solid('detail', box(points`-70 812, 70 812, 56 788, -56 788`, 8)),
    ...solid('detail', box(points`-260 736, 260 736, 260 628, -260 628`, 8)),
    ...line(
      'form',
      ...bothAcross(raised(points`180 900, 196 840, 200 770`), raised(points`756 560, 752 470, 730 380`)),
    ),
    ...line('form', raised(points`-430 860, -200 872, 0 874, 200 872, 430 860`)),
    ...solid('detail', ellipse(up([-430, 262]), 26)),
    ...loop('form', ellipse(up([-430, 262]), 18)),
  ]
}

/** Rear elevation: driver's right on the reader's right. */
export function rear(at: { x: number; y: number }): ViewDrawing {
  return {
    id: 'rear',
    name: 'Rear',
    box: { u: -size.width / 2, v: -size.height, width: size.width, height: size.height },
    at,
    mirror: 'u',
    curves: Object.values(half),
    faces: Object.fromEntries(Object.entries(faces).map(([name, point]) => [name, up(point)])),
    setIn: [],
    cutouts: [{ panelId: 'rear-glass-surround', curve: glass, weight: 'shut' }],
    silhouette: null,
    ink: [
      ...tyreInk(half.foot),
      ...glassInk(),
      ...detailInk(),
      ...bumperInk(),
      ...line('centre', lines([0, 60], [0, -1420])),
      ...line('station', lines([-900, 0], [900, 0])),
    ],
  }
}
