import { flattened, isInside, type Point } from '../../electron/figures/cubic-path.ts'
import { lamp, onCrest, profile, raised, size, up } from './coupe-shape.ts'
import { after, before, type Curve, ellipse, joined, lines, offset, points, rounded, smooth } from './curve.ts'
import { type InkCurve, line, loop, solid, type ViewDrawing } from './view-drawing.ts'

const flat = (...points: Point[]): Curve => lines(...points.map(up))

const door = {
  front: raised(points`1573 877, 1556 800, 1538 720, 1514 540, 1513 400, 1530 286`),
  foot: joined(
    raised(points`1530 286, 1542 268, 1566 262`, [0.1, -1], [1, 0]),
    flat([1566, 262], [2412, 262]),
    raised(points`2412 262, 2438 266, 2452 284`, [1, 0], [0.3, 1]),
  ),
  rear: raised(points`2452 284, 2492 400, 2514 600, 2526 760, 2530 862`),
}

/** Greenhouse lines of the side: screen edge, frame of the door, posts, gutter. */
const house = {
  screenFoot: smooth([up([1440, 970]), up([1450, 956]), up([1524, 924]), up([1564, 894]), onCrest(1590)]),
  screenEdge: smooth([onCrest(1590), up([1745, 1092]), up([1872, 1246]), up([1912, 1290]), up([1920, 1302])]),
  railFront: raised(points`1934 1250, 1912 1290`),
  frameFront: raised(points`1646 866, 1796 1072, 1934 1250`),
  frameTop: raised(
    points`1934 1250, 1968 1274, 2060 1290, 2290 1301, 2500 1287, 2640 1254, 2712 1218`,
    [0.62, 0.78],
    [0.8, -0.8],
  ),
  gutter: raised(
    points`1864 1299, 1912 1290, 1990 1306, 2100 1319, 2290 1326, 2510 1310, 2650 1280, 2744 1246, 2830 1250`,
    undefined,
  ),
  postFront: raised(points`2494 1300, 2504 1100, 2506 820`),
  postRear: raised(points`2534 1300, 2548 1100, 2552 820`),
  sideGlassRear: raised(points`2712 1218, 2830 1084, 2922 960, 2972 850`, [0.8, -0.8]),
  railEnd: raised(points`2706 1222, 2744 1246`),
  rearScreenEdge: raised(points`2836 1262, 2818 1240, 2975 1098, 3140 905, 3146 860`),
  rearScreenFoot: raised(points`3136 908, 3220 930, 3306 945`),
  lidFront: raised(points`3356 950, 3340 900, 3318 868`),
  bonnetRear: raised(points`1340 960, 1378 925, 1434 866`),
}

const cut = {
  bowl: raised(points`90 800, 140 786, 166 730, 170 660, 156 590, 120 540`),
  rearLamp: raised(points`4150 846, 4092 838, 4066 780, 4074 700, 4104 662, 4150 650`),
  sillTopFront: flat([1120, 286], [1530, 286]),
  sillTopRear: flat([2452, 284], [2914, 286]),
}

const curves = (): Curve[] => [
  profile.front,
  profile.brow,
  before(profile.crest, 0, 1662),
  after(profile.crest, 0, 2500),
  profile.bonnet,
  profile.screen,
  profile.roof,
  profile.deck,
  profile.tail,
  profile.tailFoot,
  profile.rearArch,
  profile.sillFoot,
  profile.frontArch,
  door.front,
  door.foot,
  door.rear,
  ...Object.values(house),
  ...Object.values(cut),
]

const faces: Record<string, Point> = {
  'front-side.L': [1300, 500],
  'lamp-housing.L': [128, 690],
  'front-lid': [1100, 900],
  'air-chamber': [1450, 915],
  'open windscreen': [1700, 1110],
  'front-post-upper.L': [1720, 1020],
  'front-door.L': [2000, 600],
  'mid-post-upper.L': [2526, 1000],
  'lower-rail-outer.L': [2000, 235],
  'rear-side.L': [2760, 600],
  'side-glass-surround.L': [2700, 1000],
  'rear-post.L': [2960, 1000],
  'roof-rail.L': [2290, 1313],
  'roof-skin': [2290, 1338],
  'open rear screen': [3000, 1110],
  'rear-deck-panel': [3240, 900],
  'rear-lid': [3600, 892],
  'rear-lamp-housing.L': [4110, 750],
}

