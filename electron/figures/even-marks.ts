import type { AxisMark } from '../../shared-types/coating-cut.ts'

/** Steps of an axis are these times a power of ten. */
const STEPS = [1, 2, 5, 10]

/**
 * Round marks of an axis that begins at nought, at most so many beside it, in the unit shown.
 * @param reach end of the axis in that unit; a mark beyond it is left out
 */
export function evenMarks(reach: number, atMost: number): readonly AxisMark[] {
  const rough = reach / atMost
  const power = Math.floor(Math.log10(rough))
  const step = (STEPS.find((own) => own * 10 ** power >= rough * (1 - 1e-9)) ?? 10) * 10 ** power
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9))
  const count = Math.floor(reach / step + 1e-9)
  return Array.from({ length: count + 1 }, (_, at) => ({ at: (at * step) / reach, value: at * step, decimals }))
}
