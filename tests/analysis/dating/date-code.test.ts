import { describe, expect, it } from 'vitest'
import { readDateCode } from '../../../electron/analysis/dating/date-code.ts'
import { dateCode } from '../../../shared-types/dating.ts'

const withoutI = { kind: 'letters', field: 'month', letters: 'ABCDEFGHJKLM', first: 1 }
const withI = { kind: 'letters', field: 'month', letters: 'ABCDEFGHIJKL', first: 1 }
const figures = (field: string, minDigits: number, maxDigits = minDigits) => ({
  kind: 'figures',
  field,
  minDigits,
  maxDigits,
})
const source = 'common practice'
/** Year, month letter without I, day. */
const yearFirst = {
  id: 'year-first',
  label: 'Year first',
  source,
  usedFrom: 1955,
  usedTo: 1979,
  elements: [figures('year', 1), withoutI, figures('day', 1, 2)],
}
/** Month letter with I, day, year, as cast. */
const monthFirst = {
  id: 'month-first',
  label: 'Castings, month first',
  source,
  usedFrom: 1930,
  usedTo: 1969,
  elements: [withI, figures('day', 1, 2), figures('year', 1)],
}

const read = (asRead: string, grammars: object[], more: object = {}) =>
  readDateCode(dateCode.input.parse({ asRead, grammars, ...more }))
const days = (answer: ReturnType<typeof read>) =>
  answer.readings.map(({ interval: { from, to } }) => (from === to ? from : `${from}/${to}`))
const inDecade = { notBefore: '1960-01-01', notAfter: '1969-12-31' }

describe('published readings', () => {
  it.each([
    // Club pages on date codes: 6B10 is 10 February 1966, 5C20 is 20 March 1965, the decade being known.
    ['6B10', yearFirst, '1966-02-10'],
    ['5C20', yearFirst, '1965-03-20'],
    // Trade pages on casting dates: F 10 5 is 10 June 1965 on a casting of the sixties.
    ['F 10 5', monthFirst, '1965-06-10'],
  ])('%s', (code, grammar, day) => expect(days(read(code, [grammar], inDecade))).toEqual([day]))

  it('B 15 2 is of 1932, 1942, 1952 or 1962 when nothing else is known', () => {
    expect(days(read('B 15 2', [monthFirst]))).toEqual(['1932-02-15', '1942-02-15', '1952-02-15', '1962-02-15'])
  })
  it('J is September where the row leaves out I, October where it does not', () => {
    expect(days(read('6J1', [yearFirst], inDecade))).toEqual(['1966-09-01'])
    expect(days(read('J 1 6', [monthFirst], inDecade))).toEqual(['1966-10-01'])
    expect(read('6I1', [yearFirst]).impossible[0]?.because).toContain('I stands in place 2')
  })
})

describe('several readings', () => {
  it('two grammars answer both', () => {
    const week = {
      ...yearFirst,
      id: 'week',
      label: 'Week and year',
      elements: [figures('week', 2), figures('year', 1)],
    }
    const day = {
      ...yearFirst,
      id: 'day-of-year',
      label: 'Year and day',
      elements: [figures('year', 1), figures('day of year', 2)],
    }
    const found = read('126', [week, day], inDecade)
    // ISO 8601 week 12 of 1966 begins on Monday 21 March; day 26 of 1961 is 26 January.
    expect(days(found)).toEqual(['1961-01-26', '1966-03-21/1966-03-27'])
  })
  it('a run of figures is divided in every way it can be', () => {
    const loose = { ...monthFirst, elements: [withI, figures('day', 1, 2), figures('year', 1, 2)] }
    expect(days(read('F115', [loose], inDecade))).toEqual(['1965-06-11'])
    // F1 15 would be of a year ending in 15, F11 5 is of 1965.
    expect(
      read('F115', [loose])
        .impossible.map(({ reading }) => reading)
        .join(),
    ).toContain('year ending in 15')
  })
  it('a row of year letters begins anew', () => {
    const letters = {
      ...yearFirst,
      usedTo: 1990,
      elements: [{ kind: 'letters', field: 'year', letters: 'ABCDEFGHJK', first: 1960, repeats: true }, withoutI],
    }
    expect(days(read('BA', [letters]))).toEqual([
      '1961-01-01/1961-01-31',
      '1971-01-01/1971-01-31',
      '1981-01-01/1981-01-31',
    ])
  })
})

