import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { z } from 'zod'
import { isoDay } from '../../../electron/analysis/dating/calendar.ts'
import { timeLine } from '../../../electron/analysis/dating/time-line.ts'
import { timeLine as contract } from '../../../shared-types/dating.ts'

type Plain = z.input<typeof contract.input>
const resolve = (input: Plain) => timeLine(contract.input.parse(input))
const event = (id: string) => ({ id, label: id })
const fact = (id: string, at: string, ...readings: [string | null, string | null][]) => ({
  id,
  event: at,
  label: id,
  readings: readings.map(([from, to]) => ({ from, to })),
  source: '',
})
const rule = (id: string, before: string, after: string, minDays: number, maxDays: number | null) => ({
  id,
  before,
  after,
  lead: { minDays, maxDays },
  label: id,
  source: '',
})
const ids = (some: readonly { id: string }[]) => some.map(({ id }) => id)

it('the travellers of Dechter, Meiri and Pearl', () => {
  // Artificial Intelligence 49 (1991) 61-95, example 1.1 and its d-graph (recalled): one leaves home 10 to 20 after the
  // origin and travels 30 to 40; he arrives 10 to 20 after the other left, who travels 40 to 50 and arrives at 60 to 70.
  const found = resolve({
    events: ['left', 'arrived', 'other left', 'other arrived'].map(event),
    facts: [fact('a', 'left', [isoDay(10), isoDay(20)]), fact('b', 'other arrived', [isoDay(60), isoDay(70)])],
    rules: [
      rule('c', 'left', 'arrived', 30, 40),
      rule('d', 'other left', 'arrived', 10, 20),
      rule('e', 'other left', 'other arrived', 40, 50),
    ],
  })
  const windows = found.events.map(({ from, to }) => [from, to])
  const wanted = [
    [10, 20],
    [40, 50],
    [20, 30],
    [60, 70],
  ]
  expect(windows).toEqual(wanted.map((pair) => pair.map(isoDay)))
  expect(ids(found.events[1]?.fromBecause ?? [])).toEqual(['a', 'c'])
  // The last day comes over the other one: arrived at 70 at the latest, left 40 before, 20 after that.
  expect(ids(found.events[1]?.toBecause ?? [])).toEqual(['b', 'e', 'd'])
})

describe('a car', () => {
  const car: Plain = {
    events: ['block cast', 'engine assembled', 'car built', 'first registered'].map(event),
    facts: [
      fact(
        'casting date',
        'block cast',
        ...['1953', '1963', '1973'].map((y): [string, string] => [`${y}-03-10`, `${y}-03-10`]),
      ),
      fact('build record', 'car built', ['1963-01-01', '1963-12-31']),
      fact('register', 'first registered', ['1963-06-02', '1963-06-02']),
    ],
    rules: [
      rule('cast before assembled', 'block cast', 'engine assembled', 1, 60),
      rule('assembled before built', 'engine assembled', 'car built', 1, 90),
      rule('built before registered', 'car built', 'first registered', 1, null),
    ],
  }

  it('its build is narrowed, with reasons, and the decade settled', () => {
    const found = resolve(car)
    expect(found).toMatchObject({ consistent: true, conflicts: [], setAside: [] })
    const built = found.events.find(({ id }) => id === 'car built')
    expect([built?.from, built?.to]).toEqual(['1963-03-12', '1963-06-01'])
    expect(ids(built?.fromBecause ?? [])).toEqual(['casting date', 'cast before assembled', 'assembled before built'])
    expect(ids(built?.toBecause ?? [])).toEqual(['register', 'built before registered'])
    expect(found.droppedReadings.map(({ reading }) => reading)).toEqual(['1953-03-10', '1973-03-10'])
  })

  it('a later engine is a conflict, smallest, and nothing else is blamed', () => {
    const late = fact('other casting date', 'block cast', ['1965-08-01', '1965-08-01'])
    const found = resolve({ ...car, facts: [...car.facts, late] })
    expect(found.consistent).toBe(false)
    expect(found.allConflictsFound).toBe(true)
    const conflicts = found.conflicts.map((set) => ids(set).sort().join(', ')).sort()
    expect(conflicts).toEqual([
      'assembled before built, build record, cast before assembled, other casting date',
      'assembled before built, built before registered, cast before assembled, other casting date, register',
      'casting date, other casting date',
    ])
    expect(ids(found.setAside)).toContain('other casting date')
  })

  it('rules that go in a ring are a conflict without any fact', () => {
    const ring = [rule('one', 'block cast', 'car built', 1, null), rule('two', 'car built', 'block cast', 1, null)]
    const found = resolve({ ...car, facts: [], rules: ring })
    expect(found.conflicts.map(ids)).toEqual([['one', 'two']])
  })

  it('open ends stay open', () => {
    const found = resolve({ events: [event('a')], facts: [fact('f', 'a', [null, '1970-01-01'])], rules: [] })
    expect(found.events[0]).toMatchObject({ from: null, to: '1970-01-01' })
  })

  it.each([
    [{ facts: [fact('f', 'gone', [null, null])] }, /add it or choose/],
    [{ facts: [fact('f', 'car built', ['1970-01-02', '1970-01-01'])] }, /exchange its two days/],
    [{ rules: [rule('r', 'car built', 'first registered', 5, 4)] }, /longer than the longest/],
    [{ events: [event('a'), event('a')], facts: [], rules: [] }, /give each its own/],
  ])('refuses what contradicts itself, with its cure: %#', (more, words) => {
    expect(() => resolve({ ...car, ...more })).toThrow(words)
  })
})

