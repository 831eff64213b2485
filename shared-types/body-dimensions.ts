import { z } from 'zod'
import type { BodyStyle } from './words.ts'

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

/** One dimension of a body style: what is drawn when nobody measured it, and what is accepted. mm or degrees. */
export interface DimensionChoice {
  readonly name: BodyDimensionName
  readonly quantity: 'length' | 'angle'
  readonly us: string
  readonly uk: string
  /** How it is taken on the car: common practice, no source. */
  readonly howUs: string
  readonly howUk: string
  readonly usual: number
  readonly least: number
  readonly greatest: number
}

/** Every dimension a body style is drawn from, in the order they are asked for. */
export interface DimensionList {
  readonly body: BodyStyle
  readonly dimensions: readonly DimensionChoice[]
}

/** What one car is known to measure; a dimension left out is drawn as the body is usually drawn. */
export const ownDimensions = bodyDimensions.partial()
export type OwnDimensions = z.infer<typeof ownDimensions>
