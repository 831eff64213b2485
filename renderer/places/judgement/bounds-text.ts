import { boundsForm } from '../../parts-of-page/number-forms.ts'

/**
 * Least and most possible as printed, "58 – 71 %". The low end is rounded down and the high end up, so that the
 * printed bounds always hold the computed ones. Equal ends are printed once.
 */
export function boundsText(range: { readonly lowPercent: number; readonly highPercent: number }): string {
  // A share that is whole but for the last bit of a sum must not be pushed a full per cent further out.
  const low = Math.floor(range.lowPercent + 1e-9)
  const high = Math.ceil(range.highPercent - 1e-9)
  return boundsForm(low, high, '%')
}
