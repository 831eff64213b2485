import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { spotSummary } from '../../electron/analysis/statistics/spot-summary.ts'
import { declaredErrorUm, differenceOf } from '../../renderer/places/coating/gauge-difference.ts'
import { exampleLine, lineFrom, readingsFrom } from '../../renderer/places/coating/reading-entry.ts'
import { summaryOf } from '../../renderer/places/coating/spot-summary.ts'
import { changesBetween } from '../../renderer/places/history/changes-between.ts'
import { differencesOf, fieldName, rowName } from '../../renderer/places/history/plain-words.ts'
import { agreementOf } from '../../renderer/places/identity/number-agreement.ts'
import { filteredRows, groupCounts, partRows } from '../../renderer/places/parts/part-rows.ts'
import { boundsOf } from '../../renderer/places/putting-right/cost-bounds.ts'
import type { PartDefinition, PartEntry } from '../../shared-types/part.ts'
import type { ReadingValue } from '../../shared-types/reading.ts'
import { metricUnits } from '../../shared-types/units.ts'

const read = 'read character by character' as const

describe('a number as read against the number on paper', () => {
  it('takes a question mark for one letter that could not be read, which neither agrees nor differs', () => {
    const of = (asRead: string, onPaper: string) => agreementOf({ howRead: read, asRead, onPaper })
    expect(of('L17 2?93?', 'L17 20934')).toEqual({
      word: 'agrees as far as read',
      detail: '6 of 8 letters; 2 could not be read',
    })
    expect(of('L17 2?98?', 'L17 20934').detail).toBe('letter 7: 3 on paper, 8 as read')
    expect(of('L17 2093?', 'L17 209')).toMatchObject({ word: 'differs', detail: '2 letters more as read' })
    expect(of('???', 'B2 5').word).toBe('not read on the car')
  })

  it('agrees when only spaces differ, spaces of every kind', () => {
    expect(agreementOf({ howRead: read, asRead: 'SC 604\u202f11387', onPaper: 'SC604 11387' }).word).toBe('agrees')
  })
  it('differs by one letter, and says which', () => {
    const said = agreementOf({ howRead: read, asRead: 'L17 20984', onPaper: 'L17 20934' })
    expect(said).toEqual({ word: 'differs', detail: 'letter 7: 3 on paper, 8 as read' })
  })
  it('differs by length, and says by how much and where', () => {
    expect(agreementOf({ howRead: read, asRead: 'V3 041', onPaper: 'V3 0412' }).detail).toBe('1 letter more on paper')
    expect(agreementOf({ howRead: read, asRead: 'V3 0412', onPaper: 'V3 04' }).detail).toBe('2 letters more as read')
  })
  it('keeps capitals apart and says so', () => {
    const said = agreementOf({ howRead: read, asRead: 'b2', onPaper: 'B2' })
    expect(said.word).toBe('differs')
    expect(said.detail).toContain('only in capitals')
  })
  it('never takes what was told, or is not there, for a reading', () => {
    expect(agreementOf({ howRead: 'told', asRead: 'B2', onPaper: 'B2' }).word).toBe('not read on the car')
    expect(agreementOf({ howRead: 'from paper', asRead: 'B2', onPaper: 'B2' }).word).toBe('not read on the car')
    expect(agreementOf({ howRead: 'not found', asRead: 'B2', onPaper: 'B2' }).word).toBe('not found')
    expect(agreementOf({ howRead: 'not looked for', asRead: '', onPaper: 'B2' }).word).toBe('not looked for')
    expect(agreementOf({ howRead: read, asRead: ' ', onPaper: 'B2' }).word).toBe('not read on the car')
    expect(agreementOf({ howRead: read, asRead: 'B2', onPaper: '' }).word).toBe('nothing on paper')
  })
})

const value = (um: number): ReadingValue => ({ kind: 'value', um })
const moreThan = (um: number): ReadingValue => ({ kind: 'more than', um })

describe('the summary of a spot', () => {
  it('gives mean, median and half the range of plain values', () => {
    expect(summaryOf([1640, 1910, 1480].map(value))).toEqual({
      n: 3,
      failed: 0,
      mean: { um: 5030 / 3, orMore: false },
      median: { um: 1640, orMore: false },
      spread: { um: 215, orMore: false },
    })
  })
  it('keeps the median exact while a value without an upper bound cannot move it', () => {
    const said = summaryOf([value(100), value(120), moreThan(1500)])
    expect(said.median).toEqual({ um: 120, orMore: false })
    expect(said.mean?.orMore).toBe(true)
    expect(said.spread).toEqual({ um: 700, orMore: true })
  })
  it('makes the median a lower bound where such a value decides it', () => {
    expect(summaryOf([value(100), moreThan(1500)]).median).toEqual({ um: 800, orMore: true })
    expect(summaryOf([moreThan(500), value(600), value(700)]).median).toEqual({ um: 600, orMore: true })
  })
  it('counts a failed reading apart and makes no number of it', () => {
    expect(summaryOf([{ kind: 'no reading' }])).toEqual({ n: 0, failed: 1, mean: null, median: null, spread: null })
    expect(summaryOf([value(90), { kind: 'no reading' }]).spread).toBeNull()
  })
})

