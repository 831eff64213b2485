import { describe, expect, test } from 'vitest'
import { changesSince } from '../../electron/report/editions/changes-since.ts'
import { missingLines } from '../../electron/report/editions/readiness.ts'
import { agreement } from '../../electron/report/sections/identity.ts'
import { costBounds } from '../../electron/report/wording/costs.ts'
import { cameraTime, daysText, dayText } from '../../electron/report/wording/dates.ts'
import { bounds, figure, measuredValue, shareBounds, sizes } from '../../electron/report/wording/numbers.ts'
import { ownDimensionsWords } from '../../electron/report/wording/own-dimensions.ts'
import { placeSentence } from '../../electron/report/wording/sentences.ts'
import { declaredError, spotFigures } from '../../electron/report/wording/spot-figures.ts'
import { dimensionList } from '../../electron/sheets/dimension-list.ts'
import type { ReadingValue } from '../../shared-types/reading.ts'
import type { JournalEntry } from '../../shared-types/record.ts'
import { type LengthUnit, metricUnits, type ShownUnits } from '../../shared-types/units.ts'
import { findingFixture, recordFixture } from './content-fixture.ts'

describe('numbers', () => {
  test('thousands by narrow space, true minus, no negative nought', () => {
    expect(figure(1234567)).toBe('1\u202F234\u202F567')
    expect(figure(-12.5, 1)).toBe('\u221212.5')
    expect(figure(-0.01, 1)).toBe('0.0')
  })

  test('a value goes to the place of its uncertainty, two digits at most (JCGM 100:2008, 7.2.6)', () => {
    const printed = (value: number, uncertainty: number | null, unit: string, units: ShownUnits = metricUnits) =>
      measuredValue({ value, uncertainty, unit }, units)
    expect(printed(107.93, 0.4, 'mm')).toBe('107.9 ± 0.4\u202Fmm')
    expect(printed(412.3, 38, 'µm')).toBe('412 ± 38\u202Fµm')
    expect(printed(10.1234, 0.1234, 'mm')).toBe('10.12 ± 0.12\u202Fmm')
    expect(printed(4252, null, 'mm')).toBe('4\u202F252\u202Fmm, uncertainty not stated')
    // 25.4 mm in an inch, 25.4 µm in a mil, exact by the agreement of 1959.
    const inches: ShownUnits = { lengthUnit: 'in', coatingUnit: 'mil' }
    expect(printed(101.6, 0.2, 'mm', inches)).toBe('4.000 ± 0.008\u202Fin')
    expect(printed(412.3, 38, 'µm', inches)).toBe('16.2 ± 1.5\u202Fmil')
    expect(printed(645.16, 64.516, 'mm²', inches)).toBe('1.00 ± 0.10\u202Fin²')
    expect(printed(4252, null, 'mm', inches)).toBe('167.40\u202Fin, uncertainty not stated')
    expect(printed(12.5, 0.5, 'kg', inches)).toBe('12.5 ± 0.5\u202Fkg')
    expect(sizes([310, 25], 2, 'mm')).toBe('310 × 25 ± 2\u202Fmm')
    // 25.4 mm in an inch, exact by the agreement of 1959.
    expect(sizes([254], 2.54, 'in')).toBe('10.00 ± 0.10\u202Fin')
  })

  test('rounding never narrows bounds', () => {
    expect(shareBounds(20.9, 70.1)).toBe('20 – 71\u202F%')
    expect(bounds(3, 3, '%')).toBe('3\u202F%')
  })

  test('costs are two bounds, and what has no estimate is said', () => {
    const record = recordFixture()
    expect(costBounds(record)).toBe(
      'GBP\u202F400 – 1\u202F400, the sums of the least and of the most of 1 planned correction.',
    )
    const unpriced = record.corrections.map((row) => ({ ...row, state: 'planned' as const }))
    expect(costBounds({ ...record, corrections: unpriced })).toContain('1 planned correction has no estimate')
  })
})

