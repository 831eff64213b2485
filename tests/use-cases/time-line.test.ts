import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { timeLineFigure } from '../../electron/figures/time-line-figure.ts'
import { type RunningProgram, startProgram } from '../../electron/use-cases/running-program.ts'
import { sheetsOfRecord } from '../../electron/use-cases/sheets-of-record.ts'
import { datedThingsOf, timeLineFrom, timeLineOf } from '../../electron/use-cases/time-line.ts'
import type { IdentityView } from '../../shared-types/identity-view.ts'
import type { PartEntry } from '../../shared-types/part.ts'
import type { TimeLineView } from '../../shared-types/time-line-view.ts'
import { openDemonstration } from '../demonstration/made-once.ts'
import { type Survey, startSurvey } from './survey-program.ts'

const row = (view: TimeLineView, id: string) => view.rows.find((each) => each.id === id)

/** The window that tests of the inference expect of the demonstration car, so that it need not be worked out again here. */
const window = {
  sheets: [{ sheetId: 'sedge', title: 'Sedge', edition: '3' }],
  problem: null,
  variables: [
    {
      key: 'sedge/built',
      name: 'Built',
      kind: 'dates',
      values: [],
      span: { from: '1960-03-01', to: '1960-05-31' },
      because: [],
      startDecibans: null,
    },
  ],
} as unknown as IdentityView

