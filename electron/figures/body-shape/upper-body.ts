import type { BodyDimensions } from '../../../shared-types/body-dimensions.ts'
import type { BodyDescription } from './body-description.ts'
import { type FairCurve, fairCurve } from './fair-curve.ts'
import type { LowerBody } from './lower-body.ts'
import { mixed, type Point3 } from './space.ts'

/** Bonnet and deck, side windows, gutter and roof, left half. */
export interface UpperBody {
  /** Point of bonnet, scuttle or deck at a station and a distance from the centre line. */
  readonly onTop: (x: number, y: number) => Point3
  /** Point of the side of the glasshouse at a station and height; it leans in from the crest to the gutter. */
  readonly onSideGlass: (x: number, z: number) => Point3
  readonly gutter: (x: number) => Point3
  /** Upper edge of the side windows, below the gutter. */
  readonly frameTop: (x: number) => Point3
  readonly onRoof: (x: number, y: number) => Point3
  /** Station of the rear edge of the bonnet, and of the foot of the windscreen, at a distance from the centre line. */
  readonly cowlAt: (y: number) => number
  readonly screenFootAt: (y: number) => number
  /** Foot of the rear screen; only where the body has a deck. */
  readonly rearScreenFootAt: (y: number) => number
  readonly header: Point3
  readonly roofRear: Point3
  /** Foot of the windscreen at the centre line and at its corner; the corner of the rear screen, tail door or cab. */
  readonly screenCorner: Point3
  readonly rearCorner: Point3
  readonly gutterFrontMm: number
  readonly gutterRearMm: number
  readonly peakMm: number
  /** Stations at which gutter and frame change their formula. */
  readonly gutterBreaks: readonly number[]
}

const degrees = Math.PI / 180
/** Shortest roof that can be drawn, a share of the wheelbase. */
const SHORTEST_ROOF = 0.24