function wheel(station: number): InkCurve[] {
  const middle = up([station, size.wheelHeight])
  const ring = (radius: number) => ellipse(middle, radius)
  const slots = Array.from({ length: 12 }, (_, index) => {
    const turn = (index * Math.PI) / 6 + Math.PI / 12
    return ellipse([middle[0] + Math.cos(turn) * 166, middle[1] + Math.sin(turn) * 166], 12)
  })
  return [
    ...solid('shut', ring(size.tyreRadius)),
    ...loop('form', ring(306), ring(290), ring(272), ring(254), ring(236)),
    ...solid('shut', ring(216)),
    ...loop('detail', ring(205), ...slots),
    ...solid('shut', ring(128)),
    ...loop('detail', ring(114), ring(52)),
    ...loop('form', ring(44)),
  ]
}

/** The dark gap between tyre and arch, as strokes that follow the wheel's rays. */
function archShade(arch: Curve, station: number): InkCurve[] {
  const opening = flattened(joined(arch, flat(pointBack(arch, true), pointBack(arch, false))))
  const middle = up([station, size.wheelHeight])
  const strokes: Curve[] = []
  for (let degrees = -12; degrees <= 192; degrees += 2.4) {
    const turn = (degrees * Math.PI) / 180
    const ray = (radius: number): Point => [middle[0] + Math.cos(turn) * radius, middle[1] - Math.sin(turn) * radius]
    let reach = size.tyreRadius + 4
    while (reach < 420 && isInside(opening, ray(reach))) reach += 2
    if (reach > size.tyreRadius + 8) strokes.push(lines(ray(size.tyreRadius + 2), ray(reach - 4)))
  }
  return line('detail', ...strokes)
}

function pointBack(arch: Curve, end: boolean): Point {
  const point = end ? arch.at(-1)?.[3] : arch[0]?.[0]
  return [point?.[0] ?? 0, -(point?.[1] ?? 0)]
}

const doorGlass = joined(
  raised(points`1694 884, 1822 1064, 1946 1226`),
  raised(points`1946 1226, 1974 1252, 2060 1271, 2290 1282, 2470 1272`, [0.6, 0.8]),
  flat([2470, 1272], [2482, 872]),
  raised(points`2482 872, 2100 888, 1694 884`),
)
const sideGlass = joined(
  raised(points`2560 1258, 2636 1238, 2692 1206`),
  raised(points`2692 1206, 2806 1076, 2890 962, 2926 884`),
  raised(points`2926 884, 2800 872, 2572 874`),
  flat([2572, 874], [2560, 1258]),
)
const frontBumper = joined(
  raised(points`40 505, 28 450, 40 398`),
  raised(points`40 398, 200 388, 340 404`),
  raised(points`340 404, 388 420, 398 456, 384 488, 340 498`),
  raised(points`340 498, 200 508, 40 505`),
)
const rearBumper = joined(
  raised(points`4210 505, 4222 450, 4210 398`),
  raised(points`4210 398, 4060 388, 3920 404`),
  raised(points`3920 404, 3866 420, 3856 456, 3870 488, 3920 498`),
  raised(points`3920 498, 4060 508, 4210 505`),
)

function glassInk(): InkCurve[] {
  return [
    ...line('detail', flat([1870, 1122], [1890, 884]), flat([1882, 1140], [1903, 884])),
    ...line(
      'form',
      flat([2080, 960], [2230, 1190]),
      flat([2120, 960], [2270, 1190]),
      flat([2650, 940], [2722, 1084]),
      flat([1640, 1072], [1740, 1176]),
      flat([3000, 1060], [3060, 1020]),
    ),
    ...line(
      'form',
      raised(points`1972 886, 1958 950, 1972 1004`),
      raised(points`2310 878, 2352 970, 2380 1036, 2414 1044, 2432 1000, 2438 876`),
    ),
  ]
}

/** Lines that give the flank its section: they run out before they meet an edge. */
function formInk(): InkCurve[] {
  return [
    ...line(
      'form',
      raised(points`430 730, 800 762, 1500 764, 2300 744, 2760 730`),
      raised(points`620 742, 1000 754, 1500 752, 2200 736, 2560 726`),
      raised(points`2960 716, 3120 742, 3400 762, 3760 764, 4000 752`),
      raised(points`3120 732, 3400 750, 3700 752, 3880 744`),
      raised(points`1220 318, 1340 312, 1460 310`),
      raised(points`1640 302, 2000 296, 2360 302`),
      raised(points`2560 320, 2700 312, 2840 318`),
    ),
  ]
}

