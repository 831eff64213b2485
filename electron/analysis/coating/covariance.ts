/**
 * One structure of a covariance. `sill` is its variance. A `nugget` belongs to the surface and appears between a point and
 * itself; an `error` belongs to the reading alone and never to the surface.
 */
export interface CovarianceStructure {
  readonly model: 'nugget' | 'error' | 'spherical' | 'exponential' | 'matern 3/2'
  readonly sill: number
  /** Same unit as the coordinates; no meaning for nugget and error. */
  readonly range: number
}

/** Places in a plane: x and y of the same number of points, one unit throughout. */
export interface Places {
  readonly x: Float64Array
  readonly y: Float64Array
}

/**
 * Correlation of one structure at a distance: spherical 1 - 1.5 h/a + 0.5 (h/a)^3 up to a; exponential exp(-h/a); Matern
 * with smoothness 3/2 (1 + h/a) exp(-h/a) (Chiles and Delfiner, Geostatistics, 2.5).
 */
export function correlation(structure: CovarianceStructure, distance: number): number {
  const share = distance / structure.range
  switch (structure.model) {
    case 'nugget':
      return distance === 0 ? 1 : 0
    case 'error':
      return 0
    case 'spherical':
      return share >= 1 ? 0 : 1 - share * (1.5 - 0.5 * share * share)
    case 'exponential':
      return Math.exp(-share)
    case 'matern 3/2':
      return (1 + share) * Math.exp(-share)
  }
}

/** Covariance of the surface between two places at a distance, added over the structures. */
export function covariance(structures: readonly CovarianceStructure[], distance: number): number {
  let sum = 0
  for (const structure of structures) sum += structure.sill * correlation(structure, distance)
  return sum
}

/** Variance every reading adds to the surface. */
export const errorVariance = (structures: readonly CovarianceStructure[]): number =>
  structures.reduce((sum, { model, sill }) => sum + (model === 'error' ? sill : 0), 0)

/** Distance of a point to the place with that number. */
export const distanceTo = (places: Places, at: number, x: number, y: number): number =>
  Math.sqrt((x - (places.x[at] as number)) ** 2 + (y - (places.y[at] as number)) ** 2)
