import { describe, expect, it } from 'vitest'
import { exceedingShare } from '../../../electron/analysis/coating/exceeding-share.ts'
import { fieldLikelihood } from '../../../electron/analysis/coating/field-likelihood.ts'
import { weighBlock, weighPoint } from '../../../electron/analysis/coating/kriging-weights.ts'
import { crossValidation, exceedance, leaveOneOut } from '../../../electron/analysis/coating/leave-one-out.ts'
import { krigeNearest } from '../../../electron/analysis/coating/nearest-kriging.ts'
import { krige, krigingSystem } from '../../../electron/analysis/coating/ordinary-kriging.ts'
import { experimentalVariogram } from '../../../electron/analysis/coating/variogram.ts'
import { fitVariogram } from '../../../electron/analysis/coating/variogram-fit.ts'
import { normalProbability } from '../../../electron/analysis/statistics/normal-distribution.ts'
import { areaNodes, furthest, logarithms, placesOf, reference, structuresOf } from './reference-cases.ts'

const structures = structuresOf(reference.model)
const system = krigingSystem(logarithms, structures)
const targets = placesOf(reference.targets)
const coinciding = [10]

describe('ordinary kriging agrees with gstat 2.1-0 to 1e-8 on the Meuse zinc data', () => {
  it('predicts from all readings, with the variance of a new exact value', () => {
    const { values, variances } = krige(system, targets)
    expect(furthest(values, reference.ok_global.pred)).toBeLessThan(1e-8)
    expect(furthest(variances, reference.ok_global.var, coinciding)).toBeLessThan(1e-8)
    expect(Math.abs(variances[10] as number)).toBeLessThan(1e-12)
  })
  it('predicts from the sixteen nearest', () => {
    const { values, variances } = krigeNearest(system, targets, 16)
    expect(furthest(values, reference.ok_nmax16.pred)).toBeLessThan(1e-8)
    expect(furthest(variances, reference.ok_nmax16.var, coinciding)).toBeLessThan(1e-8)
  })
  it('takes a nugget as an error of the readings', () => {
    const { model, pred, var: variance } = reference.ok_nugget_as_measurement_error
    const found = krige(krigingSystem(logarithms, structuresOf(model)), targets)
    expect(furthest(found.values, pred)).toBeLessThan(1e-8)
    expect(furthest(found.variances, variance)).toBeLessThan(1e-8)
  })
  it('gives each reading a variance of its own', () => {
    const { model, meas_var, pred, var: variance } = reference.ok_heteroscedastic
    const data = { ...logarithms, readingVariance: Float64Array.from(meas_var) }
    const found = krige(krigingSystem(data, structuresOf(model)), targets)
    expect(furthest(found.values, pred)).toBeLessThan(1e-8)
    expect(furthest(found.variances, variance)).toBeLessThan(1e-8)
  })
  it('estimates the mean and its variance', () => {
    expect(
      furthest([system.mean, system.meanVariance], [reference.gls_mean.beta, reference.gls_mean.var]),
    ).toBeLessThan(1e-8)
  })
  it('gives the chance of exceeding a limit', () => {
    const { p, threshold_raw } = reference.exceedance
    expect(furthest(exceedance(krige(system, targets), Math.log(threshold_raw)), p, coinciding)).toBeLessThan(1e-7)
  })
  it('kriges an indicator, which may leave the span from nought to one', () => {
    const values = Float64Array.from(reference.points, ([, , value]) => (value > 500 ? 1 : 0))
    const found = krige(
      krigingSystem({ ...logarithms, values }, structuresOf(reference.indicator_kriging.model)),
      targets,
    )
    expect(furthest(found.values, reference.indicator_kriging.pred, coinciding)).toBeLessThan(1e-8)
    expect(furthest(found.variances, reference.indicator_kriging.var, coinciding)).toBeLessThan(1e-8)
  })
  it('leaves out each reading in turn', () => {
    const { first5, ...summary } = reference.leave_one_out
    const found = leaveOneOut(system)
    const checked = crossValidation(logarithms.values, found)
    expect(
      furthest(
        found.values.slice(0, 5),
        first5.map(({ pred }) => pred),
      ),
    ).toBeLessThan(1e-8)
    expect(
      furthest(
        found.variances.slice(0, 5),
        first5.map(({ var: variance }) => variance),
      ),
    ).toBeLessThan(1e-8)
    expect(
      furthest(
        [checked.rootMeanSquare, checked.meanSquaredZ, checked.deviationZ, checked.insideNinety],
        [summary.rmse, summary.msdr, summary.sd_z, summary.coverage90],
      ),
    ).toBeLessThan(1e-8)
    expect(furthest([checked.meanError, checked.meanZ], [summary.mean_error, summary.mean_z])).toBeLessThan(1e-6)
  })
  it('estimates blocks to 1e-6, the nugget in each node or in none', () => {
    const without = weighBlock(system, areaNodes, false)
    const each = weighBlock(system, areaNodes, true)
    expect(furthest([without.value, each.value], [reference.block.pred, reference.block.pred])).toBeLessThan(1e-6)
    expect(Math.abs(without.variance - reference.block.var_gstat)).toBeLessThan(1e-6)
    expect(furthest([without.variance], [reference.block.var_dense_no_nugget_in_target])).toBeLessThan(1e-8)
    expect(furthest([each.variance], [reference.block.var_dense_nugget_per_node])).toBeLessThan(1e-8)
  })
  it('gives the exact mean and deviation of an area above a limit, and the expected excess', () => {
    const limit = Math.log(reference.exceedance.threshold_raw)
    const { mean, deviation } = exceedingShare(system, areaNodes, limit)
    expect(furthest([mean], [reference.area.expected_fraction_exact])).toBeLessThan(1e-8)
    expect(furthest([deviation], [reference.area.sd_fraction_exact])).toBeLessThan(1e-6)
    const { values, variances } = krige(system, areaNodes)
    const excess = values.map((value, at) => {
      const spread = Math.sqrt(variances[at] as number)
      const depth = (value - limit) / spread
      return (
        Math.exp(value + spread * spread * 0.5) * normalProbability(depth + spread) - 500 * normalProbability(depth)
      )
    })
    expect(
      furthest([excess.reduce((sum, value) => sum + value, 0) / excess.length], [reference.area.expected_excess_exact]),
    ).toBeLessThan(1e-8)
  })
  it('gives likelihoods as dense algebra does', () => {
    for (const { model, logML_gls_mean, logREML } of reference.likelihood) {
      const { profile, restricted } = fieldLikelihood(krigingSystem(logarithms, structuresOf(model)))
      expect(furthest([profile, restricted], [logML_gls_mean, logREML])).toBeLessThan(1e-8)
    }
  })
})

