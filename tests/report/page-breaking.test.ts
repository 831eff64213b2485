import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { pageBeginnings, type Unit } from '../../electron/report/layout/page-breaking.ts'

const CAPACITY = 63
const HEAD = 5
const plain = (lines: number, more: Partial<Unit> = {}): Unit => ({
  lines,
  linesAtTop: lines,
  headLines: 0,
  opensPage: false,
  runsOn: false,
  ...more,
})
/** A section's head with its first lines; empty lines above it are left out where it begins a page. */
const opening = (under: number): Unit => plain(HEAD + under, { linesAtTop: HEAD - 2 + under, headLines: HEAD })

/** Lines on each page. */
function filled(units: readonly Unit[], beginnings: readonly number[], used = 0): number[] {
  const pages = used > 0 ? [used] : []
  for (const [index, unit] of units.entries()) {
    if (beginnings.includes(index)) pages.push(unit.linesAtTop)
    else pages[pages.length - 1] = (pages.at(-1) ?? 0) + unit.lines
  }
  return pages
}

/** The same where each section opens a page and every page is filled to its foot. */
const filledToTheFoot = (units: readonly Unit[]): number[] => {
  const pages: number[] = []
  for (const unit of units) {
    const taken = pages.at(-1)
    if (taken === undefined || taken + unit.lines > CAPACITY || unit.headLines > 0) pages.push(unit.linesAtTop)
    else pages[pages.length - 1] = taken + unit.lines
  }
  return pages
}

const section = fc
  .tuple(fc.integer({ min: 1, max: 14 }), fc.array(fc.integer({ min: 1, max: 14 }), { maxLength: 60, size: 'max' }))
  .map(([under, rest]) => [opening(under), ...rest.map((lines) => plain(lines, { runsOn: lines < 3 }))])
const sections = fc.array(section, { minLength: 1, maxLength: 9 }).map((all) => all.flat())

describe('where pages begin', () => {
  test('none holds more than it can, and none but the last is nearly empty, however long sections are', () => {
    let short = 0
    fc.assert(
      fc.property(sections, fc.integer({ min: 0, max: CAPACITY }), (units, used) => {
        const pages = filled(units, pageBeginnings(units, CAPACITY, used, false), used)
        for (const lines of pages) expect(lines).toBeLessThanOrEqual(CAPACITY)
        const [first, ...rest] = pages.slice(0, -1)
        // What stands above the first unit may leave no room for it.
        if (used === 0 || (first ?? 0) > used) expect(first ?? CAPACITY).toBeGreaterThan(CAPACITY / 3)
        for (const lines of rest) expect(lines, pages.join(' ')).toBeGreaterThan(CAPACITY / 3)
        short += filledToTheFoot(units)
          .slice(0, -1)
          .filter((lines) => lines < CAPACITY / 3).length
      }),
      { numRuns: 500 },
    )
    // Sections that each open a page, filled to the foot, do leave pages nearly empty.
    expect(short).toBeGreaterThan(200)
  })

  test('a section opens a page where the one before is half full, and follows where that is nearly empty', () => {
    const above = (lines: number) =>
      pageBeginnings([...Array.from({ length: lines }, () => plain(1)), opening(10), plain(4)], CAPACITY, 0, false)
    expect(above(40)).toEqual([0, 40])
    expect(above(12)).toEqual([0])
  })

  test('a head that follows has lines of its section under it', () => {
    fc.assert(
      fc.property(sections, (units) => {
        const beginnings = pageBeginnings(units, CAPACITY, 0, false)
        for (const [index, unit] of units.entries()) {
          if (unit.headLines === 0 || beginnings.includes(index)) continue
          const next = beginnings.find((at) => at > index) ?? units.length
          const own = units.slice(index + 1, next)
          const ends = next === units.length || units.slice(index + 1, next + 1).some(({ headLines }) => headLines > 0)
          const under = own.reduce((sum, { lines }) => sum + lines, unit.lines - unit.headLines)
          expect(ends || under >= 8).toBe(true)
        }
      }),
      { numRuns: 300 },
    )
  })

  test('before what fills a page by itself lines are drawn over from the page before', () => {
    const text = Array.from({ length: CAPACITY + 6 }, () => plain(1))
    const figure = plain(60, { opensPage: true })
    const pages = filled([...text, figure], pageBeginnings([...text, figure], CAPACITY, 0, false))
    expect(pages).toHaveLength(3)
    expect(pages[1]).toBeGreaterThan(CAPACITY / 3)
    // The same where it is not yet known what follows, only that it begins a page.
    expect(filled(text, pageBeginnings(text, CAPACITY, 0, true))).toEqual(pages.slice(0, 2))
    expect(filled(text, pageBeginnings(text, CAPACITY, 0, false))).toEqual([CAPACITY, 6])
  })

  test('a block is parted only where more than a few lines would be left empty', () => {
    const block = (lines: number) => [plain(lines - 3), plain(1, { runsOn: true }), plain(2, { runsOn: true })]
    const above = (lines: number) => [...Array.from({ length: lines }, () => plain(1)), ...block(5), ...block(9)]
    expect(pageBeginnings(above(60), CAPACITY, 0, false)).toEqual([0, 60])
    expect(pageBeginnings(above(CAPACITY - 10), CAPACITY, 0, false)).toEqual([0, CAPACITY - 10 + 3])
  })
})
