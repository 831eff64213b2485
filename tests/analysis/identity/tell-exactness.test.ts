import { describe, expect, it } from 'vitest'
import type { z } from 'zod'
import { tellExactnessOf } from '../../../electron/analysis/identity/tell-exactness.ts'
import { tellExactness } from '../../../shared-types/measuring.ts'

const ask = (question: z.input<typeof tellExactness.input>) => tellExactnessOf(tellExactness.input.parse(question))
const near = { id: 'near', mean: 312, standardDeviation: 1.5 }
const wide = { id: 'wide', mean: 348, standardDeviation: 1.5 }

describe('how exact a measurement must be to decide a tell', () => {
  // Closed form. Two normal densities of one variance s² + u²: ln R = (D² - d²) / (2 (s² + u²)), solved for u.
  const closed = (d: number, far: number, s: number, ratio: number) =>
    Math.sqrt((far ** 2 - d ** 2) / (2 * Math.log(ratio)) - s ** 2)

  it.each([
    [312, 100],
    [316, 100],
    [345.2, 1000],
    [327, 100],
  ])('a value of %f mm decides at a ratio of %i up to the closed form', (value, enough) => {
    const [d = 0, far = 0] = [Math.abs(value - 312), Math.abs(value - 348)].toSorted((a, b) => a - b)
    const found = ask({ value, standardUncertainty: 1, expected: [near, wide], enough, fitsWithin: 10 })
    expect(found.wouldDecide).toBeCloseTo(closed(d, far, 1.5, enough), 6)
  })

  it('the same value decides just below that and not just above', () => {
    const most = closed(6, 30, 1.5, 100)
    const at = (standardUncertainty: number) => ask({ value: 318, standardUncertainty, expected: [near, wide] })
    expect(at(most * 0.999)).toMatchObject({ decision: 'decides', likeliest: 'near' })
    expect(at(most * 1.001)).toMatchObject({ decision: 'does not decide', likeliest: 'near' })
    expect(at(most).likelihoodRatio).toBeCloseTo(100, 6)
  })

  it('half-way between two values nothing would decide', () => {
    const found = ask({ value: 330, standardUncertainty: 9, expected: [near, wide] })
    expect(found).toMatchObject({ decision: 'does not decide', wouldDecide: null })
    expect(found.likelihoodRatio).toBeCloseTo(1, 12)
  })

  it('a value far from every one fits none, however much nearer it is to one of them', () => {
    expect(ask({ value: 280, standardUncertainty: 0.5, expected: [near, wide] }).decision).toBe('fits none')
  })

  it('values whose own spread overlaps are not told apart by any measurement', () => {
    // The thing itself spreads by 3 mm about 26 and about 38: at 31 mm, (7² - 5²) / 2 ln 100 is less than 3².
    const expected = [
      { id: 'close', mean: 26, standardDeviation: 3 },
      { id: 'wide', mean: 38, standardDeviation: 3 },
    ]
    expect(ask({ value: 31, standardUncertainty: 0.1, expected }).wouldDecide).toBeNull()
  })
})
