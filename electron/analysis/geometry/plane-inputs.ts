import type { PicturePlane, PicturePoint } from '../../../shared-types/measuring.ts'

/** Numbers a measurement starts from, and the standard uncertainty of each, in the order the plane reads them. */
export interface Inputs {
  readonly estimates: readonly number[]
  readonly standard: readonly number[]
}

const picked = (points: readonly PicturePoint[], pickPx: number): Inputs => {
  const estimates = points.flatMap(({ x, y }) => [x, y])
  return { estimates, standard: estimates.map(() => pickPx) }
}

const joined = (...some: readonly Inputs[]): Inputs => ({
  estimates: some.flatMap(({ estimates }) => estimates),
  standard: some.flatMap(({ standard }) => standard),
})

/** Picked points first, then what is known of them on the plane. */
export function planeInputs(plane: PicturePlane, pickPx: number): Inputs {
  if (plane.kind === 'known points') {
    const places = plane.points.flatMap(({ plane: { xMm, yMm } }) => [xMm, yMm])
    return joined(
      picked(
        plane.points.map(({ picture }) => picture),
        pickPx,
      ),
      { estimates: places, standard: places.map(() => plane.uMm) },
    )
  }
  const known = plane.kind === 'scale bar' ? plane.bar : plane.known
  return joined(
    picked(plane.kind === 'scale bar' ? [] : plane.corners, pickPx),
    picked([known.from, known.to], pickPx),
    { estimates: [known.lengthMm], standard: [known.uMm] },
  )
}

/** Inputs of the plane followed by the points measured. */
export function allInputs(plane: PicturePlane, measured: readonly PicturePoint[], pickPx: number): Inputs {
  return joined(planeInputs(plane, pickPx), picked(measured, pickPx))
}

/** For each input in that order, whether it was picked in the picture; else it is known of the plane. */
export function pickedInputs(plane: PicturePlane, measured: number): readonly boolean[] {
  const ofPlane = plane.kind === 'known points' ? plane.points.length : plane.kind === 'scale bar' ? 2 : 6
  const known = plane.kind === 'known points' ? 2 * plane.points.length : 1
  const run = (count: number, picked: boolean) => Array.from({ length: count }, () => picked)
  return [...run(2 * ofPlane, true), ...run(known, false), ...run(2 * measured, true)]
}
