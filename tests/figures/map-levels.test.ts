import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { levelColour, levelPaths } from '../../renderer/drawing/map-levels.ts'
import { cividis } from '../../shared-types/tokens.ts'

/** Rectangles of a path as `levelPaths` writes it: left, top, width and height, in cells. */
const rectangles = (path: string) =>
  [...path.matchAll(/M(-?[\d.]+) (-?[\d.]+)h([\d.]+)v([\d.]+)h-[\d.]+z/g)].map(([, ...sides]) => sides.map(Number))

describe('levels of a map', () => {
  it('cover every known cell once, in the level its value belongs to, and nothing else', () => {
    const limits = [150, 300, 500]
    const value = fc.option(fc.integer({ min: 0, max: 800 }))
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9 }),
        fc.array(value, { minLength: 1, maxLength: 60 }),
        (columns, values) => {
          const paths = levelPaths({ u: 100, v: -700, cellMm: 20, columns, values }, limits)
          values.forEach((um, at) => {
            const middle = {
              u: (at % columns) + 0.5,
              v: Math.floor(at / columns) + 0.5,
            }
            const covering = paths.flatMap((path, level) =>
              rectangles(path).flatMap(([left = 0, top = 0, width = 0, height = 0]) =>
                middle.u > left && middle.u < left + width && middle.v > top && middle.v < top + height ? [level] : [],
              ),
            )
            const expected = um === null ? [] : [um < 150 ? 0 : um < 300 ? 1 : um < 500 ? 2 : 3]
            expect(covering).toEqual(expected)
          })
        },
      ),
    )
  })

  it('run from the thin end of cividis to the thick one', () => {
    expect(levelColour(0, 6)).toBe(cividis[0])
    expect(levelColour(5, 6)).toBe(cividis[15])
    expect(new Set([0, 1, 2, 3, 4, 5].map((level) => levelColour(level, 6))).size).toBe(6)
  })
})
