/** One point of a line: y with its standard uncertainty at an x that is taken as exact. */
export interface LinePoint {
  readonly x: number
  readonly y: number
  readonly u: number
}

/** A fitted line y = intercept + slope x. */
export interface StraightLine {
  readonly intercept: number
  readonly slope: number
  readonly interceptVariance: number
  readonly slopeVariance: number
  readonly covariance: number
  /** Sum of squared residuals in units of their uncertainties, with points - 2 degrees of freedom. */
  readonly chiSquare: number
  readonly degreesOfFreedom: number
}

/**
 * Weighted least squares with known uncertainties (ISO/TS 28037:2010, clause 6); sums are taken about the weighted mean, so
 * that digits are kept. Null when all x are alike.
 */
export function fitStraightLine(points: readonly LinePoint[]): StraightLine | null {
  const weight = points.reduce((sum, { u }) => sum + u ** -2, 0)
  const meanX = points.reduce((sum, { x, u }) => sum + x / u ** 2, 0) / weight
  const meanY = points.reduce((sum, { y, u }) => sum + y / u ** 2, 0) / weight
  const spread = points.reduce((sum, { x, u }) => sum + ((x - meanX) / u) ** 2, 0)
  if (points.length < 2 || !(spread > 0)) return null
  const slope = points.reduce((sum, { x, y, u }) => sum + ((x - meanX) * (y - meanY)) / u ** 2, 0) / spread
  return {
    intercept: meanY - slope * meanX,
    slope,
    interceptVariance: 1 / weight + meanX ** 2 / spread,
    slopeVariance: 1 / spread,
    covariance: -meanX / spread,
    chiSquare: points.reduce((sum, { x, y, u }) => sum + ((y - meanY - slope * (x - meanX)) / u) ** 2, 0),
    degreesOfFreedom: points.length - 2,
  }
}

/** The x whose y was read, and its standard uncertainty (ISO/TS 28037:2010, 11.2; JCGM 100:2008, H.3). */
export function readBackwards(line: StraightLine, y: number, u: number): { readonly x: number; readonly u: number } {
  const x = (y - line.intercept) / line.slope
  const variance = u ** 2 + line.interceptVariance + x ** 2 * line.slopeVariance + 2 * x * line.covariance
  return { x, u: Math.sqrt(variance) / Math.abs(line.slope) }
}
