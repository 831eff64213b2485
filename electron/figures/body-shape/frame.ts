import type { BodyFrame } from './body-frame.ts'
import type { OutsideWork } from './outside-work.ts'

/** Stations, widths and heights of a body for the sheets laid out from them. */
export function frameOf({ form, net }: OutsideWork): BodyFrame {
  const { description, dimensions, lower, station } = form
  const half = lower.halfWidthMm
  const tyreWidthMm = dimensions.tyreRadiusMm * 0.5
  const rearDoor = description.stations.rearDoorFrameRear === null ? null : net.node('rear door rear top')[0]
  return {
    body: form.body,
    dimensions,
    noseMm: lower.noseMm,
    frontAxleMm: form.frontAxleMm,
    bulkheadMm: net.node('bonnet rear centre')[0] - dimensions.wheelbaseMm * 0.012,
    cowlMm: net.node('bonnet rear centre')[0],
    doorFrontMm: net.node('door front sill')[0],
    doorRearMm: net.node('door rear sill')[0],
    rearDoorRearMm: rearDoor,
    heelBoardMm: station(description.stations.heelBoard),
    cabinRearMm: station(description.stations.cabinRear),
    rearAxleMm: form.rearAxleMm,
    tailMm: lower.tailMm,
    halfWidthMm: half,
    sillHalfWidthMm: half * (1 - description.plan.footInset * 0.4),
    trackHalfMm: half * 0.885 - tyreWidthMm / 2,
    tyreWidthMm,
    bonnetFrontHalfMm: net.node('bonnet front corner')[1],
    bonnetRearHalfMm: net.node('bonnet rear corner')[1],
    lidHalfMm: lower.lidHalfMm,
    floorHeightMm: dimensions.sillHeightMm + 40,
    beltHeightMm: dimensions.beltHeightMm,
    roofHeightMm: dimensions.heightMm,
  }
}
