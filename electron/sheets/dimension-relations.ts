import type { BodyDimensionName, BodyDimensions } from '../../shared-types/body-dimensions.ts'

/** Something that must hold between the dimensions of a car that can be drawn. */
export interface DimensionRelation {
  /** Dimensions it speaks of; the first one given by the record is the one to correct. */
  readonly about: readonly [BodyDimensionName, ...BodyDimensionName[]]
  readonly holds: (of: BodyDimensions) => boolean
  /** What is wrong when it does not hold; lengths are told as `length` does. */
  readonly says: (length: (mm: number) => string) => string
}

const tangent = (degrees: number): number => Math.tan((degrees * Math.PI) / 180)
const rearOverhangMm = (of: BodyDimensions): number => of.lengthMm - of.frontOverhangMm - of.wheelbaseMm
const glassHeightMm = (of: BodyDimensions): number => of.heightMm - of.beltHeightMm

/**
 * Relations between named dimensions, each against a bound that leaves room for the panels between: estimates for cars
 * of 1950s and 1960s proportions, no source.
 */
export const relations: readonly DimensionRelation[] = [
  {
    about: ['wheelbaseMm', 'frontOverhangMm', 'lengthMm'],
    holds: (of) => rearOverhangMm(of) >= of.archRadiusMm + 150,
    says: () => 'front overhang and wheelbase leave no room behind the rear axle for the wheel arch and the tail.',
  },
  {
    about: ['wheelbaseMm', 'frontOverhangMm', 'lengthMm'],
    holds: (of) => rearOverhangMm(of) <= of.wheelbaseMm * 0.62,
    says: () => 'the tail behind the rear axle would be longer than six tenths of the wheelbase.',
  },
  {
    about: ['archRadiusMm', 'tyreRadiusMm'],
    holds: (of) => of.archRadiusMm >= of.tyreRadiusMm + 20,
    says: (length) => `the lip of the arch must clear the wheel by ${length(20)} at least.`,
  },
  {
    about: ['beltHeightMm', 'archRadiusMm', 'tyreRadiusMm'],
    holds: (of) => of.beltHeightMm >= of.tyreRadiusMm + of.archRadiusMm + 60,
    says: () => 'the wheel arch would reach into the line under the side windows.',
  },
  {
    about: ['beltHeightMm', 'heightMm'],
    holds: (of) => glassHeightMm(of) >= 330,
    says: (length) => `less than ${length(330)} would be left for side windows and roof.`,
  },
  {
    about: ['tumblehomeDegrees', 'widthMm', 'heightMm', 'beltHeightMm'],
    holds: (of) => of.widthMm / 2 - glassHeightMm(of) * tangent(of.tumblehomeDegrees) >= of.widthMm * 0.3,
    says: () => 'the side windows would lean in so far that the roof is narrower than six tenths of the car.',
  },
  {
    about: ['screenRakeDegrees', 'rearScreenRakeDegrees', 'wheelbaseMm', 'heightMm', 'beltHeightMm'],
    holds: (of) =>
      glassHeightMm(of) * (tangent(of.screenRakeDegrees) + tangent(of.rearScreenRakeDegrees)) <= of.wheelbaseMm * 0.75,
    says: () => 'the front and the rear glass would lean over more than three quarters of the wheelbase between them.',
  },
]
