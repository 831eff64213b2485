import type { BodyStyle } from '../../../shared-types/words.ts'
import type { BodyFrame } from '../body-shape/body-frame.ts'
import { type Cubic, flattened, type Point } from '../cubic-path.ts'
import { reachAt } from './inset.ts'
import { held, measuresOf } from './measures.ts'

/** Where the members of the underside stand, mm: stations, and distances from the centre line on the left. */
export interface UnderPlaces {
  readonly noseMm: number
  readonly tailMm: number
  readonly frontAxleMm: number
  readonly rearAxleMm: number
  readonly archRadiusMm: number
  /** Front legs: ends, and their middle in the bay and at the rear end. */
  readonly frontRailMm: readonly [number, number]
  readonly frontRailAtMm: number
  readonly frontRailEndAtMm: number
  readonly rearRailMm: readonly [number, number]
  readonly rearRailAtMm: number
  /** Middle of a separate frame's side members between front and rear. */
  readonly frameAtMm: number
  readonly railHalfMm: number
  readonly outriggerMm: readonly [number, number]
  readonly gearboxCrossMm: readonly [number, number]
  readonly floorCrossMm: readonly [number, number]
  readonly springMountMm: readonly [number, number]
  readonly rearLiftMm: readonly [number, number]
  readonly tankMm: readonly [number, number]
  readonly rearCrossMm: readonly [number, number]
  readonly bearerMm: readonly [number, number]
  /** Where a frame's side members end: at the rear legs, or at the first bearer of a bed. */
  readonly frameEndMm: number
  readonly sillInnerMm: number
  readonly sillOuterMm: number
  readonly archOuterMm: number
  readonly tyreMm: readonly [number, number]
  readonly separateFrame: boolean
}

/** Room kept between side members and sill for outriggers and body mountings. */
const OUTRIGGER_MM = 128

export function underPlaces(frame: BodyFrame, roofEdge: readonly Cubic[], separateFrame: boolean): UnderPlaces {
  const m = measuresOf(frame)
  const outline = flattened(roofEdge, 12)
  const { rearAxleMm: rear, trackHalfMm, tyreWidthMm, body } = frame
  const front = frame.frontAxleMm
  const arch = frame.dimensions.archRadiusMm
  const railHalfMm = 58
  const frontRailAtMm = held(frame.halfWidthMm * 0.37, 262, 330)
  const noseMm = Math.max(...[0, 180, frontRailAtMm + 60].map((v) => alongAt(outline, v)[0]))
  const tailMm = Math.min(...[0, 280, frame.halfWidthMm * 0.62].map((v) => alongAt(outline, v)[1]))
  const legEnd = Math.max(m.floorFrontMm + 40, front + arch + 400)
  const frontRail: [number, number] = [noseMm + 118, separateFrame ? front + arch + 70 : legEnd]
  const springRear = Math.min(rear - arch - 34, rear - 300)
  const springFront = springRear - 150
  const bearer: [number, number] = [springFront - 106, springFront - 12]
  const rearStart = rearRailStart(body, legEnd, springFront, rear, arch + (separateFrame ? 170 : 320))
  const rearCross: [number, number] = [tailMm - 128, tailMm - 58]
  const gearbox = legEnd + 150
  const behind = body === 'pickup' ? bearer[0] : rearStart
  const floorCross = held((gearbox + 120 + behind) / 2 - 42, gearbox + 150, behind - 110)
  const [sideFrom, sideTo] = [front + arch + 20, rear + arch + 10]
  const sides = Array.from({ length: 13 }, (_, index) =>
    acrossAt(outline, sideFrom + ((sideTo - sideFrom) * index) / 12),
  )
  const sillOuterMm = Math.min(...sides) - 14
  const sillInnerMm = Math.min(m.floorHalfMm, sillOuterMm - 100)
  const rearRailAtMm = Math.min(m.archInnerHalfMm - 20, sillInnerMm - 24) - railHalfMm
  const liftEnd = Math.min(springRear - 190, body === 'pickup' ? frame.cabinRearMm - 50 : rear)
  return {
    noseMm,
    tailMm,
    frontAxleMm: front,
    rearAxleMm: rear,
    archRadiusMm: arch,
    frontRailMm: frontRail,
    frontRailAtMm,
    frontRailEndAtMm: Math.min(frontRailAtMm + (separateFrame ? 26 : 92), sillInnerMm - railHalfMm - OUTRIGGER_MM),
    frameAtMm: Math.min(rearRailAtMm, sillInnerMm - railHalfMm - OUTRIGGER_MM),
    rearRailMm: [rearStart, rearCross[0] - 24],
    rearRailAtMm,
    railHalfMm,
    outriggerMm: [legEnd - 206, legEnd - 12],
    gearboxCrossMm: [gearbox, gearbox + 118],
    floorCrossMm: [floorCross, floorCross + 84],
    springMountMm: [springFront, springRear],
    rearLiftMm: [liftEnd - 92, liftEnd],
    tankMm: [Math.max(rear + 176, rearCross[0] - 520), rearCross[0] - 34],
    rearCrossMm: rearCross,
    bearerMm: bearer,
    frameEndMm: behind,
    sillInnerMm,
    sillOuterMm,
    archOuterMm: sillOuterMm,
    tyreMm: [trackHalfMm - tyreWidthMm / 2, trackHalfMm + tyreWidthMm / 2],
    separateFrame,
  }
}

/** Where the rear legs begin; a pickup's just behind the first bearer of its bed. */
function rearRailStart(body: BodyStyle, legEnd: number, springFront: number, rear: number, before: number): number {
  if (body === 'pickup') return springFront - 2
  return held(rear - before, legEnd + 480, Math.max(legEnd + 480, rear - 130))
}

/** First and last station of an outline at a distance from the centre line. */
const alongAt = (outline: readonly Point[], v: number): readonly [number, number] => reachOf(outline, 1, v)

/** Half width of an outline at a station. */
const acrossAt = (outline: readonly Point[], u: number): number => reachOf(outline, 0, u)[1]

function reachOf(outline: readonly Point[], axis: 0 | 1, value: number): readonly [number, number] {
  const reach = reachAt(outline, axis, value)
  if (reach === null) throw new Error(`The silhouette of the roof view does not reach ${value} mm.`)
  return reach
}
