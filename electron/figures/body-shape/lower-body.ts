import type { BodyDimensions } from '../../../shared-types/body-dimensions.ts'
import type { BodyDescription } from './body-description.ts'
import { type FairCurve, fairCurve } from './fair-curve.ts'
import { mixed, type Point3, solved, toward } from './space.ts'

/**
 * The body below the glass, left half. Three lines run round it from the nose (0) over the flank (1 to 2) to the tail
 * (3): the foot, the fullest line and the crest. Between them every section is two quadratic curves that meet
 * in a soft crease on the fullest line: `level` 0 is the foot, 1 the fullest line, 2 the crest.
 */
export interface LowerBody {
  readonly noseMm: number
  readonly tailMm: number
  /** Stations where the rounding of nose and tail ends and the flank begins. */
  readonly flankFromMm: number
  readonly flankToMm: number
  readonly halfWidthMm: number
  readonly crestHalfMm: number
  /** Distance from the centre line at which lid, tail door or load door ends at the crest of the tail. */
  readonly lidHalfMm: number
  readonly foot: (round: number) => Point3
  readonly fullest: (round: number) => Point3
  readonly crest: (round: number) => Point3
  readonly at: (round: number, level: number) => Point3
  /** Point of the flank, nose or tail at a station and height. */
  readonly onSide: (x: number, z: number) => Point3
  /** Point of nose or tail at a distance from the centre line and a height. */
  readonly onEnd: (end: 'nose' | 'tail', y: number, z: number) => Point3
  /** Parameters of a point of nose or tail at a distance from the centre line and a height. */
  readonly placeOnEnd: (end: 'nose' | 'tail', y: number, z: number) => readonly [round: number, level: number]
  /** Parameter of the crest, the foot or the fullest line at a station. */
  readonly roundAt: (line: 'foot' | 'fullest' | 'crest', x: number) => number
  /** Parameter of a line on nose or tail at a distance from the centre line. */
  readonly roundAcross: (line: 'foot' | 'fullest' | 'crest', end: 'nose' | 'tail', y: number) => number
}

interface PlanLine {
  readonly nose: number
  readonly tail: number
  readonly half: FairCurve
  readonly height: FairCurve
}

/** Share of the way up or down at which the handle of a section stands above or below the fullest line. */
const FULLNESS = { upper: 0.8, lower: 0.66 } as const
/** Share of the way in at which the upper handle stands: the fullest line is a soft crease, seen as such from above. */
const LEAN = 0.12

export function lowerBody(description: BodyDescription, dimensions: BodyDimensions): LowerBody {
  const { plan } = description
  const frontAxle = dimensions.frontOverhangMm
  const rearAxle = frontAxle + dimensions.wheelbaseMm
  const rearOverhang = dimensions.lengthMm - rearAxle
  const noseMm = frontAxle * BUMPER_SHARE
  const tailMm = dimensions.lengthMm - rearOverhang * BUMPER_SHARE
  const flankFromMm = noseMm + plan.noseRound * frontAxle
  const flankToMm = tailMm - plan.tailRound * rearOverhang
  const halfWidthMm = dimensions.widthMm / 2
  const crestHalfMm = halfWidthMm * (1 - plan.crestInset)
  const footHalf = halfWidthMm * (1 - plan.footInset)
  const line = (noseBack: number, tailBack: number, half: FairCurve, height: FairCurve): PlanLine => ({
    nose: noseMm + noseBack * frontAxle,
    tail: tailMm - tailBack * rearOverhang,
    half,
    height,
  })
  const heights = heightsOf(description, dimensions, noseMm, tailMm)
  const waist = (half: number): FairCurve =>
    fairCurve([
      [frontAxle, half],
      [mixed(frontAxle, rearAxle, 0.5), half * 0.987],
      [rearAxle, half],
    ])
  const lines = {
    foot: line(plan.noseFootBack, plan.tailFootBack, () => footHalf, heights.foot),
    fullest: line(0, 0, waist(halfWidthMm), heights.fullest),
    crest: line(plan.noseCrestBack, plan.tailCrestBack, () => crestHalfMm, heights.crest),
  }
  const round =
    ({ nose, tail, half, height }: PlanLine) =>
    (t: number): Point3 => {
      if (t >= 1 && t <= 2) {
        const x = mixed(flankFromMm, flankToMm, t - 1)
        return [x, half(x), height(x)]
      }
      const front = t < 1
      const [ahead, across] = quarter(front ? t : 3 - t, front ? plan.noseSquare : plan.tailSquare)
      const x = front ? flankFromMm - (flankFromMm - nose) * ahead : flankToMm + (tail - flankToMm) * ahead
      return [x, half(front ? flankFromMm : flankToMm) * across, height(x)]
    }
  const foot = round(lines.foot)
  const fullest = round(lines.fullest)
  const crest = round(lines.crest)
  const at = (t: number, level: number): Point3 => onSection(fullest(t), level > 1 ? crest(t) : foot(t), level)
  /** Point of a section at a height, and its level. */
  const atHeight = (t: number, z: number): { readonly point: Point3; readonly level: number } => {
    const middle = fullest(t)
    const end = z > middle[2] ? crest(t) : foot(t)
    const rise = (z - middle[2]) / (end[2] - middle[2])
    const level = z > middle[2] ? 1 + riseShare(FULLNESS.upper, rise) : 1 - riseShare(FULLNESS.lower, rise)
    return { point: onSection(middle, end, level), level }
  }
  const flank = (x: number): number => 1 + (x - flankFromMm) / (flankToMm - flankFromMm)
  const searched = (where: (t: number) => number, value: number, end: 'nose' | 'tail'): number =>
    end === 'nose' ? solved(where, value, 0, 1) : solved(where, value, 2, 3)
  const curves = { foot, fullest, crest }
  const placeOnEnd = (end: 'nose' | 'tail', y: number, z: number): readonly [number, number] => {
    const t = searched((round) => atHeight(round, z).point[1], y, end)
    return [t, atHeight(t, z).level]
  }
  return {
    noseMm,
    tailMm,
    flankFromMm,
    flankToMm,
    halfWidthMm,
    crestHalfMm,
    lidHalfMm: Math.min(plan.lid, (1 - plan.crestInset) * 0.93 - 0.03, plan.rearLamp - 0.1) * halfWidthMm,
    foot,
    fullest,
    crest,
    at,
    onSide: (x, z) => {
      if (x >= flankFromMm && x <= flankToMm) return atHeight(flank(x), z).point
      const t = searched((round) => atHeight(round, z).point[0], x, x < flankFromMm ? 'nose' : 'tail')
      return atHeight(t, z).point
    },
    onEnd: (end, y, z) => atHeight(placeOnEnd(end, y, z)[0], z).point,
    placeOnEnd,
    roundAt: (name, x) => {
      if (x >= flankFromMm && x <= flankToMm) return flank(x)
      return searched((t) => curves[name](t)[0], x, x < flankFromMm ? 'nose' : 'tail')
    },
    roundAcross: (name, end, y) => searched((t) => curves[name](t)[1], y, end),
  }
}

