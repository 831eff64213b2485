import { beforeAll, describe, expect, it } from 'vitest'
import { datedThingsOf, timeLineFrom } from '../../electron/use-cases/time-line.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { composed, has, textOf } from './composing.ts'
import { contentFixture, recordFixture } from './content-fixture.ts'

describe.skipIf(!has('pdftotext'))('the section of dates', () => {
  let text: string
  const plain = recordFixture()
  const record: RecordView = {
    ...plain,
    particulars: { ...plain.particulars, builtFrom: '1960-03-01', builtTo: '1960-05-26' },
    visits: plain.visits.map((visit, at) => ({ ...visit, odometer: at === 0 ? '61 208 miles' : '' })),
    parts: [
      {
        partId: 'ignition-coil',
        state: 'later fitment',
        numberAsRead: '',
        dateAsRead: '1974',
        marks: '',
        expected: '',
        learned: 'seen',
        exhibits: [],
        countsWith: null,
        fastening: null,
        note: '',
      },
    ],
  }
  beforeAll(async () => {
    const timeLine = timeLineFrom(record, datedThingsOf(record, [], null), null)
    text = textOf((await composed(contentFixture(record, { timeLine }))).path)
  })

  it('says when the car was built, draws the line and tells every date in a table', () => {
    expect(text).toMatch(/Dates/)
    expect(text).toMatch(/Built 1 March to 26 May 1960: 87 days, by everything dated together/)
    expect(text).toMatch(/Time line of everything dated/)
    expect(text).toMatch(/said of it alone\s+left by everything/)
    expect(text).toMatch(/Ignition coil\s+1974\s+1974\s+1974\s+later than the car/)
    expect(text).toMatch(/One odometer reading with a day/)
    expect(text).toMatch(/No conflict among the dates/)
  })
})