export function upperBody(description: BodyDescription, d: BodyDimensions, lower: LowerBody): UpperBody {
  const { stations, roof, tail } = description
  const station = (share: number): number => d.frontOverhangMm + share * d.wheelbaseMm
  const half = lower.halfWidthMm
  const crestAt = (x: number): Point3 => lower.crest(lower.roundAt('crest', x))
  const noseTop = lower.crest(0)
  const tailTop = lower.crest(3)
  const crown = crownOf(description, d, noseTop[0], tailTop[0])
  const onTop = (x: number, y: number): Point3 => {
    const [, edge, height] = crestAt(x)
    const share = edge > 0 ? Math.min(1, Math.abs(y) / edge) : 1
    return [x, y, height + crown(x) * (1 - share ** 2.4)]
  }
  const headerHeight = d.heightMm * (1 - roof.headerFall)
  const rearHeight = d.heightMm * (1 - roof.rearFall)
  const bowed = (foot: number, bow: number) => (y: number) => foot + bow * half * (y / half) ** 2
  /** Steep screens are flat, lying ones curved: the bow of the foot is held to a share of the screen's run. */
  const bowOf = (share: number, footMm: number, top: number, lean: number) => {
    const run = (top - onTop(footMm, 0)[2]) * Math.tan(lean * degrees)
    return Math.min(share, (0.6 * run) / half)
  }
  const screenFootMm = station(stations.screenFoot)
  const screenBow = bowOf(0.26, screenFootMm, headerHeight, d.screenRakeDegrees)
  const cowlAt = bowed(station(stations.cowl), screenBow * 0.77)
  const screenFootAt = bowed(screenFootMm, screenBow)
  const rearFootMm = station(stations.rearScreenFoot ?? 0)
  const rearScreenFootAt = bowed(
    rearFootMm,
    tail === 'deck' ? -bowOf(0.34, rearFootMm, rearHeight, d.rearScreenRakeDegrees) : 0,
  )
  const screenHalf = lower.crestHalfMm - half * 0.075
  const screenCorner = onTop(screenFootAt(screenHalf), screenHalf)

  const screenFoot = onTop(screenFootAt(0), 0)
  const header: Point3 = [
    screenFoot[0] + (headerHeight - screenFoot[2]) * Math.tan(d.screenRakeDegrees * degrees),
    0,
    headerHeight,
  ]
  const rearHalf = tail === 'deck' ? lower.crestHalfMm - half * 0.13 : lower.lidHalfMm
  const rearCorner = {
    deck: () => onTop(rearScreenFootAt(rearHalf), rearHalf),
    upright: () => lower.crest(lower.roundAcross('crest', 'tail', rearHalf)),
    bed: () => crestAt(station(stations.cabRear ?? 1)),
  }[tail]()
  const rearFoot = {
    deck: () => onTop(rearScreenFootAt(0), 0),
    upright: () => tailTop,
    bed: (): Point3 => [rearCorner[0], 0, rearCorner[2]],
  }[tail]()
  const roofRear: Point3 = [
    rearFoot[0] - (rearHeight - rearFoot[2]) * Math.tan(d.rearScreenRakeDegrees * degrees),
    0,
    rearHeight,
  ]
  const roofLength = roofRear[0] - header[0]
  if (roofLength < d.wheelbaseMm * SHORTEST_ROOF)
    throw new Error('The lean of the screens leaves no roof between them.')
  const peakMm = Math.min(
    Math.max(station(stations.roofPeak), header[0] + roofLength * 0.26),
    roofRear[0] - roofLength * 0.34,
  )
  const gutterTop = d.heightMm * (1 - roof.crown)
  const belt = d.beltHeightMm
  const lean = Math.tan(d.tumblehomeDegrees * degrees) * (gutterTop - belt)
  const gutterHalf = lower.crestHalfMm - lean
  const gutterFrontMm = header[0] + half * 0.055
  const gutterRearMm = roofRear[0] - half * (tail === 'deck' ? 0.02 : 0.05)
  const gutterHeight = fairCurve([
    [gutterFrontMm, headerHeight - d.heightMm * roof.crown * 0.8],
    [peakMm, gutterTop],
    [gutterRearMm, rearHeight - d.heightMm * roof.crown * 1.05],
  ])
  const gutterWidth: FairCurve = fairCurve([
    [gutterFrontMm, gutterHalf - half * 0.05],
    [mixed(gutterFrontMm, peakMm, 0.6), gutterHalf],
    [mixed(peakMm, gutterRearMm, 0.45), gutterHalf],
    [gutterRearMm, gutterHalf - half * (tail === 'bed' ? 0.04 : 0.085)],
  ])
  const roofLine = fairCurve([
    [header[0], headerHeight],
    [peakMm, d.heightMm],
    [roofRear[0], rearHeight],
  ])
  const gutter = (x: number): Point3 => [x, gutterWidth(x), gutterHeight(x)]
  const onSideGlass = (x: number, z: number): Point3 => {
    const low = crestAt(x)
    const share = Math.max(0, (z - low[2]) / (gutterHeight(x) - low[2]))
    return [x, low[1] - (lower.crestHalfMm - gutterHalf) * share ** 1.22, z]
  }
  return {
    onTop,
    onSideGlass,
    gutter,
    frameTop: (x) => onSideGlass(x, gutterHeight(x) - d.heightMm * 0.04),
    onRoof: (x, y) => {
      const [, edge, height] = gutter(x)
      return [x, y, height + (roofLine(x) - height) * (1 - Math.min(1, Math.abs(y) / edge) ** 2.2)]
    },
    cowlAt,
    screenFootAt,
    rearScreenFootAt,
    header,
    roofRear,
    screenCorner,
    rearCorner,
    gutterFrontMm,
    gutterRearMm,
    peakMm,
    gutterBreaks: [mixed(gutterFrontMm, peakMm, 0.6), peakMm, mixed(peakMm, gutterRearMm, 0.45)],
  }
}

/** Height of bonnet and deck over the crest along the centre line. */
function crownOf(
  { stations, heights, tail }: BodyDescription,
  d: BodyDimensions,
  noseMm: number,
  tailMm: number,
): FairCurve {
  const station = (share: number): number => d.frontOverhangMm + share * d.wheelbaseMm
  const bonnet = d.beltHeightMm * heights.bonnetCrown
  const cowl = station(stations.cowl)
  const front = [
    [noseMm, 0],
    [mixed(noseMm, cowl, 0.28), bonnet * 0.62],
    [cowl, bonnet],
    [station(stations.screenFoot) + d.widthMm * 0.12, bonnet * 1.06],
  ] as const
  if (tail !== 'deck') return fairCurve([...front])
  const deck = d.beltHeightMm * heights.deckCrown
  const foot = station(stations.rearScreenFoot ?? 0)
  return fairCurve([
    ...front,
    [foot - d.widthMm * 0.2, deck * 1.16],
    [foot, deck],
    [mixed(foot, tailMm, 0.55), deck * 0.56],
    [tailMm, 0],
  ])
}