function detailInk(): InkCurve[] {
  const vents = [0, 1, 2].map((index) =>
    rounded(
      [
        [1216 + index * 62, 596],
        [1242 + index * 62, 596],
        [1232 + index * 62, 500],
        [1206 + index * 62, 500],
      ].map((point) => up([point[0] ?? 0, point[1] ?? 0])),
      11,
    ),
  )
  const box = (corners: Point[], radius: number | number[]) => rounded(corners.map(up), radius)
  const overrider = (station: number) =>
    box(
      [
        [station - 20, 560],
        [station + 26, 560],
        [station + 32, 372],
        [station - 22, 372],
      ],
      [24, 18, 14, 22],
    )
  return [
    ...line('detail', offset(before(profile.frontArch, 0, 500), 18), offset(profile.rearArch, 18)),
    ...loop('detail', ...vents),
    ...solid('detail', box(points`2290 790, 2424 784, 2426 768, 2292 772`, 8)),
    ...solid('detail', ellipse(up([2408, 752]), 9)),
    ...loop('detail', box(points`1190 668, 1350 668, 1350 642, 1190 642`, 4)),
    ...loop('detail', box(points`262 566, 330 566, 336 536, 258 536`, 14)),
    ...solid('shut', frontBumper, rearBumper),
    ...line('form', raised(points`36 470, 200 474, 388 470`), raised(points`36 432, 200 424, 386 434`)),
    ...line('form', raised(points`4216 470, 4060 474, 3864 470`), raised(points`4216 432, 4060 424, 3866 434`)),
    ...solid('shut', overrider(22), box(points`4250 560, 4204 560, 4198 372, 4250 372`, [24, 18, 14, 22])),
    ...solid(
      'shut',
      joined(
        raised([
          [lamp.station + 8, lamp.height + lamp.radius],
          [lamp.station - 26, lamp.height + 72],
          [lamp.station - 36, lamp.height],
          [lamp.station - 18, lamp.height - 70],
          [lamp.station + 26, lamp.height - lamp.radius],
        ]),
        raised([
          [lamp.station + 26, lamp.height - lamp.radius],
          [lamp.station + 44, lamp.height - 40],
          [lamp.station + 42, lamp.height + 40],
          [lamp.station + 8, lamp.height + lamp.radius],
        ]),
      ),
    ),
    ...line('form', raised(points`4072 752, 4098 748, 4118 746`)),
  ]
}

/** Left elevation; the right one is the same drawing with the sides exchanged. */
export function side(hand: 'L' | 'R', at: { x: number; y: number }): ViewDrawing {
  const sided = (name: string) => (name.endsWith('.L') ? `${name.slice(0, -1)}${hand}` : name)
  const flap = rounded(points`3545 838, 3714 840, 3718 702, 3543 700`.map(up), 34)
  return {
    id: hand === 'L' ? 'left' : 'right',
    name: hand === 'L' ? 'Left side' : 'Right side, mirrored',
    box: { u: 0, v: -size.height, width: size.length, height: size.height },
    at,
    mirror: 'none',
    curves: curves(),
    faces: Object.fromEntries(Object.entries(faces).map(([name, point]) => [sided(name), up(point)])),
    setIn: hand === 'R' ? [{ panelId: 'fuel-filler-flap.R', curve: flap, within: 'rear-side.R' }] : [],
    cutouts: [
      { panelId: sided('front-door.L'), curve: doorGlass, weight: 'shut' },
      { panelId: sided('side-glass-surround.L'), curve: sideGlass, weight: 'shut' },
    ],
    silhouette: null,
    ink: [
      ...archShade(profile.frontArch, size.frontAxle),
      ...archShade(profile.rearArch, size.rearAxle),
      ...wheel(size.frontAxle),
      ...wheel(size.rearAxle),
      ...line('detail', pathOfCrest(), offset(before(house.gutter, 0, 2740), -9)),
      ...glassInk(),
      ...formInk(),
      ...detailInk(),
      ...line('station', flat([-120, 0], [4370, 0])),
    ],
  }
}

const pathOfCrest = (): Curve => after(before(profile.crest, 0, 2500), 0, 1662)
