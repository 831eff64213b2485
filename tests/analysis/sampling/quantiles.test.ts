import { expect, it } from 'vitest'
import { betaQuantile, incompleteBeta, logGamma } from '../../../electron/analysis/statistics/beta-distribution.ts'
import { normalQuantile, studentQuantile } from '../../../electron/analysis/statistics/quantiles.ts'
import { ranksOf } from '../../../electron/analysis/statistics/ranks.ts'

it.each([
  // Tables of the normal distribution.
  [0.9, 1.281552],
  [0.95, 1.644854],
  [0.975, 1.959964],
  [0.99, 2.326348],
  [0.995, 2.575829],
])('normal quantile of %d', (p, z) => {
  expect(normalQuantile(p)).toBeCloseTo(z, 6)
  expect(normalQuantile(1 - p)).toBeCloseTo(-z, 6)
})

it('far out, as scipy 1.17.1 has it', () => expect(normalQuantile(1e-10)).toBeCloseTo(-6.361340902404056, 12))

it('ranks as scipy 1.17.1 has them, by rankdata', () => {
  expect(Array.from(ranksOf(Float64Array.of(3, -1, 2, 2, 70)))).toEqual([4, 1, 2.5, 2.5, 5])
  expect(Array.from(ranksOf(new Float64Array(4).fill(7)))).toEqual([2.5, 2.5, 2.5, 2.5])
})

it.each([
  // Tables of Student's t: 0.95, 0.975, 0.995.
  [1, 6.3138, 12.7062, 63.6567],
  [2, 2.92, 4.3027, 9.9248],
  [5, 2.015, 2.5706, 4.0321],
  [10, 1.8125, 2.2281, 3.1693],
  [16, 1.7459, 2.1199, 2.9208],
  [30, 1.6973, 2.0423, 2.75],
  [120, 1.6577, 1.9799, 2.6174],
])('Student with %i degrees of freedom', (degrees, ...table) => {
  for (const [at, p] of [0.95, 0.975, 0.995].entries())
    expect(studentQuantile(p, degrees)).toBeCloseTo(table[at] ?? 0, 4)
})

it('between whole degrees of freedom, as scipy 1.17.1 has it', () => {
  expect(studentQuantile(0.975, 16.66)).toBeCloseTo(2.1131003047238397, 11)
  expect(studentQuantile(0.005, 2.5)).toBeCloseTo(-7.163728138948783, 10)
})

it('gamma and beta: closed forms', () => {
  // Γ(1/2) = √π, Γ(6) = 120; I_x(1, b) = 1 - (1 - x)^b; scipy 1.17.1 for the quantile.
  expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.sqrt(Math.PI)), 13)
  expect(logGamma(6)).toBeCloseTo(Math.log(120), 13)
  expect(incompleteBeta(1, 7, 0.3)).toBeCloseTo(1 - 0.7 ** 7, 13)
  expect(betaQuantile(0.5, 300, 0.025)).toBeCloseTo(1.6381450727490478e-6, 15)
})
