import { z } from 'zod'

const lengthMm = z.number().min(50).max(9000)
const angleDegrees = z.number().min(0).max(89)

/**
 * The named dimensions a body is drawn from. Lengths in millimetres on level ground; angles in degrees from the
 * upright. `frontOverhangMm`: front of the bumper to the front axle. `beltHeightMm`: ground to the crest of the door.
 * `sillHeightMm`: ground to the lower edge of the sill. `archRadiusMm`: axle to the lip of the wheel arch.
 * `tumblehomeDegrees`: lean of the side windows; `screenRakeDegrees` and `rearScreenRakeDegrees`: lean of the
 * windscreen and of the rear screen, tail door or back of the cab.
 */
export const bodyDimensions = z.strictObject({
  lengthMm,
  wheelbaseMm: lengthMm,
  widthMm: lengthMm,
  heightMm: lengthMm,
  frontOverhangMm: lengthMm,
  beltHeightMm: lengthMm,
  sillHeightMm: lengthMm,
  tyreRadiusMm: lengthMm,
  archRadiusMm: lengthMm,
  tumblehomeDegrees: angleDegrees,
  screenRakeDegrees: angleDegrees,
  rearScreenRakeDegrees: angleDegrees,
})
export type BodyDimensions = z.infer<typeof bodyDimensions>
export type BodyDimensionName = keyof BodyDimensions

/** What one car is known to measure; a dimension left out is drawn as the body is usually drawn. */
export const ownDimensions = bodyDimensions.partial()
export type OwnDimensions = z.infer<typeof ownDimensions>
