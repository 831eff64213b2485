import { between, type Point } from '../../electron/figures/cubic-path.ts'
import { type Curve, points, pointWhere, smooth } from './curve.ts'

/** The named dimensions of the coupé, mm. */
export const size = {
  length: 4250,
  wheelbase: 2500,
  width: 1616,
  height: 1350,
  frontAxle: 760,
  rearAxle: 3260,
  wheelHeight: 316,
  tyreRadius: 316,
  trackHalf: 640,
} as const

/** Lamp glass: middle and radius; the same in every view. */
export const lamp = { station: 96, out: 588, height: 676, radius: 110, bowl: 136 } as const

const blend = (from: number, to: number, value: number): number => {
  const t = Math.max(0, Math.min(1, (value - from) / (to - from)))
  return t * t * (3 - 2 * t)
}

/** The shoulder sits 26 mm below its section points; the drop fades out towards the flank and the roof. */
export const height = (z: number): number => z - 26 * blend(730, 885, z) * (1 - blend(900, 1345, z))

/** A point of a side or end view from its station or half width and its section height. */
export const up = ([u, z]: Point): Point => [u, -height(z)]

/** Smooth curve of a side or end view through points (station or half width, height). */
export const raised = (points: readonly Point[], start?: Point, end?: Point): Curve =>
  smooth(points.map(up), start && [start[0], -start[1]], end && [end[0], -end[1]])

/** Side elevation: station behind the front datum, height. */
export const profile = {
  crest: raised(
    points`98 770, 240 808, 560 852, 1000 876, 1500 872, 2150 852, 2680 838, 2920 850, 3200 872, 3650 884, 4132 862`,
    [0.7, 1],
  ),
  bonnet: raised(points`270 806, 480 862, 820 916, 1180 944, 1340 950, 1448 958`, undefined, [1, 0.1]),
  screen: raised(points`1448 958, 1650 1152, 1870 1303`, [1, 1.06], [1, 0.56]),
  roof: raised(points`1870 1303, 2060 1340, 2290 1350, 2540 1335, 2770 1286, 3030 1128, 3300 942`, [1, 0.5], [1, -0.5]),
  deck: raised(points`3300 942, 3500 920, 3800 901, 4010 881, 4096 864`, [1, -0.2]),
  front: raised(points`388 256, 270 284, 186 366, 150 466, 126 580`, [-1, 0]),
  brow: raised(points`126 580, 108 680, 98 770`),
  tail: raised(points`4132 862, 4120 760, 4132 660, 4142 560, 4110 430`, [-0.2, -1]),
  tailFoot: raised(points`4110 430, 4040 352, 3880 304, 3614 284`, undefined, [-1, 0]),
  frontArch: raised(points`1132 222, 1126 380, 1024 594, 760 694, 498 594, 394 400, 388 256`, [0, 1], [0, -1]),
  rearArch: raised(points`3614 284, 3606 420, 3490 586, 3255 652, 3026 586, 2914 400, 2906 222`, [0, 1], [0, -1]),
  sillFoot: raised(points`2906 222, 2400 206, 1700 206, 1132 222`),
} as const

/** Point of the shoulder at a station, side elevation. */
export const onCrest = (station: number): Point => pointWhere(profile.crest, 0, station)

/** Plan: station, half width. */
export const plan = {
  edge: smooth(
    points`124 0, 122 200, 114 360, 100 490, 98 590, 112 680, 156 738, 250 778, 420 799, 760 808, 1200 805, 1700 797, 2300 795, 2800 802, 3260 808, 3560 799, 3840 772, 4040 736, 4116 696, 4142 630, 4158 340, 4164 0`,
    [0, 1],
    [0, -1],
  ),
  crest: smooth(points`108 640, 230 680, 500 706, 900 714, 1500 706, 2300 700, 2720 700, 3200 722, 3700 726, 4128 668`),
} as const

/** Curve a share of the way between two curves of equally many pieces. */
export const blended = (one: Curve, other: Curve, share: number): Curve =>
  one.map((piece, index) => {
    const facing = other[index] ?? piece
    return [
      between(piece[0], facing[0], share),
      between(piece[1], facing[1], share),
      between(piece[2], facing[2], share),
      between(piece[3], facing[3], share),
    ]
  })