describe('screen, report and command line', () => {
  const anyValue: fc.Arbitrary<ReadingValue> = fc.oneof(
    fc.integer({ min: 0, max: 3000 }).map(value),
    fc.integer({ min: 0, max: 3000 }).map(moreThan),
    fc.constant<ReadingValue>({ kind: 'no reading' }),
  )
  it('say the same of a spot, whatever was read', () => {
    fc.assert(
      fc.property(fc.array(anyValue, { minLength: 1, maxLength: 10 }), (values) => {
        const shown = summaryOf(values)
        const computed = spotSummary({ values, gauge: null })
        expect(shown.n).toBe(computed.n + computed.saturated)
        expect(shown.failed).toBe(computed.failed)
        expect(shown.median?.um ?? null).toBe(computed.medianUm)
        expect(shown.median?.orMore ?? false).toBe(computed.medianAtLeast)
        expect(shown.spread?.um ?? null).toBe(computed.halfRangeUm)
        expect(Math.abs((shown.mean?.um ?? 0) - (computed.meanUm ?? 0))).toBeLessThan(1e-9)
        expect(shown.mean?.orMore ?? computed.atLeast).toBe(computed.atLeast)
      }),
    )
  })
})

describe('readings as they are written', () => {
  it('keeps more-than and no-reading', () => {
    expect(readingsFrom('212 198,5 >1500 -', 'µm')).toEqual({
      values: [value(212), value(198.5), moreThan(1500), { kind: 'no reading' }],
    })
  })
  it('takes a mil as 25.4 µm (one inch is 25.4 mm by the agreement of 1959)', () => {
    expect(readingsFrom('10', 'mil')).toEqual({ values: [value(254)] })
  })
  it('comes back as it was written', () => {
    const said = readingsFrom('4.2 >60 - 12', 'mil')
    expect('values' in said && lineFrom(said.values, 'mil')).toBe('4.2 >60 - 12')
  })
  it('shows how values are written by an example that can be read, in either unit', () => {
    expect(exampleLine('µm')).toBe('212 198 >1500 -')
    expect(exampleLine('mil')).toBe('8.35 7.8 >59.06 -')
    for (const unit of ['µm', 'mil'] as const) {
      expect(readingsFrom(exampleLine(unit), unit)).toHaveProperty('values')
      expect(readingsFrom('', unit)).toEqual({
        refused: expect.stringContaining(exampleLine(unit).split(' >')[0] ?? '?'),
      })
    }
    expect(readingsFrom('3938', 'mil')).toEqual({ refused: expect.stringMatching(/3\u202f937\.0 mil/) })
  })
  it('refuses what is no thickness, eleven values, none, and a wrong unit', () => {
    for (const line of ['', '12 thick', '-5', '1 2 3 4 5 6 7 8 9 10 11', '100001', '1e3']) {
      expect(readingsFrom(line, 'µm'), line).toHaveProperty('refused')
    }
  })
})

describe('a gauge against a shim', () => {
  it('has the declared error a + b·t', () => {
    expect(declaredErrorUm({ errorUm: 2, errorPercent: 3 }, 500)).toBeCloseTo(17, 12)
    expect(declaredErrorUm({ errorUm: null, errorPercent: null }, 500)).toBeNull()
  })
  it('passes at the limit and fails beyond it', () => {
    const gauge = { errorUm: 2, errorPercent: 3 }
    expect(differenceOf({ shimUm: 100.1, readUm: [105.103] }, gauge).word).toBe('within the declared error')
    expect(differenceOf({ shimUm: 100, readUm: [104, 108] }, gauge).word).toBe('outside the declared error')
    expect(differenceOf({ shimUm: 100, readUm: [90] }, { errorUm: null, errorPercent: null }).word).toBe(
      'error not declared',
    )
  })
})

describe('cost bounds', () => {
  it('add low ends and high ends apart and count what has no cost', () => {
    const cost = (low: number, high: number, pricedOn: string | null) => ({
      cost: { low, likely: (low + high) / 2, high, basis: '', pricedOn },
    })
    const rows = [cost(100, 300, '2026-03-01'), { cost: null }, cost(50, 60, '2026-01-01')]
    expect(boundsOf(rows)).toEqual({
      corrections: 3,
      priced: 2,
      low: 150,
      high: 360,
      pricedFrom: '2026-01-01',
      pricedTo: '2026-03-01',
    })
  })
})

