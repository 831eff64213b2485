import type { BodyDimensions } from '../../../shared-types/body-dimensions.ts'
import type { BodyStyle } from '../../../shared-types/words.ts'
import type { BodyDescription } from './body-description.ts'
import { fullestHeight, type LowerBody, lowerBody } from './lower-body.ts'
import { type UpperBody, upperBody } from './upper-body.ts'

/** One body of given dimensions: its surfaces, and the stations its lines are drawn from. */
export interface BodyForm {
  readonly body: BodyStyle
  readonly description: BodyDescription
  readonly dimensions: BodyDimensions
  readonly lower: LowerBody
  readonly upper: UpperBody
  readonly frontAxleMm: number
  readonly rearAxleMm: number
  /** Height of the fullest line and of the upper edge of the sill. */
  readonly fullestMm: number
  readonly sillTopMm: number
  /** Station of a share of the wheelbase behind the front axle. */
  readonly station: (share: number) => number
}

export function bodyForm(description: BodyDescription, dimensions: BodyDimensions): BodyForm {
  const lower = lowerBody(description, dimensions)
  const { frontOverhangMm, wheelbaseMm, beltHeightMm, sillHeightMm } = dimensions
  return {
    body: description.body,
    description,
    dimensions,
    lower,
    upper: upperBody(description, dimensions, lower),
    frontAxleMm: frontOverhangMm,
    rearAxleMm: frontOverhangMm + wheelbaseMm,
    fullestMm: fullestHeight(description.heights.fullest, dimensions),
    sillTopMm: sillHeightMm + beltHeightMm * 0.089,
    station: (share) => frontOverhangMm + share * wheelbaseMm,
  }
}
