import type { BodyFrame } from '../body-shape/body-frame.ts'

/** Lengths of the inner sheets that follow from the frame, mm; held apart so that no panel can vanish. */
export interface Measures {
  /** Half width of the cabin floor between the sills, and of the floor between the rear wheel arches. */
  readonly floorHalfMm: number
  readonly archInnerHalfMm: number
  /** Inside of the body at the flank. */
  readonly bodyInnerHalfMm: number
  /** Stations of the toe board, of the floor behind it, of the joint of front and rear floor, and of its end. */
  readonly toeMm: number
  readonly floorFrontMm: number
  readonly floorMiddleMm: number
  readonly floorRearMm: number
  readonly sillDeepMm: number
  /** Half widths of the tunnel behind the gearbox and at its end. */
  readonly bellHalfMm: number
  readonly tunnelHalfMm: number
}

/** A value kept between two limits. */
export const held = (value: number, least: number, most: number): number => Math.min(Math.max(value, least), most)

/** Bodies whose cabin has a rear footwell floor and a heel board. */
export const hasRearSeat = ({ body }: BodyFrame): boolean => body !== 'pickup' && body !== 'van'

export function measuresOf(frame: BodyFrame): Measures {
  const { halfWidthMm, sillHalfWidthMm, trackHalfMm, tyreWidthMm, bulkheadMm } = frame
  const floorHalfMm = held(sillHalfWidthMm - 118, halfWidthMm * 0.62, halfWidthMm - 90)
  const tunnelHalfMm = held(halfWidthMm * 0.152, 90, 150)
  const floorRearMm = Math.max(hasRearSeat(frame) ? frame.heelBoardMm : cabEnd(frame), bulkheadMm + 800)
  const toeMm = bulkheadMm - 6
  const floorFrontMm = toeMm + 214
  return {
    floorHalfMm,
    archInnerHalfMm: held(trackHalfMm - tyreWidthMm / 2 - 50, floorHalfMm * 0.62, floorHalfMm - 70),
    bodyInnerHalfMm: halfWidthMm - 62,
    toeMm,
    floorFrontMm,
    floorMiddleMm: floorFrontMm + 0.6 * (floorRearMm - floorFrontMm),
    floorRearMm,
    sillDeepMm: 142,
    bellHalfMm: tunnelHalfMm * 1.62,
    tunnelHalfMm,
  }
}

/** End of the cab floor where there is no rear seat: at the back of the cab, or where the load floor begins. */
const cabEnd = ({ body, cabinRearMm, heelBoardMm }: BodyFrame): number =>
  body === 'pickup'
    ? Math.max(cabinRearMm, heelBoardMm)
    : Math.min(cabinRearMm, Math.max(heelBoardMm, cabinRearMm - 60))