describe('the parts register', () => {
  const part = (id: string, group: string): PartDefinition => ({
    id,
    group,
    us: `US ${id}`,
    uk: `UK ${id}`,
    identifyBy: [],
    check: '',
    cautions: [],
    travelsWith: null,
    replacedInService: 'seldom',
    carried: 'every car',
    bodies: null,
  })
  const entry = { partId: 'dynamo', state: 'not determined', numberAsRead: 'C39', dateAsRead: '' } as PartEntry
  const rows = partRows([part('dynamo', 'electrical'), part('lamp.L', 'lamps'), part('lamp.R', 'lamps')], [entry], 'uk')
  const all = { group: '', text: '', state: 'any', onlyOpen: false } as const

  it('holds a part without an entry for not seen', () => {
    expect(rows.map((row) => row.state)).toEqual(['not determined', 'not seen', 'not seen'])
    expect(groupCounts(rows)).toEqual([
      { group: 'electrical', all: 1, seen: 1, notSeen: 0 },
      { group: 'lamps', all: 2, seen: 0, notSeen: 2 },
    ])
  })
  it('keeps a row that did not change as the same object', () => {
    const definitions = rows.map((row) => row.definition)
    const amended = { ...entry, state: 'reproduction' } as PartEntry
    const again = partRows(definitions, [amended], 'uk', rows)
    expect(again.map((row, place) => row === rows[place])).toEqual([false, true, true])
    expect(again[0]?.state).toBe('reproduction')
  })
  it('is filtered by group, text, state and what is open', () => {
    const ids = (filter: Partial<Parameters<typeof filteredRows>[1]>) =>
      filteredRows(rows, { ...all, ...filter }).map((row) => row.definition.id)
    expect(ids({ group: 'lamps' })).toEqual(['lamp.L', 'lamp.R'])
    expect(ids({ text: 'c39' })).toEqual(['dynamo'])
    expect(ids({ state: 'not seen' })).toEqual(['lamp.L', 'lamp.R'])
    expect(ids({ onlyOpen: true })).toHaveLength(3)
  })
})

describe('the journal in words', () => {
  it('names rows and fields as a reader would', () => {
    expect(rowName('findings', '3')).toBe('finding F 3')
    expect(rowName('commission', 'the')).toBe('commission')
    expect(rowName('panels', 'roof-skin')).toBe('panel roof-skin')
    expect(fieldName('sizeUncertaintyMm', metricUnits)).toBe('size uncertainty, mm')
  })
  it('says what changed and nothing else, and leaves no blank', () => {
    expect(differencesOf({ note: '', severity: 'slight' }, { note: 'soft', severity: 'slight' }, metricUnits)).toEqual([
      { field: 'note', before: 'blank', after: 'soft' },
    ])
    expect(differencesOf({ depthMm: 4 }, { depthMm: null }, metricUnits)).toEqual([
      { field: 'depth, mm', before: '4', after: 'not stated' },
    ])
    const inches = { coatingUnit: 'mil', lengthUnit: 'in' } as const
    expect(differencesOf({ readUm: [254] }, { readUm: [254, 300] }, inches)).toEqual([
      { field: 'read, mil', before: '10', after: '10, 11.811' },
    ])
    expect(differencesOf(null, { values: [{ kind: 'value', um: 127 }] }, inches)).toEqual([
      { field: 'values', before: 'not there', after: 'kind value, thickness, mil 5' },
    ])
    expect(differencesOf(null, { depthMm: 4, note: '', exhibits: [] }, metricUnits)).toEqual([
      { field: 'depth, mm', before: 'not there', after: '4' },
    ])
  })
  it('finds the net change between two journal rows', () => {
    const row = (number: number, key: string, before: unknown, after: unknown) => ({
      number,
      at: '',
      who: '',
      command: '',
      label: '',
      hash: '',
      undoes: null,
      changes: [{ register: 'findings' as const, key, before, after }],
    })
    const entries = [row(4, '2', { a: 1 }, null), row(3, '1', { a: 2 }, { a: 1 }), row(2, '1', { a: 1 }, { a: 2 })]
    expect(changesBetween(entries, 1, 4)).toEqual([
      { register: 'findings', key: '2', before: { a: 1 }, after: null, by: [4] },
    ])
    expect(changesBetween(entries, 1, 2)).toHaveLength(1)
    expect(changesBetween(entries, 4, 4)).toEqual([])
    const issued = {
      ...row(5, '1', null, { number: 1 }),
      changes: [{ register: 'editions' as const, key: '1', before: null, after: {} }],
    }
    expect(changesBetween([issued], 4, 5)).toEqual([])
  })
})