/** Point of a section at a level between the fullest line and its end, crest or foot. */
function onSection(middle: Point3, end: Point3, level: number): Point3 {
  const fullness = level > 1 ? FULLNESS.upper : FULLNESS.lower
  const lean = level > 1 ? LEAN : 0
  const handle: Point3 = [
    mixed(middle[0], end[0], lean),
    mixed(middle[1], end[1], lean),
    mixed(middle[2], end[2], fullness),
  ]
  const s = Math.abs(level - 1)
  return toward(toward(middle, handle, s), toward(handle, end, s), s)
}

/** Where a quadratic from 0 to 1 with its handle at `fullness` has risen to a share: the root of its equation. */
function riseShare(fullness: number, share: number): number {
  const risen = Math.max(0, Math.min(1, share))
  const square = 1 - 2 * fullness
  if (Math.abs(square) < 1e-9) return risen
  return (-fullness + Math.sqrt(fullness ** 2 + square * risen)) / square
}

/** Share of an overhang that the bumper takes: the body begins behind it. */
const BUMPER_SHARE = 0.085

/** Quarter of a superellipse by its angle: 1 ahead and 0 across at the centre line, 0 ahead and 1 across at the flank. */
function quarter(t: number, square: number): readonly [ahead: number, across: number] {
  const angle = (t * Math.PI) / 2
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)]
  const radius = (Math.abs(cosine) ** square + Math.abs(sine) ** square) ** (-1 / square)
  return [Math.max(0, radius * cosine), radius * sine]
}

/** Height of the fullest line: it has to run into the wheel arches, below their tops. */
export const fullestHeight = (share: number, d: BodyDimensions): number =>
  Math.min(d.beltHeightMm * share, d.tyreRadiusMm + d.archRadiusMm * 0.86)

function heightsOf({ heights }: BodyDescription, d: BodyDimensions, noseMm: number, tailMm: number) {
  const belt = d.beltHeightMm
  const frontAxle = d.frontOverhangMm
  const rearAxle = frontAxle + d.wheelbaseMm
  const crest = fairCurve(
    [
      [noseMm, belt * heights.noseCrest],
      [mixed(noseMm, frontAxle, 0.5), belt * mixed(heights.noseCrest, 1, 0.55)],
      [frontAxle, belt * mixed(heights.noseCrest, 1, 0.85)],
      [frontAxle + d.wheelbaseMm * 0.2, belt],
      [rearAxle, belt],
      [mixed(rearAxle, tailMm, 0.55), belt * mixed(heights.tailCrest, 1, 0.6)],
      [tailMm, belt * heights.tailCrest],
    ],
    { first: (belt * (1 - heights.noseCrest)) / (frontAxle - noseMm) },
  )
  const foot = fairCurve([
    [noseMm, belt * heights.noseFoot],
    [frontAxle - d.archRadiusMm, mixed(d.sillHeightMm, belt * heights.noseFoot, 0.5)],
    [frontAxle + d.archRadiusMm, d.sillHeightMm],
    [rearAxle - d.archRadiusMm, d.sillHeightMm],
    [rearAxle + d.archRadiusMm, mixed(d.sillHeightMm, belt * heights.tailFoot, 0.6)],
    [tailMm, belt * heights.tailFoot],
  ])
  return { crest, foot, fullest: () => fullestHeight(heights.fullest, d) }
}
