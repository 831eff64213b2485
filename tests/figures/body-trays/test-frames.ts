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

/** Stations of the cabin as shares of the wheelbase behind the front axle: bulkhead, doors, heel board, rear wall. */
const stations: Readonly<Record<BodyStyle, readonly [number, number, number, number | null, number, number]>> = {
  saloon2: [0.2, 0.3, 0.72, null, 0.79, 1],
  saloon4: [0.19, 0.29, 0.66, 0.98, 0.8, 1.02],
  coupe: [0.2, 0.32, 0.68, null, 0.776, 0.99],
  convertible: [0.2, 0.32, 0.7, null, 0.776, 0.99],
  estate: [0.19, 0.29, 0.66, 0.98, 0.8, 1.02],
  pickup: [0.14, 0.24, 0.58, null, 0.6, 0.66],
  van: [0.14, 0.24, 0.6, null, 0.58, 0.64],
}

const share = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true })

/** Frames of a body of any accepted dimensions, its stations and widths strewn round plausible places. */
export function anyFrame(body: BodyStyle): fc.Arbitrary<BodyFrame> {
  const [bulkhead, doorFront, doorRear, rearDoor, heel, cabinRear] = stations[body]
  return fc
    .record({
      d: anyDimensions(body),
      front: share(-0.03, 0.14),
      middle: share(-0.03, 0.03),
      rear: share(-0.04, 0.05),
      nose: share(50, 130),
      inset: share(0.01, 0.07),
      track: share(0.86, 0.9),
      bonnet: share(0.5, 0.75),
    })
    .map(({ d, front, middle, rear, nose, inset, track, bonnet }) => {
      const along = (at: number) => d.frontOverhangMm + at * d.wheelbaseMm
      const half = d.widthMm / 2
      const tyreWidthMm = d.tyreRadiusMm * 0.48
      return {
        body,
        dimensions: d,
        noseMm: nose,
        frontAxleMm: d.frontOverhangMm,
        bulkheadMm: along(bulkhead + front),
        cowlMm: along(bulkhead + front + 0.02),
        doorFrontMm: along(doorFront + front / 2),
        doorRearMm: along(doorRear + middle),
        rearDoorRearMm: rearDoor === null ? null : along(rearDoor + middle),
        heelBoardMm: along(heel + middle),
        cabinRearMm: along(cabinRear + rear),
        rearAxleMm: d.frontOverhangMm + d.wheelbaseMm,
        tailMm: d.lengthMm - nose,
        halfWidthMm: half,
        sillHalfWidthMm: half * (1 - inset),
        trackHalfMm: half * track - tyreWidthMm / 2,
        tyreWidthMm,
        bonnetFrontHalfMm: half * bonnet,
        bonnetRearHalfMm: half * 0.86,
        lidHalfMm: half * 0.78,
        floorHeightMm: d.sillHeightMm + 40,
        beltHeightMm: d.beltHeightMm,
        roofHeightMm: d.heightMm,
      }
    })
}
