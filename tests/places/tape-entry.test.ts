import { describe, expect, it } from 'vitest'
import { entryOfKept, entryOfTaken } from '../../renderer/places/measuring/tape/entry-of-taken.ts'
import { newEntry, type TapeEntry } from '../../renderer/places/measuring/tape/tape-entry.ts'
import { tapeAsked } from '../../renderer/places/measuring/tape/tape-questions.ts'
import { type Exhibit, exhibit as exhibitForm } from '../../shared-types/exhibit.ts'
import type { TapeKind, TapeTaken } from '../../shared-types/tape-question.ts'
import { metricUnits, type ShownUnits } from '../../shared-types/units.ts'

const typed: readonly (readonly [TapeKind, Partial<TapeEntry>])[] = [
  [
    'stud circle',
    { studs: '5', step1: '67.1 67.2', step2: '108.7', goodTo: '0.3', tell: 'sedge/stud-circle', where: 'left hub' },
  ],
  ['drum or disc', { readings: '229.1 229.2', sizes: '228.6 230.1\nnine inches 228.6 231', goodTo: '0.05' }],
  [
    'gaps',
    {
      of: 'flush',
      left: '-1 0 1.5',
      right: '1 2 3 4',
      places: '0 100 200 300',
      goodTo: '0.2',
      jointId: 'front-door+front-side',
    },
  ],
  ['gaps', { left: '3 4 5', goodTo: '0.2' }],
  ['diagonals', { first: '1500', second: '1502.5', width: '900', length: '1200', limit: '3', goodTo: '1' }],
  ['diagonals', { first: '1500', second: '1502.5', width: '900', length: '1200', goodTo: '1' }],
  ['trilateration', { points: 'A 0 0 500\nrear eye 2 0 800 640.3\n1000 0 670.8', goodTo: '1.5' }],
  [
    'sheet thickness',
    { travelTime: '0.5', uTime: '0.005', echoToEcho: 'yes', paint: '150', uPaint: '10', nominal: '1.2' },
  ],
  ['weld pitch', { readings: '38 40 39', low: '30', high: '50', goodTo: '0.5' }],
  ['repeated', { readings: '10.1 10.4 9.9', low: '9', goodTo: '0.05' }],
]

function taken(kind: TapeKind, entry: TapeEntry, units: ShownUnits): TapeTaken {
  const asked = tapeAsked(kind, entry, units)
  if (!('taken' in asked)) throw new Error(JSON.stringify(asked))
  return asked.taken
}

const inches: ShownUnits = { lengthUnit: 'in', coatingUnit: 'mil' }

/** A size without a name is named by its row, in the unit of that row. */
const plain = (question: unknown): unknown =>
  JSON.parse(JSON.stringify(question), (key, value) =>
    key === 'label' ? String(value).replace(/^[\d.]+ to [\d.]+$/, 'no name') : value,
  )

describe('readings opened again', () => {
  const cases = typed.flatMap(([kind, entry]) => [metricUnits, inches].map((units) => ({ kind, units, entry })))
  it.each(cases)(
    '$kind typed in mm, opened in $units.lengthUnit, ask just what they asked',
    ({ kind, units, entry }) => {
      const first = taken(kind, { ...newEntry(kind, ''), ...entry }, metricUnits)
      const { question, ...around } = taken(kind, entryOfTaken(first, units), units)
      expect(around).toEqual({ tell: first.tell, where: first.where })
      expect(plain(question)).toEqual(plain(first.question))
    },
  )

  it('typed in inches and mils are opened as they were typed, and kept as what they are in metric units', () => {
    const typedInches = { travelTime: '0.5', uTime: '0.005', paint: '4.25', uPaint: '0.1', nominal: '0.048' }
    const read = taken('sheet thickness', { ...newEntry('sheet thickness', ''), ...typedInches }, inches)
    // 25.4 mm in an inch and 25.4 µm in a mil, exact by the agreement of 1959.
    expect(read.question).toMatchObject({ paintUm: 107.95, uPaintUm: 2.54, nominalMm: 1.2192 })
    expect(entryOfTaken(read, inches)).toMatchObject(typedInches)
    const third = taken('repeated', { ...newEntry('repeated', ''), readings: '1/3 2-3/4', goodTo: '1/32' }, inches)
    expect(taken('repeated', entryOfTaken(third, inches), inches)).toEqual(third)
  })

  const exhibit = (caption: string): Exhibit =>
    exhibitForm.parse({
      number: 4,
      kind: 'measurement',
      caption,
      madeBy: 'Ada Quill',
      place: '',
      panelId: null,
      view: null,
      at: null,
      inReport: true,
      photograph: null,
      picked: null,
      addedAt: '2026-05-14T10:00:00.000Z',
      measurement: {
        what: 'Stud circle, left hub',
        value: 101.6,
        unit: 'mm',
        uncertainty: 0.2,
        method: '',
        instrument: 'calliper',
      },
    })
  const kept = (caption: string, captionIsOwn = false) => {
    const read = taken('stud circle', { ...newEntry('stud circle', ''), ...typed[0]?.[1] }, metricUnits)
    return entryOfKept(exhibit(caption), read, captionIsOwn, metricUnits)
  }

  it('have what was measured and where apart again, with instrument and maker', () => {
    expect(kept('')).toMatchObject({
      what: 'Stud circle',
      where: 'left hub',
      instrument: 'calliper',
      madeBy: 'Ada Quill',
    })
  })

  it('keep a caption the user wrote; one made of the result is made anew', () => {
    expect(kept('on the bench').caption).toBe('on the bench')
    expect(kept('101.6 ± 0.2 mm', true).caption).toBe('')
  })
})
