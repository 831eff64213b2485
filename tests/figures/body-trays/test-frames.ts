import type { BodyFrame } from '../../../electron/figures/body-shape/body-frame.ts'
import type { BodyDimensions } from '../../../shared-types/body-dimensions.ts'
import type { BodyStyle } from '../../../shared-types/words.ts'

export const bodies: readonly BodyStyle[] = ['saloon2', 'saloon4', 'coupe', 'convertible', 'estate', 'pickup', 'van']

/** Dimensions a body of the fifties or sixties could have; invented. */
const usual: Readonly<Record<BodyStyle, readonly number[]>> = {
  saloon2: [4120, 2440, 1590, 1470, 720, 900, 215, 312, 355, 14, 48, 46],
  saloon4: [4420, 2600, 1680, 1490, 760, 910, 220, 322, 366, 13, 50, 48],
  coupe: [4250, 2500, 1616, 1350, 760, 852, 210, 316, 360, 20, 55, 60],
  convertible: [4250, 2500, 1616, 1330, 760, 852, 210, 316, 360, 20, 55, 60],
  estate: [4450, 2600, 1680, 1510, 760, 910, 220, 322, 366, 12, 50, 24],
  pickup: [4720, 2780, 1740, 1690, 800, 1050, 330, 350, 410, 12, 38, 8],
  van: [4360, 2500, 1740, 1920, 780, 1020, 300, 336, 384, 8, 40, 4],
}

export function dimensionsOf(body: BodyStyle): BodyDimensions {
  const [
    lengthMm = 0,
    wheelbaseMm = 0,
    widthMm = 0,
    heightMm = 0,
    frontOverhangMm = 0,
    beltHeightMm = 0,
    sillHeightMm = 0,
    tyreRadiusMm = 0,
    archRadiusMm = 0,
    tumblehomeDegrees = 0,
    screenRakeDegrees = 0,
    rearScreenRakeDegrees = 0,
  ] = usual[body]
  return {
    lengthMm,
    wheelbaseMm,
    widthMm,
    heightMm,
    frontOverhangMm,
    beltHeightMm,
    sillHeightMm,
    tyreRadiusMm,
    archRadiusMm,
    tumblehomeDegrees,
    screenRakeDegrees,
    rearScreenRakeDegrees,
  }
}

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