describe('against trying everything', () => {
  const DAYS = 6
  const names = ['a', 'b', 'c']
  const span = fc
    .tuple(fc.nat(DAYS - 1), fc.nat(2))
    .map(([from, more]): [number, number] => [from, Math.min(DAYS - 1, from + more)])
  const some = fc.record({
    facts: fc.array(fc.tuple(fc.constantFrom(...names), span), { maxLength: 4 }),
    rules: fc.array(
      fc.tuple(fc.constantFrom(...names), fc.constantFrom(...names), fc.integer({ min: -3, max: 3 }), fc.nat(2)),
      {
        maxLength: 4,
      },
    ),
  })

  it('the same days and the same smallest conflicts', () => {
    fc.assert(
      fc.property(some, ({ facts, rules }) => {
        // Every event lies in the days tried, so that trying them is complete.
        const frame = names.map((name): [string, [number, number]] => [name, [0, DAYS - 1]])
        const allFacts = [...frame, ...facts]
        const found = resolve({
          events: names.map(event),
          facts: allFacts.map(([name, [from, to]], at) => fact(`f${at}`, name, [isoDay(from), isoDay(to)])),
          rules: rules.map(([before, after, least, more], at) => rule(`r${at}`, before, after, least, least + more)),
          maxConflicts: 50,
        })
        const tests = [
          ...allFacts.map(([name, [from, to]], at) => ({
            id: `f${at}`,
            holds: (days: Record<string, number>) => (days[name] ?? 0) >= from && (days[name] ?? 0) <= to,
          })),
          ...rules.map(([before, after, least, more], at) => ({
            id: `r${at}`,
            holds: (days: Record<string, number>) => {
              const passed = (days[after] ?? 0) - (days[before] ?? 0)
              return passed >= least && passed <= least + more
            },
          })),
        ]
        const worlds = Array.from({ length: DAYS ** 3 }, (_, n) => ({
          a: n % DAYS,
          b: Math.floor(n / DAYS) % DAYS,
          c: Math.floor(n / DAYS ** 2),
        }))
        const good = worlds.filter((world) => tests.every(({ holds }) => holds(world)))
        expect(found.consistent).toBe(good.length > 0)
        if (good.length > 0) {
          for (const [at, name] of (['a', 'b', 'c'] as const).entries()) {
            const days = good.map((world) => world[name])
            expect([found.events[at]?.from, found.events[at]?.to]).toEqual([
              isoDay(Math.min(...days)),
              isoDay(Math.max(...days)),
            ])
          }
        }
        const bounds = [
          ...allFacts.map(([name, [from, to]]): Interval => ['origin', name, from, to]),
          ...rules.map(([before, after, least, more]): Interval => [before, after, least, least + more]),
        ]
        const smallest = smallestConflicts(bounds).map((set) =>
          set
            .map((at) => tests[at]?.id)
            .sort()
            .join(),
        )
        expect(found.conflicts.map((set) => ids(set).sort().join()).sort()).toEqual(smallest.sort())
        expect(found.allConflictsFound).toBe(true)
      }),
      { numRuns: 100 },
    )
  })
})

/** `from` to `to` takes at least and at most so many days. */
type Interval = [string, string, number, number]

/** Whether bounds can hold, by the closure of Floyd and Warshall: another way than the one tested. */
function canHold(bounds: readonly Interval[]): boolean {
  const names = ['origin', 'a', 'b', 'c']
  const d = names.map((_, i) => names.map((_, j) => (i === j ? 0 : Number.POSITIVE_INFINITY)))
  const tighten = (i: number, j: number, days: number) => {
    const row = d[i]
    if (row !== undefined) row[j] = Math.min(row[j] ?? 0, days)
  }
  for (const [from, to, least, most] of bounds) {
    tighten(names.indexOf(from), names.indexOf(to), most)
    tighten(names.indexOf(to), names.indexOf(from), -least)
  }
  for (const k of names.keys())
    for (const i of names.keys()) for (const j of names.keys()) tighten(i, j, (d[i]?.[k] ?? 0) + (d[k]?.[j] ?? 0))
  return names.every((_, i) => (d[i]?.[i] ?? 0) >= 0)
}

/** All smallest sets that cannot hold, by trying every subset. */
function smallestConflicts(bounds: readonly Interval[]): number[][] {
  const members = (mask: number) => bounds.flatMap((_, at) => (mask & (1 << at) ? [at] : []))
  const holds = Array.from({ length: 1 << bounds.length }, (_, mask) =>
    canHold(members(mask).flatMap((at) => [bounds[at] ?? ['a', 'a', 0, 0]])),
  )
  return [...holds.keys()]
    .filter((mask) => !holds[mask] && members(mask).every((at) => holds[mask ^ (1 << at)]))
    .map(members)
}
