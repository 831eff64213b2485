import { backwards, type Curve, joined, mirrored, mirroredDown } from './curve.ts'

/** Curves with their mirror images about the middle of an end view. */
export const bothAcross = (...curves: Curve[]): Curve[] => curves.flatMap((curve) => [curve, mirrored(curve)])
/** Curves with their mirror images about the centre line of a plan. */
export const bothDown = (...curves: Curve[]): Curve[] => curves.flatMap((curve) => [curve, mirroredDown(curve)])
/** A half from the middle back to the middle, closed by its mirror image. */
export const wholeAcross = (half: Curve): Curve => joined(half, backwards(mirrored(half)))
export const wholeDown = (half: Curve): Curve => joined(half, backwards(mirroredDown(half)))
