import type { z } from 'zod'
import type { DrawnDistribution, drawnUncertainty } from '../../../shared-types/measuring.ts'
import { normalDraw, seededDraw } from '../sampling/seeded-draws.ts'
import { deviationsOf } from './uncertainty-sources.ts'

/** Mean, standard deviation and intervals of drawn values (JCGM 101:2008, 7.5 to 7.7). Sorts the values it is given. */
export function distributionOf(values: Float64Array, coverage: number): DrawnDistribution {
  const draws = values.length
  let sum = 0
  for (const value of values) sum += value
  const mean = sum / draws
  let squares = 0
  for (const value of values) squares += (value - mean) ** 2
  values.sort()
  const inside = Math.min(draws - 1, Math.round(coverage * draws))
  const left = Math.floor((draws - inside) / 2)
  let shortest = 0
  for (let at = 1; at + inside < draws; at += 1)
    if (widthAt(values, at, inside) < widthAt(values, shortest, inside)) shortest = at
  return {
    mean,
    standard: Math.sqrt(squares / (draws - 1)),
    low: values[left] ?? mean,
    high: values[left + inside] ?? values[draws - 1] ?? mean,
    shortestLow: values[shortest] ?? mean,
    shortestHigh: values[shortest + inside] ?? mean,
    draws,
  }
}

const widthAt = (sorted: Float64Array, at: number, inside: number): number =>
  (sorted[at + inside] ?? Number.NaN) - (sorted[at] ?? Number.NaN)

/** Distribution of an estimate plus the sum of its sources times their sensitivities, by drawing. */
export function drawUncertainty(question: z.infer<typeof drawnUncertainty.input>): DrawnDistribution {
  const { estimate, sources, coverage, draws, seed } = question
  const draw = seededDraw(seed)
  const normal = normalDraw(draw)
  const deviations = sources.map((source) => ({
    sensitivity: source.sensitivity,
    next: deviationsOf(source, draw, normal),
  }))
  const values = new Float64Array(draws)
  for (let at = 0; at < draws; at += 1) {
    let value = estimate
    for (const { sensitivity, next } of deviations) value += sensitivity * next()
    values[at] = value
  }
  return distributionOf(values, coverage)
}