describe('variograms', () => {
  const { cutoff, width, classical_transformed, cressie_hawkins_transformed, cressie_hawkins_raw } = reference.variogram
  const raw = Float64Array.from(reference.points, ([, , value]) => value)
  it.each([
    ['classical', logarithms.values, classical_transformed],
    ['robust', logarithms.values, cressie_hawkins_transformed],
    ['robust', raw, cressie_hawkins_raw],
  ] as const)('%s, by classes, as gstat', (kind, values, expected) => {
    const found = experimentalVariogram(logarithms.places, values, { cutoff, width, kind })
    expect(found.map(({ pairs }) => pairs)).toEqual(expected.map(({ np }) => np))
    expect(
      furthest(
        found.map(({ distance }) => distance),
        expected.map(({ dist }) => dist),
      ),
    ).toBeLessThan(1e-8)
    expect(
      furthest(
        found.map(({ gamma }) => gamma),
        expected.map(({ gamma }) => gamma),
      ),
    ).toBeLessThan(1e-8)
  })
  it('fits no worse than gstat fit.method 7, and to the same model', () => {
    const fit = fitVariogram(
      experimentalVariogram(logarithms.places, logarithms.values, { cutoff, width, kind: 'classical' }),
      'spherical',
    )
    const { fit: expected, sserr } = reference.fit_variogram
    expect(fit?.sumOfSquares).toBeLessThanOrEqual(sserr * (1 + 1e-6))
    expect(
      furthest(
        [fit?.nugget ?? 0, fit?.sill ?? 0, fit?.range ?? 0],
        [expected[0]?.psill ?? 0, expected[1]?.psill ?? 0, expected[1]?.range ?? 0],
      ),
    ).toBeLessThan(2e-3)
  })
})

/** Isaaks and Srivastava, An Introduction to Applied Geostatistics, 1989, ch. 12, pp. 289-296: seven samples of V. */
describe('the worked example of Isaaks and Srivastava', () => {
  const samples = [
    [61, 139, 477],
    [63, 140, 696],
    [64, 129, 227],
    [68, 128, 646],
    [71, 140, 606],
    [73, 141, 791],
    [75, 128, 783],
  ] as const
  const data = {
    places: placesOf(samples),
    values: Float64Array.from(samples, ([, , value]) => value),
    readingVariance: null,
  }
  const model = [{ model: 'exponential', sill: 10, range: 1 / 0.3 }] as const
  const solved = weighPoint(krigingSystem(data, model), 65, 137)
  it('gives the printed weights, estimate and variance', () => {
    expect(Array.from(solved.weights, (weight) => Number(weight.toFixed(3)))).toEqual([
      0.173, 0.318, 0.129, 0.086, 0.151, 0.057, 0.086,
    ])
    expect(solved.value).toBeCloseTo(592.7289428, 6)
    expect(solved.variance).toBeCloseTo(8.956052789, 8)
    expect(solved.multiplier).toBeCloseTo(-0.906617, 6)
    expect(solved.weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12)
  })
  it('is exact at a sample, keeps its weights when the covariance is scaled, and moves with the values', () => {
    const exact = weighPoint(krigingSystem(data, model), 63, 140)
    expect(exact.value).toBeCloseTo(696, 8)
    expect(exact.variance).toBeCloseTo(0, 8)
    const scaled = weighPoint(krigingSystem(data, [{ ...model[0], sill: 30 }]), 65, 137)
    expect(furthest(scaled.weights, Array.from(solved.weights))).toBeLessThan(1e-9)
    expect(scaled.variance).toBeCloseTo(3 * solved.variance, 8)
    const moved = weighPoint(
      krigingSystem({ ...data, values: data.values.map((value) => value + 100) }, model),
      65,
      137,
    )
    expect(moved.value).toBeCloseTo(solved.value + 100, 8)
  })
  it('refuses two readings at one place when nothing is said of their error, and takes them when it is', () => {
    const twice = {
      places: { x: Float64Array.of(0, 0, 5), y: Float64Array.of(0, 0, 1) },
      values: Float64Array.of(1, 2, 3),
      readingVariance: null,
    }
    expect(() => krigingSystem(twice, model)).toThrow(/one place/)
    const read = weighPoint(krigingSystem({ ...twice, readingVariance: Float64Array.of(0.1, 0.1, 0.1) }, model), 0, 0)
    expect(read.value).toBeGreaterThan(1.4)
    expect(read.value).toBeLessThan(1.7)
  })
})
