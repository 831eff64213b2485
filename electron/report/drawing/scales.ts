/** Round scales of figures, 1 : n. */
const SCALES = [10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 150, 200] as const

/** The largest round scale, 1 : n, at which something of this size in mm fits a field in mm. */
export function sheetScaleFor(widthMm: number, heightMm: number, fieldWidthMm: number, fieldHeightMm: number): number {
  return SCALES.find((scale) => widthMm / scale <= fieldWidthMm && heightMm / scale <= fieldHeightMm) ?? 200
}
