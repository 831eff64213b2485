import type { BodyDimensions } from '../../../shared-types/body-dimensions.ts'
import type { BodyStyle } from '../../../shared-types/words.ts'

/**
 * Where things stand along, across and above the ground in one body of given dimensions, mm. Stations are measured
 * backwards from the front of the bumper, widths from the centre line, heights from the ground. Every sheet of the
 * plan is laid out from these, so that the same thing stands at the same place on each.
 */
export interface BodyFrame {
  readonly body: BodyStyle
  readonly dimensions: BodyDimensions
  /** Stations, front to back. */
  readonly noseMm: number
  readonly frontAxleMm: number
  /** Bulkhead between engine bay and cabin. */
  readonly bulkheadMm: number
  /** Rear edge of the bonnet at the centre line. */
  readonly cowlMm: number
  /** Front and rear shut line of the front door at the sill. */
  readonly doorFrontMm: number
  readonly doorRearMm: number
  /** Rear shut line of the rear door at its lowest, null where there is none. */
  readonly rearDoorRearMm: number | null
  /** Upright board under the front edge of the rear seat, or the end of the front floor. */
  readonly heelBoardMm: number
  /** Rear wall of the cabin: behind the rear seat, the back of the cab, or the start of the load space. */
  readonly cabinRearMm: number
  readonly rearAxleMm: number
  /** Rear face of the body, and of the bumper. */
  readonly tailMm: number
  /** Half widths. */
  readonly halfWidthMm: number
  readonly sillHalfWidthMm: number
  readonly trackHalfMm: number
  readonly tyreWidthMm: number
  /** Half width of the bonnet at its front corner and its rear corner. */
  readonly bonnetFrontHalfMm: number
  readonly bonnetRearHalfMm: number
  /** Half width of the boot lid, tail door or load opening. */
  readonly lidHalfMm: number
  /** Heights. */
  readonly floorHeightMm: number
  readonly beltHeightMm: number
  readonly roofHeightMm: number
}