test('a gauge’s declared error is said in full, and that there is none', () => {
  const [gauge] = recordFixture().gauges
  if (gauge === undefined) throw new Error('no gauge')
  expect(declaredError(gauge, metricUnits)).toBe('declared error 2\u202Fµm + 3\u202F% of the reading')
  // 2 µm are 0.0787 mil: a tenth would overstate the error by a quarter.
  expect(declaredError({ ...gauge, errorPercent: null }, { coatingUnit: 'mil', lengthUnit: 'in' })).toBe(
    'declared error 0.08\u202Fmil',
  )
  expect(declaredError({ ...gauge, errorUm: null, errorPercent: 2.5 }, metricUnits)).toBe(
    'declared error 2.5\u202F% of the reading',
  )
  expect(declaredError({ ...gauge, errorUm: null, errorPercent: null }, metricUnits)).toBe('error not declared')
})

test('what the car itself measures is listed, in the commission’s unit; nothing where nothing was given', () => {
  const record = recordFixture()
  const { dimensions } = dimensionList('coupe')
  expect(ownDimensionsWords(dimensions, record)).toBe('')
  const measured = { ...record.particulars, dimensions: { wheelbaseMm: 2510, lengthMm: 4254, screenRakeDegrees: 47.5 } }
  const words = ownDimensionsWords(dimensions, { ...record, particulars: measured })
  expect(words).toMatch(/^[A-Z].*4\u202F254\u202Fmm; [a-z].*2\u202F510\u202Fmm; [a-z].*47\.5°$/)
  const inches = { ...record.commission, lengthUnit: 'in' as const, names: 'us' as const }
  expect(ownDimensionsWords(dimensions, { particulars: measured, commission: inches })).toContain('98.82\u202Fin')
})

test('where a finding lies is said in distances from the centre line with their side, never below nought', () => {
  const at = (
    view: 'roof' | 'rear' | 'left',
    points: readonly (readonly [number, number])[],
    unit: LengthUnit = 'mm',
  ) =>
    placeSentence(
      findingFixture(1, 'roof-skin', {
        extent: { view, shape: 'line', points: points.map(([u, v]) => ({ u, v })) },
      }),
      unit,
    )
  expect(
    at('rear', [
      [-257, -549],
      [-115, -528],
    ]),
  ).toContain('115 to 257 to the left of the centre line, height 528 to 549, in mm as drawn on the plan')
  expect(
    at(
      'rear',
      [
        [-254, -508],
        [-127, -513.08],
      ],
      'in',
    ),
  ).toContain('5.0 to 10.0 to the left of the centre line, height 20.0 to 20.2, in inches as drawn on the plan')
  expect(
    at('roof', [
      [1200, -6],
      [1300, 174],
    ]),
  ).toContain('from 6 to the right to 174 to the left of the centre line')
  expect(
    at('roof', [
      [1200, 0],
      [1300, 174],
    ]),
  ).toContain('a line on the car seen from above, station 1\u202F200 to 1\u202F300, 0 to 174 to the left')
  expect(
    at('left', [
      [500, -600],
      [500, -600],
    ]),
  ).toContain('a line on the left side, station 500, height 600')
})

test('days are written out, never through a time zone', () => {
  expect(dayText('2026-11-09')).toBe('9 November 2026')
  expect(daysText(['2026-11-10T23:59:00.000Z', '2026-11-09T00:00:00.000Z'])).toBe('9 and 10 November 2026')
  expect(cameraTime('2026-11-09T10:42:16', '-03:30')).toBe('9 November 2026, 10:42:16 (UTC\u221203:30)')
  expect(cameraTime(null, null)).toBe('the camera gave no time')
})

test('a reading beyond the range is a least value, a failed one is counted apart', () => {
  const figures = spotFigures(
    [{ kind: 'value', um: 160 }, { kind: 'value', um: 170 }, { kind: 'more than', um: 2000 }, { kind: 'no reading' }],
    'µm',
  )
  expect(figures).toMatchObject({
    count: '3 + 1 failed',
    median: '170',
    mean: 'at least 777',
    halfRange: 'at least 920',
  })
  expect(figures.values).toBe('160; 170; more than 2\u202F000; no reading')
  // Without an upper bound the first may be thinner than both others, or thicker: 600 is the least the median can be.
  const low: readonly ReadingValue[] = [
    { kind: 'more than', um: 500 },
    { kind: 'value', um: 600 },
    { kind: 'value', um: 700 },
  ]
  expect(spotFigures(low, 'µm')).toMatchObject({ median: 'at least 600', halfRange: 'at least 50' })
  expect(spotFigures([{ kind: 'no reading' }], 'µm')).toMatchObject({ mean: '—', median: '—', count: '0 + 1 failed' })
})