describe('the maker’s own calendar', () => {
  const calendar = {
    weeks: "from the start of the maker's year",
    yearBegins: { month: 9, day: 1, inTheYearBefore: true },
    daysWorked: [1, 2, 3, 4, 5],
    closed: [{ from: { month: 12, day: 24 }, to: { month: 1, day: 1 }, words: 'turn of the year' }],
  }
  const own = (elements: object[]) => ({ ...yearFirst, elements, calendar })

  it('October of model year 1966 was in 1965, and its first week began on 1 September', () => {
    expect(days(read('66K', [own([figures('year', 2), withoutI])]))).toEqual(['1965-10-01/1965-10-31'])
    expect(days(read('0166', [own([figures('week', 2), figures('year', 2)])]))).toEqual(['1965-09-01/1965-09-07'])
  })
  it('a day on which nothing was made is named', () => {
    const code = own([figures('year', 2), withoutI, figures('day', 2)])
    // 25 December 1965 lies in the closed days; 2 October 1965 was a Saturday.
    expect(read('66M25', [code]).impossible[0]?.because).toContain('turn of the year')
    expect(read('66K02', [code]).impossible[0]?.because).toContain('day of the week')
  })
})

describe('what cannot be', () => {
  it('is named with the reason', () => {
    const because = (code: string) => read(code, [yearFirst], inDecade).impossible.map((each) => each.because)
    expect(because('5B29').join()).toContain('February 1965 has no day 29')
    expect(because('4B29').join()).not.toContain('1964')
    expect(because('5B').join()).toContain('ends at place 3')
    expect(because('5B101').join()).toContain('the end of the code')
  })
})

describe('a grammar that never ends', () => {
  const looping = (more: object) => () => read('1', [{ ...yearFirst, ...more }])
  it.each([
    [
      { elements: [{ kind: 'repeated', name: 'mark', atLeast: 0, atMost: null }], pieces: { mark: [withI] } },
      /at most/,
    ],
    [
      {
        elements: [{ kind: 'piece', name: 'one' }],
        pieces: { one: [{ kind: 'piece', name: 'two' }], two: [{ kind: 'piece', name: 'one', optional: true }] },
      },
      /contains itself/,
    ],
    [
      {
        elements: [{ kind: 'repeated', name: 'mark', atLeast: 0, atMost: 9 }],
        pieces: { mark: [{ kind: 'fixed', texts: ['x'], optional: true }] },
      },
      /can be empty/,
    ],
    [{ elements: [{ kind: 'piece', name: 'gone' }] }, /not described/],
    [{ usedFrom: 1980, usedTo: 1970 }, /exchange/],
  ])('is refused with its cure: %#', (more, words) => expect(looping(more)).toThrow(words))

  it('one that only takes long is refused or cut short, in no time', () => {
    const nested = Object.fromEntries(
      Array.from({ length: 9 }, (_, depth) => [
        `piece-${depth}`,
        depth === 8
          ? [figures('serial', 1, 8)]
          : [{ kind: 'repeated', name: `piece-${depth + 1}`, atLeast: 1, atMost: 20 }],
      ]),
    )
    const elements = [{ kind: 'repeated', name: 'piece-0', atLeast: 1, atMost: 20 }]
    expect(looping({ elements, pieces: nested })).toThrow(/more than 500 elements/)
    const wide = { elements: Array(19).fill(figures('serial', 1, 8)) }
    const began = performance.now()
    expect(read('1'.repeat(60), [{ ...yearFirst, ...wide }]).bounded).toBe(true)
    expect(performance.now() - began).toBeLessThan(2000)
  })
})
