import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { describedBody } from '../../electron/figures/body-shape/body-description.ts'
import { outsideSheet, outsideWork } from '../../electron/figures/body-shape/outside-sheet.ts'
import { anyDimensions, bodies } from './body-trays/test-frames.ts'
import { faultsOf } from './plan-checks.ts'
import { sedge } from './sedge.ts'

/** Passes over dimensions that no car can have together: screens so far back that no roof is left between them. */
function drawable<T>(draw: () => T): T {
  try {
    return draw()
  } catch (cause) {
    fc.pre(!String(cause).includes('leaves no roof'))
    throw cause
  }
}

describe('the outside of a car of its own dimensions', () => {
  it.each(bodies)(
    '%s: two hundred sets of dimensions tile, mirror, register and keep their labels inside',
    (body) => {
      const description = describedBody(body)
      const conditions = new Set(sedge)
      fc.assert(
        fc.property(anyDimensions(body), (dimensions) => {
          const { views } = outsideSheet(drawable(() => outsideWork(description, dimensions, conditions)))
          expect(faultsOf(views)).toEqual([])
        }),
        { numRuns: 200, seed: 20260514 },
      )
    },
    240_000,
  )
})
