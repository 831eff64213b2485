import { describe, expect, it } from 'vitest'
import { datesInWords, datesOfPaper, distanceInWords } from '../../../electron/analysis/dating/dates-in-words.ts'
import { intervalWords, stretchWords } from '../../../electron/analysis/dating/interval-words.ts'

// The calendar itself is the outside check: lengths of months, and the weeks of ISO 8601 and 49 CFR 574.5.
const days = (line: string) => datesInWords(line).map(({ interval }) => [interval.from, interval.to])

describe('dates in words', () => {
  it.each([
    ['14 April 1960', '1960-04-14', '1960-04-14'],
    ['1960-02-29', '1960-02-29', '1960-02-29'],
    ['in Feb. 1960 or so', '1960-02-01', '1960-02-29'],
    ['print 1979', '1979-01-01', '1979-12-31'],
    // ISO 8601 week 14 of 1986 is 31 March to 6 April; by 49 CFR 574.5 it is 6 to 12 April.
    ['week 14 of 1986', '1986-03-31', '1986-04-12'],
  ])('%s', (line, from, to) => expect(days(line)).toEqual([[from, to]]))

  it.each(['30 February 1960', '1 498 cm³', '11387', '61 2086 miles', 'week 60 of 1970', '2 60'])(
    'holds no whole date: %s',
    (line) => expect(datesInWords(line).filter(({ precision }) => precision !== 'year')).toEqual([]),
  )

  it('a figure that belongs to a number is no year', () => {
    expect(days('61 1960 and 1960 cm³')).toEqual([])
  })
})

describe('what a caption says of time', () => {
  it('tells the day of the paper from the day of registration and from the story it tells', () => {
    const paper = datesOfPaper('Document, issue of 1971, copy: first registered 9 June 1960.')
    expect([paper.made?.text, paper.firstRegistered?.text]).toEqual(['1971', '9 June 1960'])
    expect(datesOfPaper('Ledger: tags between 1 March and 26 May 1960; changed from 15 April 1960.')).toEqual({
      made: null,
      firstRegistered: null,
    })
    expect(datesOfPaper('Bill of a workshop, 27 May 2026').made?.interval.from).toBe('2026-05-27')
  })

  it.each([
    ['61 208 miles as read', { value: 61208, unit: 'mile' }],
    ['98,512 km', { value: 98512, unit: 'km' }],
    ['not read', null],
  ])('%s', (line, distance) => expect(distanceInWords(line)).toEqual(distance))
})

it.each([
  [{ from: '1962-07-01', to: '1962-07-31' }, 'July 1962'],
  [{ from: '1974-01-01', to: '1974-12-31' }, '1974'],
  [{ from: '1960-03-01', to: '1960-05-26' }, '1 March to 26 May 1960'],
  [{ from: '1959-12-20', to: '1960-01-03' }, '20 December 1959 to 3 January 1960'],
  [{ from: null, to: '1960-06-09' }, 'not after 9 June 1960'],
  [{ from: null, to: null }, 'not dated'],
])('an interval as one says it: %o', (interval, words) => expect(intervalWords(interval)).toBe(words))

it.each([
  ['1960-05-26', '1962-07-01', '2 years 1 month'],
  ['1960-01-31', '1960-02-28', '4 weeks'],
  ['1960-01-31', '1961-01-30', '11 months'],
  ['1960-01-01', '1960-01-04', '3 days'],
])('a stretch is never said longer than it is: %s to %s', (from, to, words) =>
  expect(stretchWords(from, to)).toBe(words),
)
