import { describe, expect, it } from 'vitest'
import { seededDraw } from '../../../electron/analysis/sampling/seeded-draws.ts'
import { bothExceed } from '../../../electron/analysis/statistics/bivariate-normal.ts'
import {
  factorInPlace,
  inverseFromLower,
  solveLower,
  solveUpper,
} from '../../../electron/analysis/statistics/cholesky.ts'
import { normalProbability } from '../../../electron/analysis/statistics/normal-distribution.ts'

/** Computed once with scipy 1.17.1: stats.norm.cdf and stats.multivariate_normal.cdf. */
describe('normal distributions agree with scipy 1.17.1', () => {
  it.each([
    [-12, 1.776482112077653e-33],
    [-8, 6.22096057427174e-16],
    [-5, 2.866515718791933e-7],
    [-1.3, 0.09680048458561036],
    [0, 0.5],
    [0.7, 0.758036347776927],
    [3, 0.9986501019683699],
    [6.5, 0.99999999995984],
    [8.4, 1],
    [40, 1],
  ])('chance below %f', (x, expected) => {
    expect(Math.abs(normalProbability(x) / expected - 1)).toBeLessThan(1e-10)
  })
  it.each([
    [0, 0, 0.5, 1 / 3],
    [1, -0.5, 0.3, 0.13325613544995113],
    [0.2, 0.1, 0.99, 0.4128539179769789],
    [-1, 1.5, -0.95, 0.0013957726514278873],
    [2, 2.5, 0.93, 0.005734264550827373],
    [-0.4, -0.4, 0.9999, 0.6533439852949559],
    [1, 1, -0.6, 0.0017188799452888537],
    [3, 3, 0.97, 0.0009254037304755602],
  ])('both above %f and %f at correlation %f', (h, k, correlation, expected) => {
    expect(bothExceed(h, k, correlation)).toBeCloseTo(expected, 11)
  })
})

describe('Cholesky factors', () => {
  it.each([1, 2, 47, 48, 49, 97, 150])('solve %i equations across the edges of blocks', (n) => {
    const draw = seededDraw(`cholesky ${n}`)
    const matrix = new Float64Array(n * n)
    for (let row = 0; row < n; row += 1)
      for (let column = 0; column <= row; column += 1) {
        const value = row === column ? n : draw() - 0.5
        matrix[row * n + column] = value
        matrix[column * n + row] = value
      }
    const truth = Float64Array.from({ length: n }, draw)
    const b = truth.map((_, row) => truth.reduce((sum, x, column) => sum + x * (matrix[row * n + column] as number), 0))
    const factor = matrix.slice()
    expect(factorInPlace(factor, n)).toBe(true)
    solveLower(factor, n, b)
    solveUpper(factor, n, b)
    expect(Math.max(...b.map((value, at) => Math.abs(value - (truth[at] as number))))).toBeLessThan(1e-11)
    const inverse = inverseFromLower(factor, n)
    let worst = 0
    for (let row = 0; row < n; row += 1)
      for (let column = 0; column < n; column += 1) {
        let sum = row === column ? -1 : 0
        for (let k = 0; k < n; k += 1) sum += (matrix[row * n + k] as number) * (inverse[k * n + column] as number)
        worst = Math.max(worst, Math.abs(sum))
      }
    expect(worst).toBeLessThan(1e-11)
  })
  it('say so when a matrix has none', () => {
    expect(factorInPlace(Float64Array.of(1, 1, 1, 1), 2)).toBe(false)
    expect(factorInPlace(Float64Array.of(1, 2, 2, 1), 2)).toBe(false)
  })
})
