/**
 * A value and its uncertainty as they are kept: the uncertainty to two significant digits, the value to the same place
 * (JCGM 100:2008, 7.2.6). Both in one unit; an uncertainty of 0 leaves the value as it is.
 */
export function roundedResult(value: number, uncertainty: number): { value: number; uncertainty: number } {
  if (!(uncertainty > 0)) return { value, uncertainty }
  const kept = Number(uncertainty.toPrecision(2))
  const decimals = 1 - Math.floor(Math.log10(kept))
  const step = 10 ** -decimals
  // Down to whole numbers the decimal text is exact; above, the place is a ten or more.
  const placed = decimals > 0 ? Number(value.toFixed(Math.min(decimals, 20))) : Math.round(value / step) * step
  return { value: placed, uncertainty: kept }
}