describe('the demonstration car', () => {
  let folder: string
  let program: RunningProgram
  let view: TimeLineView
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'time-line-'))
    program = startProgram({ recordsFolder: folder, scratchFolder: join(folder, 'scratch'), tell: () => undefined })
    await openDemonstration(program, join(folder, 'demonstration.wmk'))
    view = await timeLineOf(program.record(), window)
  }, 240_000)
  afterAll(async () => {
    await program.end()
    rmSync(folder, { recursive: true, force: true })
  })

  it('was built in six weeks of 1960: after the trim card was printed, within the run of its tag', () => {
    expect(view.problem).toBeNull()
    expect(view.built).toMatchObject({ from: '1960-04-15', to: '1960-05-26', days: 42 })
    const because = row(view, 'car:built')?.because.map(({ text }) => text) ?? []
    expect(because[0]).toMatch(/^Not before 15 April 1960, set by: Door trim cards: “print 14 APR 60/)
    expect(because[1]).toMatch(/^Not after 26 May 1960, set by: Body tag B2 5519/)
  })

  it('has an engine of the right type, cast over two years after the last day of building, and says so', () => {
    expect(row(view, 'part:engine-block')).toMatchObject({
      asRead: '7 62',
      state: 'right type, wrong date',
      standing: 'later than the car',
      narrowed: { words: 'July 1962' },
    })
    expect(row(view, 'part:engine-block')?.standingWords).toMatch(/At least 2 years 1 month after/)
    expect(row(view, 'part:charging-machine')?.standing).toBe('may have come with the car')
  })

  it('has exactly one conflict, a smallest set, with its sources and ways out', () => {
    expect(view.allConflictsFound).toBe(true)
    expect(view.conflicts).toHaveLength(1)
    const [conflict] = view.conflicts
    expect(conflict).toMatchObject({ rows: ['car:built', 'part:engine-block'], by: '2 years 1 month' })
    expect(conflict?.cannotAllBe.map(({ references }) => references[0])).toEqual([
      { kind: 'claim', key: '2' },
      { kind: 'part', key: 'engine-block' },
      undefined,
    ])
    expect(conflict?.cannotAllBe.every(({ source }) => source !== null && source !== '')).toBe(true)
    expect(conflict?.travelWithIt).toEqual(['Exhaust manifold 6 62', 'Distributor 8 62'])
    expect(conflict?.waysOut[0]).toMatch(/^C 2 does not hold/)
    expect(conflict?.waysOut[1]).toMatch(/misread/)
    expect(JSON.stringify(view)).not.toMatch(/forged|fake|fraud/i)
  })

  it('takes away any one of the three and the conflict is gone', async () => {
    const { sheets } = await sheetsOfRecord(program.record())
    const record = program.record().view()
    const things = datedThingsOf(record, sheets, window)
    const without = (ids: RegExp) =>
      timeLineFrom(
        record,
        {
          ...things,
          facts: things.facts.filter(({ id }) => !ids.test(id)),
          rules: things.rules.filter(({ id }) => !ids.test(id)),
        },
        null,
      ).conflicts
    expect(without(/^nothing/)).toHaveLength(1)
    expect(without(/^claimed 2 /)).toEqual([])
    expect(without(/^date of engine-block$/)).toEqual([])
    // The last of them stands for every ground that dates the building: each alone would do.
    expect(without(/^(inferred|particulars|number|fitted|registered) ?|^claimed 4/)).toEqual([])
    expect(without(/^inferred /)).toHaveLength(1)
  })

  it('reads every date, those among marks too, and compares the odometer', () => {
    expect(view.unread).toEqual([])
    expect(row(view, 'part:wiring-main')?.narrowed.words).toBe('April 1960')
    expect(row(view, 'car:registered')?.narrowed.words).toBe('9 June 1960')
    expect(row(view, 'paper:registration-document')?.given[0]?.words).toBe('1971')
    expect(view.odometer).toMatch(/^2 odometer readings with a day\. No reading is smaller/)
  })

  it('comes out the same in whatever order its facts come', async () => {
    const { sheets } = await sheetsOfRecord(program.record())
    const record = program.record().view()
    const things = datedThingsOf(record, sheets, window)
    const count = things.facts.length
    fc.assert(
      fc.property(fc.shuffledSubarray([...things.facts], { minLength: count }), fc.boolean(), (facts, turned) => {
        const rules = turned ? things.rules.toReversed() : things.rules
        const found = timeLineFrom(record, { ...things, facts, rules }, null)
        const said = (one: TimeLineView) =>
          one.rows.map(({ id, narrowed, standing, dropped }) => ({ id, narrowed, standing, dropped }))
        expect(said(found)).toEqual(said(view))
        expect(found.conflicts.map(({ title, by, waysOut }) => ({ title, by, waysOut }))).toEqual(
          view.conflicts.map(({ title, by, waysOut }) => ({ title, by, waysOut })),
        )
      }),
      { numRuns: 15 },
    )
  })

  it('an engine held to be factory fitted is itself the conflict, and the building keeps its days', async () => {
    const { sheets } = await sheetsOfRecord(program.record())
    const record = program.record().view()
    const parts = record.parts.map((entry) =>
      entry.partId === 'engine-block' ? { ...entry, state: 'factory fitted' as const } : entry,
    )
    const changed = { ...record, parts, claims: [] }
    const found = timeLineFrom(changed, datedThingsOf(changed, sheets, window), null)
    expect(found.conflicts).toHaveLength(1)
    expect(found.conflicts[0]?.waysOut[0]).toMatch(/cylinder block was not fitted when the car was built/)
    expect(found.built).toMatchObject({ from: '1960-04-15', to: '1960-05-26' })
    expect(row(found, 'part:engine-block')?.standing).toBe('later than the car')
  })

  it('is drawn as the reference figure, looked at before it was kept', async () => {
    const figure = timeLineFigure(view)
    expect(figure.rows.map(({ id }) => id)).toEqual(view.rows.map(({ id }) => id))
    const kept = await readFile(join(import.meta.dirname, '../figures/reference/time-line.json'), 'utf8')
    expect(JSON.parse(JSON.stringify(figure))).toEqual(JSON.parse(kept))
  })
})

const part = (partId: string, more: Partial<PartEntry>): PartEntry => ({
  partId,
  state: 'factory fitted',
  numberAsRead: '',
  dateAsRead: '',
  marks: '',
  expected: '',
  learned: 'seen',
  exhibits: [],
  countsWith: null,
  fastening: null,
  note: '',
  ...more,
})

/** A line of cars that dates its dynamos by month and last figure of the year. */
const oneDigit = `form: 1
sheetId: teasel
title: Teasel
edition: "1"
sources:
  - {id: ledger, who: Works, where: Ledger, page: "4", learned: invented}
variables:
  - {id: series, name: Series, values: [{id: plain, name: Plain}, {id: fine, name: Fine}]}
dateCodes:
  - id: dynamo-date
    part: charging-machine
    source: ledger
    leadDays: {least: 10, most: 200}
    grammar:
      id: dynamo-date
      label: Month and last figure of the year
      source: Works ledger
      usedFrom: 1950
      usedTo: 1979
      elements:
        - {kind: figures, field: month, minDigits: 2, maxDigits: 2}
        - {kind: figures, field: year, minDigits: 1, maxDigits: 1}
`

