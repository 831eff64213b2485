import type { BodyFrame } from '../body-shape/body-frame.ts'
import type { Point } from '../cubic-path.ts'
import { held } from './measures.ts'

/** Where the engine bay stands: stations hold between radiator frame and bulkhead. */
export interface BayPlaces {
  readonly radiatorMm: number
  readonly bulkheadMm: number
  readonly frontAxleMm: number
  /** Half width of the opening at the radiator and at the bulkhead. */
  readonly frontHalfMm: number
  readonly rearHalfMm: number
  /** Half width of the inner wings laid flat. */
  readonly wingHalfMm: number
  readonly radiatorTopMm: number
  readonly bulkheadTopMm: number
}

export function bayPlaces(frame: BodyFrame): BayPlaces {
  const { noseMm, frontAxleMm, halfWidthMm, bulkheadMm } = frame
  const radiatorMm = noseMm + held((frontAxleMm - noseMm) * 0.42, 180, 420)
  const rearMm = Math.max(bulkheadMm, frontAxleMm + 330, radiatorMm + 760)
  const rearHalfMm = held(halfWidthMm * 0.485, 320, 460)
  return {
    radiatorMm,
    bulkheadMm: rearMm,
    frontAxleMm: held(frontAxleMm, radiatorMm + 230, rearMm - 290),
    frontHalfMm: rearHalfMm + 26,
    rearHalfMm,
    wingHalfMm: Math.max(halfWidthMm + 116, rearHalfMm + 530),
    radiatorTopMm: radiatorMm - 270,
    bulkheadTopMm: rearMm + 470,
  }
}

/** Middle and radius of a suspension turret. */
export const towerPlace = (at: BayPlaces): readonly [Point, number] => [
  [at.frontAxleMm, (at.rearHalfMm + at.wingHalfMm) / 2 - 14],
  176,
]
