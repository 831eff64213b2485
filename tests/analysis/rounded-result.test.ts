import { expect, it } from 'vitest'
import { roundedResult } from '../../electron/analysis/statistics/rounded-result.ts'

// JCGM 100:2008, 7.2.6: at most two significant digits; its example, 10.05762 ohm with 27 milliohm, reads 10.058 ohm.
it.each([
  [10.05762, 0.027, 10.058, 0.027],
  [347.2861, 1.9612, 347.3, 2],
  [34.8, 0.0999, 34.8, 0.1],
  [400_123.4, 1284, 400_100, 1300],
  [-12.345, 0.31, -12.35, 0.31],
  [5, 0, 5, 0],
])('%f with %f is kept as %f with %f', (value, uncertainty, kept, of) => {
  const found = roundedResult(value, uncertainty)
  expect(found.value).toBeCloseTo(kept, 10)
  expect(found.uncertainty).toBeCloseTo(of, 10)
})