describe('a record begun anew', () => {
  let survey: Survey
  beforeEach(async () => {
    survey = await startSurvey()
  })
  afterEach(() => survey.end())
  const view = async () => (await survey.ask('dates.timeLine', {})).view
  const takeOwn = async () => {
    const path = join(survey.folder, 'teasel.yaml')
    writeFileSync(path, oneDigit)
    await survey.ask('sheet.takeOwn', { source: { from: 'file', path } })
  }

  it('without a sheet reads what is written in words, names what it cannot read, and says what to do', async () => {
    await survey.ask('part.set', { entry: part('engine-block', { dateAsRead: '7 62' }) })
    await survey.ask('part.set', { entry: part('ignition-coil', { dateAsRead: '1974', state: 'later fitment' }) })
    const found = await view()
    expect(found.problem).toMatch(/Take a sheet in/)
    expect(found.unread).toMatchObject([{ label: 'Cylinder block', asRead: '7 62' }])
    expect(found.unread[0]?.why).toMatch(/No reference sheet/)
    expect(row(found, 'part:ignition-coil')?.narrowed.words).toBe('1974')
  })

  it('keeps every decade of a one-figure year until the building settles it', async () => {
    await takeOwn()
    await survey.ask('part.set', { entry: part('charging-machine', { dateAsRead: '03 0', state: 'not determined' }) })
    const open = row(await view(), 'part:charging-machine')
    expect(open?.given.map(({ words }) => words)).toEqual(['March 1950', 'March 1960', 'March 1970'])
    expect(open?.dropped).toEqual([])
    const { particulars } = survey.program.record().view()
    await survey.ask('particulars.set', {
      particulars: { ...particulars, builtFrom: '1960-03-01', builtTo: '1960-05-26', builtGrounds: '' },
    })
    await survey.ask('part.set', { entry: part('charging-machine', { dateAsRead: '03 0' }) })
    const settled = row(await view(), 'part:charging-machine')
    expect(settled?.dropped.map(({ words }) => words)).toEqual(['March 1950', 'March 1970'])
    expect(settled?.dropped[0]?.because).toMatch(/The particulars give/)
    expect(settled?.narrowed.words).toBe('March 1960')
  })

  it('fills in an unreadable figure in every way, and says of an impossible code why', async () => {
    await takeOwn()
    await survey.ask('part.set', { entry: part('charging-machine', { dateAsRead: '1? 0', state: 'not determined' }) })
    const filled = row(await view(), 'part:charging-machine')
    // Months 10, 11 and 12 of three years ending in 0; 13 to 19 are no months.
    expect(filled?.given).toHaveLength(9)
    await survey.ask('part.set', { entry: part('charging-machine', { dateAsRead: '13 0' }) })
    expect((await view()).unread[0]?.why).toMatch(/no month 13/)
    await survey.ask('part.set', { entry: part('charging-machine', { dateAsRead: '???' }) })
    expect((await view()).unread[0]?.why).toMatch(/too little is left/)
  })

  it('an odometer that runs back is a conflict with its explanations', async () => {
    const [first] = survey.program.record().view().visits
    if (first === undefined) throw new Error('No visit')
    const { number, ...draft } = first
    await survey.ask('visit.amend', { number, draft: { ...draft, odometer: '61 208 miles' } })
    await survey.ask('visit.add', {
      draft: { ...draft, beganAt: '2026-09-01T08:00:00.000Z', endedAt: null, odometer: '60 100 miles' },
    })
    const found = await view()
    expect(found.conflicts).toMatchObject([{ title: 'The odometer runs back by 1108 miles' }])
    expect(found.conflicts[0]?.waysOut.join(' ')).toMatch(/replaced, repaired or set/)
    expect(found.conflicts[0]?.cannotAllBe).toHaveLength(3)
  })
})
