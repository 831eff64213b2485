import fc from 'fast-check'
import type { BodyFrame } from '../../../electron/figures/body-shape/body-frame.ts'
import { dimensionList } from '../../../electron/sheets/dimension-list.ts'
import { relations } from '../../../electron/sheets/dimension-relations.ts'
import type { BodyDimensionName, BodyDimensions } from '../../../shared-types/body-dimensions.ts'
import type { BodyStyle } from '../../../shared-types/words.ts'

export const bodies: readonly BodyStyle[] = ['saloon2', 'saloon4', 'coupe', 'convertible', 'estate', 'pickup', 'van']

/** Any dimensions a record may give a body: within its ranges and going with each other. */
export const anyDimensions = (body: BodyStyle): fc.Arbitrary<BodyDimensions> =>
  fc
    .record(
      Object.fromEntries(
        dimensionList(body).dimensions.map(({ name, least, greatest }) => [
          name,
          fc.integer({ min: Math.ceil(least), max: Math.floor(greatest) }),
        ]),
      ) as Record<BodyDimensionName, fc.Arbitrary<number>>,
    )
    .filter((dimensions) => relations.every(({ holds }) => holds(dimensions)))

/** Stations of the cabin as shares of the wheelbase behind the front axle. */
const stations: Readonly<Record<BodyStyle, readonly [number, number, number | null, number, number]>> = {
  saloon2: [0.3, 0.72, null, 0.79, 1.0],
  saloon4: [0.29, 0.66, 0.98, 0.8, 1.02],
  coupe: [0.32, 0.68, null, 0.776, 0.99],
  convertible: [0.32, 0.7, null, 0.776, 0.99],
  estate: [0.29, 0.66, 0.98, 0.8, 1.02],
  pickup: [0.24, 0.58, null, 0.6, 0.66],
  van: [0.24, 0.6, null, 0.58, 0.64],
}

/** A plausible frame for dimensions, made for these tests. */
export function frameOf(body: BodyStyle, d: BodyDimensions): BodyFrame {
  const [doorFront, doorRear, rearDoor, heel, cabinRear] = stations[body]
  const along = (share: number) => d.frontOverhangMm + share * d.wheelbaseMm
  const half = d.widthMm / 2
  return {
    body,
    dimensions: d,
    noseMm: 96,
    frontAxleMm: d.frontOverhangMm,
    bulkheadMm: along(doorFront - 0.124),
    cowlMm: along(doorFront - 0.05),
    doorFrontMm: along(doorFront),
    doorRearMm: along(doorRear),
    rearDoorRearMm: rearDoor === null ? null : along(rearDoor),
    heelBoardMm: along(heel),
    cabinRearMm: along(cabinRear),
    rearAxleMm: d.frontOverhangMm + d.wheelbaseMm,
    tailMm: d.lengthMm - 84,
    halfWidthMm: half,
    sillHalfWidthMm: half - 18,
    trackHalfMm: half - 168,
    tyreWidthMm: 148,
    bonnetFrontHalfMm: half * 0.7,
    bonnetRearHalfMm: half * 0.86,
    lidHalfMm: half * 0.78,
    floorHeightMm: d.sillHeightMm + 40,
    beltHeightMm: d.beltHeightMm,
    roofHeightMm: d.heightMm,
  }
}
