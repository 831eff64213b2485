import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { z } from 'zod'
import type { CovarianceStructure, Places } from '../../../electron/analysis/coating/covariance.ts'

const model = z.array(z.object({ model: z.string(), psill: z.number(), range: z.number() }))
const numbers = z.array(z.number())
const predictions = z.object({ pred: numbers, var: numbers })
const classes = z.array(z.object({ np: z.number(), dist: z.number(), gamma: z.number() }))

/**
 * Zinc in the flood plain of the river Meuse (155 places; data set `meuse` of the R package sp, GPL-2 or later), logarithms,
 * computed once with gstat 2.1-0 and dense algebra in R 4.2.2; the file says which is which.
 */
const schema = z.object({
  datasets: z.tuple([
    z.object({
      points: z.array(z.tuple([z.number(), z.number(), z.number()])),
      model,
      targets: z.array(z.tuple([z.number(), z.number()])),
      ok_global: predictions,
      ok_nmax16: predictions,
      ok_nugget_as_measurement_error: predictions.extend({ model }),
      ok_heteroscedastic: predictions.extend({ model, meas_var: numbers }),
      gls_mean: z.object({ beta: z.number(), var: z.number() }),
      exceedance: z.object({ threshold_raw: z.number(), p: numbers }),
      indicator_kriging: predictions.extend({ model }),
      leave_one_out: z.object({
        mean_error: z.number(),
        rmse: z.number(),
        msdr: z.number(),
        mean_z: z.number(),
        sd_z: z.number(),
        coverage90: z.number(),
        first5: z.array(z.object({ pred: z.number(), var: z.number() })),
      }),
      area: z.object({
        grid: z.object({
          x0: z.number(),
          y0: z.number(),
          dx: z.number(),
          dy: z.number(),
          nx: z.number(),
          ny: z.number(),
        }),
        expected_fraction_exact: z.number(),
        sd_fraction_exact: z.number(),
        expected_excess_exact: z.number(),
      }),
      block: z.object({
        pred: z.number(),
        var_gstat: z.number(),
        var_dense_nugget_per_node: z.number(),
        var_dense_no_nugget_in_target: z.number(),
      }),
      variogram: z.object({
        cutoff: z.number(),
        width: z.number(),
        classical_transformed: classes,
        cressie_hawkins_transformed: classes,
        cressie_hawkins_raw: classes,
      }),
      fit_variogram: z.object({ fit: model, sserr: z.number() }),
      likelihood: z.array(z.object({ model, logML_gls_mean: z.number(), logREML: z.number() })),
      censored: z.object({
        points_index0: numbers,
        censored_index0: numbers,
        limit_transformed: z.number(),
        model,
        results: z.array(
          z.object({
            target0: z.number(),
            p_both_censored: z.number(),
            post_mean: z.number(),
            post_var: z.number(),
            p_exceed: z.number(),
            naive_p_if_censored_used_as_limit: z.number(),
          }),
        ),
      }),
    }),
  ]),
})

const file = resolve(import.meta.dirname, '..', '..', 'fixtures', 'coating', 'reference-kriging.json')
export const [reference] = schema.parse(JSON.parse(readFileSync(file, 'utf8'))).datasets

const words = { Nug: 'nugget', Err: 'error', Sph: 'spherical', Exp: 'exponential', Mat: 'matern 3/2' } as const

/** A model as R's gstat names it, in our words. */
export const structuresOf = (rows: z.infer<typeof model>): CovarianceStructure[] =>
  rows.map(({ model: name, psill, range }) => {
    const own = words[name as keyof typeof words]
    return { model: own, sill: psill, range }
  })

export const placesOf = (rows: readonly (readonly number[])[]): Places => ({
  x: Float64Array.from(rows, ([x]) => x as number),
  y: Float64Array.from(rows, ([, y]) => y as number),
})

/** Logarithms of zinc at the 155 places. */
export const logarithms = {
  places: placesOf(reference.points),
  values: Float64Array.from(reference.points, ([, , value]) => Math.log(value)),
  readingVariance: null,
}

/** Nodes of the area grid, x fastest. */
export const areaNodes: Places = placesOf(
  Array.from({ length: reference.area.grid.nx * reference.area.grid.ny }, (_, at) => {
    const { x0, y0, dx, dy, nx } = reference.area.grid
    return [x0 + (at % nx) * dx, y0 + Math.floor(at / nx) * dy]
  }),
)

/** Largest difference relative to the size of the reference. */
export function furthest(found: ArrayLike<number>, expected: readonly number[], skip: readonly number[] = []): number {
  if (found.length !== expected.length) return Number.POSITIVE_INFINITY
  return Math.max(
    ...expected.map((value, at) =>
      skip.includes(at) ? 0 : Math.abs((found[at] as number) - value) / Math.max(1e-12, Math.abs(value)),
    ),
  )
}
