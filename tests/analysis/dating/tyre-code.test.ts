import { getISOWeek, getISOWeekYear } from 'date-fns'
import { describe, expect, it } from 'vitest'
import { dayNumber, isoDay, isoWeek, tyreWeek } from '../../../electron/analysis/dating/calendar.ts'
import { readTyreCode } from '../../../electron/analysis/dating/tyre-code.ts'
import { tyreCode } from '../../../shared-types/dating.ts'

const read = (asRead: string, more: object = {}) => readTyreCode(tyreCode.input.parse({ asRead, ...more }))

describe('weeks of 49 CFR 574.5(b)(3)', () => {
  it.each([
    // The first line is the example in the rule; the others were worked out from its words with another program (Python).
    ['0109', '2009-01-04', '2009-01-10', '2008-12-29'],
    ['0100', '2000-01-02', '2000-01-08', '2000-01-03'],
    ['5300', '2000-12-31', '2001-01-06', null],
    ['0301', '2001-01-21', '2001-01-27', '2001-01-15'],
    ['5323', '2023-12-31', '2024-01-06', null],
  ])('%s is %s to %s; the ISO week would begin %s', (code, from, to, iso) => {
    const [reading, ...others] = read(code).readings
    expect(others).toEqual([])
    expect(reading?.interval).toEqual({ from, to })
    expect(reading?.isoWeek?.from ?? null).toBe(iso)
  })
  it('has a week 53 in these years and no others', () => {
    const years = Array.from({ length: 31 }, (_, count) => 2000 + count)
    expect(years.filter((year) => tyreWeek(year, 53) !== null)).toEqual([2000, 2006, 2012, 2017, 2023, 2028])
  })
  it('ISO weeks agree with date-fns', () => {
    for (let year = 1950; year < 2050; year += 1) {
      for (const week of [1, 2, 26, 52, 53]) {
        const span = isoWeek(year, week)
        if (span === null) continue
        const thursday = new Date(`${isoDay(span.from + 3)}T12:00:00`)
        expect([getISOWeekYear(thursday), getISOWeek(thursday)]).toEqual([year, week])
      }
    }
  })
})

describe('readings', () => {
  it('three figures keep every decade', () => {
    // An owner’s manual: 031 could be the third week of 1981 or of 1991.
    expect(read('031').readings.map(({ year }) => year)).toEqual([1971, 1981, 1991])
    expect(read('031◁', { notBefore: '1990-01-01' }).readings.map(({ year }) => year)).toEqual([1991])
  })
  it('names weeks that are not in the year', () => {
    expect(read('0009').readings).toEqual([])
    expect(read('0009').impossible[0]?.because).toContain('from 01')
    expect(read('5309').impossible[0]?.because).toContain('last week')
    expect(read('5400').readings).toEqual([])
    expect(read('0399').impossible[0]?.because).toContain('8 July 1999')
  })
  it('refuses other than three or four figures with a cure', () => {
    for (const wrong of ['12', '01234', 'XJ8', '']) {
      expect(() => readTyreCode({ asRead: wrong, notBefore: null, notAfter: null })).toThrow(
        /last three or four figures/,
      )
    }
  })
  it('days survive the way to numbers and back', () => {
    for (const day of ['1899-12-31', '1970-01-01', '2000-02-29', '2026-11-25']) expect(isoDay(dayNumber(day))).toBe(day)
  })
})
