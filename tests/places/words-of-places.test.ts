import { describe, expect, it } from 'vitest'
import { builtText } from '../../renderer/places/identity/ParticularsLines.tsx'
import { typedInstant } from '../../renderer/places/identity/TimeField.tsx'
import { boundsText } from '../../renderer/places/judgement/bounds-text.ts'
import { measuredText } from '../../renderer/places/measuring/measured-text.ts'
import { costEntryOf, costOf } from '../../renderer/places/putting-right/cost-entry.ts'
import { whenNone } from '../../renderer/places/putting-right/when-none.ts'
import { consentsOf, fileNameOf, newRecord } from '../../renderer/places/records/new-record.ts'
import { commission, particulars, visitDraft } from '../../shared-types/car.ts'
import { requests } from '../../shared-types/contract.ts'
import type { Measurement } from '../../shared-types/exhibit.ts'
import { metricUnits } from '../../shared-types/units.ts'
import { intrusiveStep } from '../../shared-types/words.ts'

const habits = {
  examiner: 'An examiner',
  examinerRole: '',
  examinerContact: '',
  examinerCompetence: '',
  independence: '',
  names: 'uk',
  lengthUnit: 'mm',
  coatingUnit: 'µm',
  currency: 'GBP',
  retentionYears: 10,
} as const
const began = () => newRecord('with openings', new Date('2026-05-14T09:42:00.000Z'), habits)
const titled = (title: string) => ({ ...began(), particulars: { ...began().particulars, title } })

describe('a new record', () => {
  it('asks for a title and is otherwise what the contract takes', () => {
    const form = titled('Sedge coupé, 1960')
    expect(particulars.safeParse(began().particulars).success).toBe(false)
    expect(particulars.parse(form.particulars).title).toBe('Sedge coupé, 1960')
    expect(commission.parse(form.commission).level).toBe('with openings')
    expect(visitDraft.parse(form.visit).beganAt).toBe('2026-05-14T09:42:00.000Z')
  })
  it('has a file name the contract takes, whatever the title is', () => {
    const fileName = requests['records.create'].input.shape.fileName
    for (const title of ['a/b\\c:d*e?f"g<h>i|j', '..', '\u0000\u001b', 'x'.repeat(400), '車 🚗 Sedge']) {
      expect(fileName.safeParse(fileNameOf(titled(title))).success, title).toBe(true)
    }
  })
  it('records leave that was not given as not given, for all nine steps', () => {
    const consents = consentsOf({ ...began(), leave: ['wipe'], leaveBy: 'The owner' })
    expect(consents.map((consent) => consent.step)).toEqual(intrusiveStep.options)
    expect(consents.filter((consent) => consent.given)).toEqual([
      { step: 'wipe', given: true, by: 'The owner', on: '2026-05-14', done: '' },
    ])
  })
})

describe('numbers as printed', () => {
  const measured = (value: number, uncertainty: number | null): Measurement => ({
    what: '',
    value,
    unit: 'mm',
    uncertainty,
    method: '',
    instrument: '',
  })
  it('say that an uncertainty is not stated, and carry value and uncertainty to the same place', () => {
    expect(measuredText(measured(1221.5, null), metricUnits)).toBe('1\u202f221.5\u202fmm, uncertainty not stated')
    expect(measuredText(measured(101, 0.2), metricUnits)).toBe('101.0 ± 0.2\u202fmm (k = 2)')
  })
  it('are told in inches where the record is', () => {
    // 25.4 mm in an inch, exact by the agreement of 1959.
    const inches = { lengthUnit: 'in', coatingUnit: 'µm' } as const
    expect(measuredText(measured(101.6, 0.2), inches)).toBe('4.000 ± 0.008\u202fin (k = 2)')
    expect(measuredText(measured(254, null), inches)).toBe('10.00\u202fin, uncertainty not stated')
    expect(measuredText({ ...measured(120, 4), unit: 'µm' }, inches)).toBe('120 ± 4\u202fµm (k = 2)')
  })
  it('bounds are rounded outwards, so that the printed ones hold the computed ones', () => {
    expect(boundsText({ lowPercent: 58.9, highPercent: 70.1 })).toBe('58 – 71\u202f%')
    expect(boundsText({ lowPercent: 0.1 + 0.2 - 0.3, highPercent: 100.00000000001 })).toBe('0 – 100\u202f%')
    expect(boundsText({ lowPercent: 75, highPercent: 75 })).toBe('75\u202f%')
  })
  it('a cost is a range or nothing', () => {
    const empty = costEntryOf(null)
    expect(costOf(empty)).toBeNull()
    expect(() => costOf({ ...empty, likely: 100 })).toThrow(/range/)
    expect(() => costOf({ ...empty, low: 5, likely: 4, high: 6 })).toThrow(/above/)
    expect(costOf({ ...empty, low: 0, likely: 40, high: 90 })).toEqual({ ...empty, low: 0, likely: 40, high: 90 })
  })
})

describe('times as typed', () => {
  const now = new Date('2026-05-14T09:42:07.000Z')
  it('reads a local time back as the same minute, and refuses what is none', () => {
    const read = typedInstant('2026-05-14 10:42', now)
    expect(read).not.toBeNull()
    const shown = new Date(read ?? 0)
    expect([shown.getFullYear(), shown.getMonth(), shown.getDate()]).toEqual([2026, 4, 14])
    expect([shown.getHours(), shown.getMinutes()]).toEqual([10, 42])
    expect(typedInstant('now', now)).toBe(now.toISOString())
    for (const wrong of ['2026-13-14 10:42', '14/05/2026', '', '10:42']) expect(typedInstant(wrong, now)).toBeNull()
  })
  it('says each way a build interval can be known', () => {
    expect(builtText({ builtFrom: null, builtTo: null })).toBe('not known')
    expect(builtText({ builtFrom: '1960-03-01', builtTo: null })).toBe('not before 1 March 1960')
    expect(builtText({ builtFrom: '1960-03-01', builtTo: '1960-05-26' })).toBe('1 March 1960 to 26 May 1960')
  })
})

describe('the ledger while it is empty', () => {
  it('sends to the walk-round only where nothing was found yet', () => {
    expect(whenNone(0)).toContain('Add findings in the walk-round first')
    expect(whenNone(1)).toBe('No correction yet. 1 finding is in the record; K plans what puts it right.')
    expect(whenNone(24)).toBe('No correction yet. 24 findings are in the record; K plans what puts them right.')
  })
})