test('numbers on paper and on the car agree but for spaces and case', () => {
  const [first, second, third, fourth] = recordFixture().carNumbers.map(agreement)
  expect([first, second, third, fourth]).toEqual(['agrees', 'differs', 'not found', 'not looked for'])
})

test('a question mark in a number as read is one letter that could not be read, and no agreement of it', () => {
  const [row] = recordFixture().carNumbers
  if (row === undefined) throw new Error('The fixture has no number.')
  const of = (asRead: string) =>
    agreement({ ...row, howRead: 'read character by character', asRead, onPaper: 'L17 20934' })
  expect(of('L17 2?934')).toBe('agrees as far as read')
  expect(of('L17 2?984')).toBe('differs')
  expect(of('????????')).toBe('not legible')
})

describe('changes since an edition', () => {
  const entry = (number: number, before: unknown, after: unknown): JournalEntry => ({
    number,
    at: '2026-11-09T10:00:00.000Z',
    who: 'the surveyor',
    command: 'finding.amend',
    label: '',
    hash: '',
    undoes: null,
    changes: [{ register: 'findings', key: '3', before, after }],
  })

  test('the first state before is set against the last state after', () => {
    const entries = [
      entry(1, { severity: 'slight' }, { severity: 'marked' }),
      entry(2, { severity: 'marked' }, { severity: 'severe' }),
    ]
    expect(changesSince(entries, String, metricUnits)).toEqual(['Finding F\u202F3: severity “slight” → “severe”.'])
  })

  test('lengths and thicknesses are told in the units of the record', () => {
    const entries = [entry(1, { depthMm: 25.4, readUm: [254, 300] }, { depthMm: 31.75, readUm: [254] })]
    expect(changesSince(entries, String, metricUnits)).toEqual([
      'Finding F\u202F3: depth, mm 25.4 → 31.75; read, µm 254, 300 → 254.',
    ])
    expect(changesSince(entries, String, { coatingUnit: 'mil', lengthUnit: 'in' })).toEqual([
      'Finding F\u202F3: depth, in 1 → 1.25; read, mil 10, 11.811 → 10.',
    ])
  })

  test('what was changed and changed back is left out', () => {
    expect(
      changesSince(
        [
          entry(1, { severity: 'slight' }, { severity: 'marked' }),
          entry(2, { severity: 'marked' }, { severity: 'slight' }),
        ],
        String,
        metricUnits,
      ),
    ).toEqual([])
    expect(
      changesSince(
        [entry(1, null, { severity: 'slight' }), entry(2, { severity: 'slight' }, null)],
        String,
        metricUnits,
      ),
    ).toEqual([])
  })
})

test('what a report still lacks is named with the place where to give it', () => {
  const record = recordFixture()
  const bare = { ...record, commission: { ...record.commission, client: ' ', effectiveDate: null } }
  const lines = missingLines(bare).map(({ line, place }) => `${line} ${place}`)
  expect(lines).toContain('R03 Identity')
  expect(lines).toContain('R06 Identity')
  expect(missingLines(record).map(({ missing }) => missing)).not.toContain('the client')
})

test('each leads to the entry, and the field of it, that lacks it', () => {
  const record = recordFixture()
  const [claim] = record.claims
  const [spot] = record.spots
  const [visit] = record.visits
  if (claim === undefined || spot === undefined || visit === undefined) throw new Error('a register is empty')
  const lacking = missingLines({
    ...record,
    commission: { ...record.commission, review: '' },
    visits: [visit, { ...visit, number: 7, light: ' ' }],
    claims: [
      { ...claim, question: 'q', ifTrue: 'a', ifNot: 'b' },
      { ...claim, number: 8, question: 'q', ifTrue: 'a', ifNot: '' },
    ],
    spots: [{ ...spot, number: 9, gauge: 3 }],
    gaugeChecks: [],
  })
  const at = (missing: string) => lacking.find((line) => line.missing === missing)?.at
  expect(at('who reviewed the report before issue')).toEqual({ kind: 'commission', key: '', field: 'review' })
  expect(at('place and light of every examination')).toEqual({ kind: 'visit', key: '7', field: 'light' })
  expect(at('question and both propositions of every claim')).toEqual({ kind: 'claim', key: '8', field: 'ifNot' })
  expect(at('a check of every gauge used')).toEqual({ kind: 'gaugeCheck', key: '3' })
})
