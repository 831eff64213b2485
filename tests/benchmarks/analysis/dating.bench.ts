import { dayOf, isoDay } from '../../../electron/analysis/dating/calendar.ts'
import { timeLine } from '../../../electron/analysis/dating/time-line.ts'
import { timeLine as contract, type TimeLineInput } from '../../../shared-types/dating.ts'

const ROUNDS = 21

/**
 * 300 dated facts of one car: each part with a casting code of one figure for the year (five decades), an assembly and the
 * build between them by rules; papers bound the build. With `late`, one part is dated after the build.
 */
function carOf(facts: number, late: boolean): TimeLineInput {
  const built = dayOf(1966, 5, 14)
  const parts = Array.from({ length: facts - 2 }, (_, part) => part)
  return contract.input.parse({
    events: [
      ...parts.flatMap((part) => [
        { id: `cast ${part}`, label: `part ${part} cast` },
        { id: `assembled ${part}`, label: `part ${part} assembled` },
      ]),
      { id: 'built', label: 'car built' },
      { id: 'registered', label: 'car first registered' },
    ],
    facts: [
      ...parts.map((part) => ({
        id: `code ${part}`,
        event: `cast ${part}`,
        label: `code of part ${part}`,
        readings: [-20, -10, 0, 10, 20].map((years) => {
          const from = built - 20 - ((part * 37) % 130) + Math.round(years * 365.25) + (late && part === 7 ? 400 : 0)
          return { from: isoDay(from), to: isoDay(from + 6) }
        }),
        source: '',
      })),
      {
        id: 'record',
        event: 'built',
        label: 'record',
        readings: [{ from: '1966-01-01', to: '1966-12-31' }],
        source: '',
      },
      {
        id: 'register',
        event: 'registered',
        label: 'register',
        readings: [{ from: '1966-06-20', to: '1966-06-20' }],
        source: '',
      },
    ],
    rules: [
      ...parts.flatMap((part) => [
        rule(`cast ${part}`, `assembled ${part}`, 1, 120),
        rule(`assembled ${part}`, 'built', 1, 60),
      ]),
      rule('built', 'registered', 1, 365),
    ],
  })
}

const rule = (before: string, after: string, minDays: number, maxDays: number) => ({
  id: `${before} to ${after}`,
  before,
  after,
  lead: { minDays, maxDays },
  label: `${before} before ${after}`,
  source: '',
})

function median(act: () => unknown): number {
  const times = Array.from({ length: ROUNDS }, () => {
    const began = performance.now()
    act()
    return performance.now() - began
  })
  return times.toSorted((one, other) => one - other)[Math.floor(ROUNDS / 2)] ?? Number.NaN
}

/** Time to resolve a time line of 300 dated facts, with and without a conflict. */
export function timeLines() {
  return [false, true].map((late) => {
    const input = carOf(300, late)
    const found = timeLine(input)
    if (found.consistent === late) throw new Error('The time line of the benchmark did not come out as made.')
    return {
      what: `time line of 300 dated facts ${late ? `with ${found.conflicts.length} conflicts` : 'without conflict'}, ms`,
      ours: median(() => timeLine(input)),
      reference: null,
      ratio: null,
      aim: 'under 20',
    }
  })
}
