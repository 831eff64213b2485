import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { assess } from '../../electron/use-cases/assess.ts'
import { sampleFastenings } from '../../electron/use-cases/fastening-sample.ts'
import { keptSamples } from '../../electron/use-cases/sample-taken.ts'
import { type FasteningSample, fasteningSample, type SampleTaken } from '../../shared-types/fastening-sample.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { type Survey, startSurvey } from './survey-program.ts'

const asked = (more: Partial<FasteningSample> = {}): FasteningSample => ({
  what: 'fastenings with a wrong head',
  ofHowMany: 40,
  looked: 12,
  wrong: 0,
  confidencePercent: 95,
  wantedAtMost: 2,
  positions: [],
  seed: 'wing bolts',
  ...more,
})

describe('a sample of alike fastenings', () => {
  /*
   * Outside value: hypergeometric probabilities by their definition. With 8 wrong of 40, no wrong one among 12 has the
   * probability C(32,12)/C(40,12) = (28·27···21)/(40·39···33); the bound is the greatest number of wrong ones for which it
   * is above 5 %.
   */
  it('bounds the whole exactly, and never says “all” of what was not seen', () => {
    const none = (wrong: number) =>
      Array.from({ length: wrong }, (_, at) => (28 - at) / (40 - at)).reduce((product, each) => product * each, 1)
    const most = [...Array(29).keys()].findLast((wrong) => none(wrong) > 0.05)
    const { bound } = sampleFastenings(asked())
    expect(bound).toMatchObject({ lowCount: 0, highCount: most, method: 'hypergeometric, exact' })
    expect(bound?.words).toMatch(/28 were not seen/)
    expect(bound?.words).not.toMatch(/\ball\b/)
  })

  it('says how many to look at, so that one fewer would not do', () => {
    const { size } = sampleFastenings(asked())
    const look = size?.look ?? Number.NaN
    const missed = (looked: number) => [0, 1, 2].reduce((product, at) => (product * (40 - looked - at)) / (40 - at), 1)
    expect(missed(look)).toBeLessThanOrEqual(0.05)
    expect(missed(look - 1)).toBeGreaterThan(0.05)
  })

  it('draws the same positions from the same seed, in their order on the car, and others from another', () => {
    const first = sampleFastenings(asked())
    expect(sampleFastenings(asked()).positions).toEqual(first.positions)
    expect(first.positions.length).toBe(first.size?.look)
    expect(first.positions.map(Number)).toEqual(first.positions.map(Number).toSorted((one, other) => one - other))
    expect(sampleFastenings(asked({ seed: 'another' })).positions).not.toEqual(first.positions)
    expect(first.drawnBy).toContain('wing bolts')
  })

  it('names positions as they were named, and says nothing of those nobody looked at', () => {
    const named = asked({ ofHowMany: 3, looked: 0, wantedAtMost: 0, positions: ['front', 'middle', 'rear'] })
    expect(sampleFastenings(named)).toMatchObject({ bound: null, positions: ['front', 'middle', 'rear'] })
  })

  it('refuses what cannot be: more wrong than looked at, more looked at than there are, names that do not fit', () => {
    for (const more of [
      { wrong: 13 },
      { looked: 41 },
      { looked: 0, wrong: 1 },
      { positions: ['a', 'b'] },
      { ofHowMany: 2, looked: 0, positions: ['a', 'a'] },
    ])
      expect(() => sampleFastenings(asked(more))).toThrow(ProblemError)
    expect(fasteningSample.safeParse(asked({ ofHowMany: 0 })).success).toBe(false)
  })
})

describe('a sample kept in the record', () => {
  let survey: Survey
  beforeEach(async () => {
    survey = await startSurvey()
  })
  afterEach(() => survey.end())

  const { looked: _, wrong: __, ...plan } = asked()
  const drawn = sampleFastenings(asked()).positions
  const taken = (wrongOnes: number, from: readonly string[] = drawn): SampleTaken => ({
    ...plan,
    seen: from.map((position, at) => ({ position, wrong: at < wrongOnes })),
  })
  const measurement = (sample: SampleTaken, value = sample.seen.filter(({ wrong }) => wrong).length) => ({
    what: sample.what,
    value,
    unit: 'count' as const,
    uncertainty: null,
    method: 'random sample',
    instrument: 'by eye',
    sample,
  })
  const words = { caption: '', madeBy: '', place: '', panelId: null, view: null, at: null, inReport: true }
  const kept = () => keptSamples(survey.program.record().view())

  it('holds what was drawn and seen, from which anybody reckons the same bounds; corrected and undone', async () => {
    const one = taken(1)
    const { number } = await survey.ask('exhibit.add', {
      draft: { ...words, kind: 'measurement', measurement: measurement(one) },
    })
    const { bound } = sampleFastenings(asked({ looked: drawn.length, wrong: 1 }))
    expect(kept()).toMatchObject([{ exhibit: number, sample: one, answer: { bound, positions: drawn } }])
    expect((await assess(survey.program)).samples).toEqual(kept())
    const two = taken(2)
    await survey.ask('exhibit.remeasure', { number: number ?? 0, words, measurement: measurement(two) })
    expect(kept()[0]?.answer.bound?.lowCount).toBe(2)
    await survey.ask('journal.undo', {})
    expect(kept()[0]?.sample).toEqual(one)
    await survey.ask('journal.undo', {})
    expect(kept()).toEqual([])
    expect((await survey.ask('record.verify', {})).sound).toBe(true)
  })

  it('refuses a position that was not drawn, one named twice, and another count than its own', async () => {
    const other = Array.from({ length: 40 }, (___, at) => String(at + 1)).find((each) => !drawn.includes(each)) ?? ''
    const refused = async (sample: SampleTaken, value?: number) =>
      (
        await survey.refusal('exhibit.add', {
          draft: { ...words, kind: 'measurement', measurement: measurement(sample, value) },
        })
      ).message
    expect(await refused(taken(0, [...drawn.slice(1), other]))).toMatch(/was not drawn/)
    expect(await refused(taken(0, [...drawn, ...drawn.slice(0, 1)]))).toMatch(/twice/)
    expect(await refused(taken(1), 0)).toMatch(/counts 1, which is not the value/)
    expect(kept()).toEqual([])
  })
})
