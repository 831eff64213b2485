import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { checkedBy } from '../../electron/doors/checked-input.ts'
import { assess } from '../../electron/use-cases/assess.ts'
import { requests } from '../../shared-types/contract.ts'
import type { ExhibitDraft, Measurement } from '../../shared-types/exhibit.ts'
import type { TapeAnswer } from '../../shared-types/tape-answer.ts'
import { captionOf } from '../../shared-types/tape-caption.ts'
import type { TapeQuestion, TapeQuestionOf, TapeTaken } from '../../shared-types/tape-question.ts'
import { metricUnits, type ShownUnits } from '../../shared-types/units.ts'
import { type Survey, startSurvey } from './survey-program.ts'

let survey: Survey
beforeAll(async () => {
  survey = await startSurvey()
  await survey.ask('sheet.take', { sheetId: 'sedge' })
})
afterAll(() => survey.end())

const ask = (question: TapeQuestion, tell: string | null = null): Promise<TapeAnswer> =>
  survey.ask('measuring.tape', { question, tell, where: '' })
const INCHES: ShownUnits = { lengthUnit: 'in', coatingUnit: 'mil' }
async function showIn(units: ShownUnits): Promise<void> {
  const { commission } = survey.program.record().view()
  await survey.ask('commission.set', { commission: { ...commission, ...units } })
}
const refusal = async (question: TapeQuestion, tell: string | null = null) =>
  (await survey.refusal('measuring.tape', { question, tell, where: '' })).message

const studs = (count: number, mm: number[], goodToMm: number, step = 1): TapeQuestion => ({
  kind: 'stud circle',
  studs: count,
  spacings: mm.map((each) => ({ mm: each, step })),
  goodToMm,
  coverage: 0.95,
})
const possible = ({ candidates }: TapeAnswer) =>
  candidates.filter((candidate) => candidate.possible).map(({ label }) => label)
const lineOf = ({ lines }: TapeAnswer, label: string) => lines.find((line) => line.label === label)?.words
const plain = (text: string) => text.replaceAll('\u202f', ' ')

describe('a stud circle', () => {
  it('of five on 101.6 and 114.3 mm is told apart by a tape good to 2 mm, not by one good to 8 mm', async () => {
    // Common practice, no source.
    for (const [own, other] of [
      [101.6, 114.3],
      [114.3, 101.6],
    ] as const) {
      const spacing = own * Math.sin(Math.PI / 5)
      expect(possible(await ask(studs(5, [spacing], 2)))).toContain(`5 × ${own} mm`)
      expect(possible(await ask(studs(5, [spacing], 2)))).not.toContain(`5 × ${other} mm`)
      expect(possible(await ask(studs(5, [spacing], 8)))).toEqual(
        expect.arrayContaining([`5 × ${own} mm`, `5 × ${other} mm`]),
      )
    }
  })

  it('is compared with the sizes of a tell of the sheet, and a tie with the list is named with what would settle it', async () => {
    const answer = await ask(studs(4, [69.6], 0.3), 'sedge/stud-circle')
    expect(possible(answer)).toEqual(['4 on 98.4 mm', '4 × 98 mm'])
    expect(answer.candidates[0]?.source).toBe('sheet: Stud circle of the hubs')
    // 69.6 √2 = 98.429; nearest but one is 98, 0.43 off; U = 1.96 × 0.3 √2 / √3 = 0.48.
    expect(plain(answer.headline)).toBe('98.4 ± 0.5 mm')
    expect(plain(answer.verdict)).toBe(
      'A tie: 4 on 98.4 mm and 4 × 98 mm are not told apart. 0.4 mm would do; it is 0.5 mm. Of the values of the sheet it decides for 4 on 98.4 mm.',
    )
    expect(answer.kept).toMatchObject({ valueMm: 98.43, uncertaintyMm: 0.49 })
    expect(plain(answer.kept.method)).toContain('4 studs; neighbours 69.6 mm; good to 0.3 mm each way')
  })

  it('takes spacings of neighbours and of every second stud together, and says when they are no circle', async () => {
    const both = {
      kind: 'stud circle' as const,
      studs: 5,
      goodToMm: 0.5,
      coverage: 0.95,
      spacings: [
        { mm: 114.3 * Math.sin(Math.PI / 5), step: 1 },
        { mm: 114.3 * Math.sin((2 * Math.PI) / 5), step: 2 },
      ],
    }
    expect(lineOf(await ask(both), 'one circle')).toContain('agree with one circle')
    const bent = { ...both, spacings: [...both.spacings, { mm: 72, step: 1 }] }
    expect(lineOf(await ask(bent), 'one circle')).toContain('do not agree with one circle')
  })

  it('refuses nothing, less than nothing, and a tell that is not a length', async () => {
    expect(await refusal(studs(5, [0], 1))).toContain('greater than nothing')
    expect(await refusal(studs(5, [-70], 1))).toContain('greater than nothing')
    expect(await refusal(studs(5, [70], 1, 3))).toContain('count the shorter way round')
    expect(await refusal(studs(5, [70], 1), 'sedge/engine-type')).toContain('not measured in millimetres')
    expect(await refusal(studs(5, [70], 1), 'sedge/no-such')).toContain('has a tell')
  })
})

describe('a drum', () => {
  const drum = (readingsMm: number[], goodToMm: number): TapeQuestion => ({
    kind: 'drum or disc',
    readingsMm,
    goodToMm,
    sizes: [{ label: 'nine inches', nominalMm: 228.6, limitMm: 230.1 }],
    coverage: 0.95,
  })
  it('is inside, outside, or neither can be proven, and how exact one would have to be is said', async () => {
    expect(await ask(drum([229.1], 0.05))).toMatchObject({ decision: 'inside' })
    expect(await ask(drum([230.4], 0.05))).toMatchObject({ decision: 'outside' })
    const open = await ask(drum([230.4], 1))
    expect(open.decision).toBe('cannot be proven')
    // U = 1.96 × 1 / √3 = 1.1.
    expect(plain(open.verdict)).toContain('0.3 mm would do, it is 1.1 mm')
  })
})

describe('gaps', () => {
  const gaps = (more: Partial<TapeQuestionOf<'gaps'>> = {}): TapeQuestion => ({
    kind: 'gaps',
    left: [3, 4, 5].map((gapMm, atMm) => ({ atMm, gapMm })),
    right: [4, 4, 4].map((gapMm, atMm) => ({ atMm, gapMm })),
    goodToMm: 0.2,
    coverage: 0.95,
    of: 'gap',
    jointId: 'front-door+front-side',
    placesMeasured: false,
    ...more,
  })
  it('name the joint, where along it, the taper of each side and the difference', async () => {
    const joints = await survey.ask('lists.joints', { body: 'coupe', names: 'uk' })
    const own = joints.find(({ id }) => id === 'front-door+front-side')
    expect(own).toMatchObject({ bothSides: true, measureAt: ['upper', 'middle', 'lower'] })
    expect(own?.name).toBe('shut line between door and front wing')
    const answer = await ask(gaps())
    expect(answer.verdict).toBe('No difference of the sides is shown; left: taper is shown; right: no taper is shown.')
    expect(lineOf(answer, 'joint')).toBe(own?.name)
    expect(plain(lineOf(answer, 'taper left') ?? '')).toMatch(/^2\.0 ± 0\.3 mm/)
  })
  it('may be how flush the panels stand, which goes below nothing; a gap does not', async () => {
    const left = [-1, 0, 1].map((gapMm, atMm) => ({ atMm, gapMm }))
    expect((await ask(gaps({ left, right: null, of: 'flush' }))).verdict).toBe('Taper is shown.')
    expect(await refusal(gaps({ left }))).toContain('where panels touch enter 0')
    expect(await refusal(gaps({ jointId: 'no-such+joint' }))).toContain('joint that is listed')
  })
})

describe('distances', () => {
  it('equal diagonals are said not to prove a rectangle', async () => {
    const answer = await ask({
      kind: 'diagonals',
      firstMm: 1500,
      secondMm: 1500,
      widthMm: 900,
      lengthMm: 1200,
      goodToMm: 1,
      limitMm: 3,
      coverage: 0.95,
    })
    expect(answer).toMatchObject({ decision: 'inside', kept: { valueMm: 0 } })
    expect(answer.notes.join(' ')).toContain('Equal diagonals do not prove a rectangle')
  })
  it('a point has its residuals, and known points on one line are refused', async () => {
    const station = (label: string, xMm: number, yMm: number, distanceMm: number) => ({ label, xMm, yMm, distanceMm })
    const from = [station('a', 0, 0, 500), station('b', 1000, 0, Math.hypot(600, 300)), station('c', 0, 800, 640.3)]
    const question: TapeQuestion = { kind: 'trilateration', from, uMm: 1, coverage: 0.95 }
    const answer = await ask(question)
    // By hand: JᵀJ of the unit vectors (0.8, 0.6), (-0.894, 0.447), (0.625, -0.781) is 1.830, -0.408, 1.170.
    expect(plain(answer.headline)).toBe('x 400.0 ± 1.5 mm, y 300.0 ± 1.9 mm')
    expect(answer.lines.map(({ label }) => label)).toEqual(['residual from a', 'residual from b', 'residual from c'])
    const line = from.map((each) => ({ ...each, yMm: 0 }))
    expect(await refusal({ ...question, from: line })).toContain('lie on one line')
  })
})

describe('repeated readings', () => {
  const repeated = (readingsMm: number[], limits: [number | null, number | null] = [null, null]): TapeQuestion => ({
    kind: 'repeated',
    readingsMm,
    goodToMm: 0.05,
    lowerMm: limits[0],
    upperMm: limits[1],
    coverage: 0.95,
  })
  it('state types A and B, coverage and degrees of freedom', async () => {
    // t for 4 degrees of freedom, 95 % both sides: 2.78 (Student, tables); the tool's share frees a little more.
    const answer = await ask(repeated([10.1, 10.4, 9.9, 10.2, 10.4]))
    expect(answer.coverage).toBe('95 % coverage, k = 2.78, 4 degrees of freedom (Welch-Satterthwaite)')
    expect(answer.lines.map(({ label }) => label)).toEqual([
      'type A, scatter',
      'type B, the tool',
      'stands out, Grubbs',
    ])
  })
  it('name the one that stands out and keep it in the mean', async () => {
    // NIST/SEMATECH e-Handbook 1.3.5.17.1: G 2.4687; its critical value 2.032 is of one side, both sides at 5 % give 2.126.
    const values = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]
    const answer = await ask(repeated(values))
    expect(plain(lineOf(answer, 'stands out, Grubbs') ?? '')).toMatch(
      /^Reading 8, 245\.57 mm, stands out \(G 2\.47, critical 2\.13, 5 %\)\. It stays in/,
    )
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length
    expect(Math.abs(answer.kept.valueMm - mean)).toBeLessThan(1)
  })
  it('say that one reading shows no scatter', async () => {
    expect(lineOf(await ask(repeated([10])), 'type A, scatter')).toContain('Read again')
  })
  it('are compared with a tell of the sheet', async () => {
    const answer = await ask(repeated([98.5, 98.4, 98.5]), 'sedge/spare-circle')
    expect(answer.verdict).toBe('Of the values of the sheet it decides for 4 on 98.4 mm.')
    // Midway between 98.4 and 101.6 no exactness decides; a millimetre off, a coarse tool does not.
    const coarse = await ask({ ...repeated([99.4]), goodToMm: 3 } as TapeQuestion, 'sedge/spare-circle')
    expect(plain(coarse.verdict)).toMatch(
      /^It does not decide .*: ± \d\.\d+ mm would do; it is ± 3\.\d mm \(k = 2\)\.$/,
    )
  })
})

/** A sheet timed through its paint. */
const painted: TapeQuestion = {
  kind: 'sheet thickness',
  travelTimeUs: 0.5,
  uTimeUs: 0.005,
  velocityMetalMs: 5920,
  uVelocityMetalMs: 30,
  echoToEcho: false,
  paintUm: 150,
  uPaintUm: 10,
  velocityPaintMs: 2500,
  nominalMm: 1.2,
  coverage: 0.95,
}

describe('thickness and welds', () => {
  it('the error of paint is said in full', async () => {
    const answer = await ask(painted)
    // p v / vₚ = 0.15 × 5920 / 2500 = 0.355 mm.
    expect(plain(lineOf(answer, 'paint error') ?? '')).toBe('150 µm taken for metal would read 0.4 mm too thick')
    // v t / 2 − 0.355 = 1.48 − 0.355.
    expect(plain(answer.headline)).toMatch(/^1\.12 ± 0\.0\d mm$/)
  })
  it('is told in inches and mils in such a record, and computed as before', async () => {
    const metric = await ask(painted)
    await showIn(INCHES)
    const inches = await ask(painted)
    await showIn(metricUnits)
    // 150 / 25.4 = 5.906; 0.355 / 25.4 = 0.0140; 1.1248 / 25.4 = 0.0443.
    expect(plain(lineOf(inches, 'paint error') ?? '')).toBe('5.91 mil taken for metal would read 0.014 in too thick')
    expect(plain(inches.headline)).toMatch(/^0\.044\d? ± 0\.00\d+ in$/)
    expect(plain(inches.kept.method)).toContain('paint 5.91 mil (ASTM E797)')
    expect({ ...inches.kept, method: '' }).toEqual({ ...metric.kept, method: '' })
  })
  it('pitch against what the sheet says', async () => {
    const answer = await ask({
      kind: 'weld pitch',
      pitchesMm: [38, 40, 39, 41, 40],
      goodToMm: 0.5,
      expected: { lowMm: 30, highMm: 50 },
      coverage: 0.95,
    })
    expect(answer.decision).toBe('inside')
    expect(answer.notes.join()).toContain('does not say who made the welds')
  })
})

describe('keeping', () => {
  const taken = { question: studs(4, [71.8, 71.9], 0.3), tell: 'sedge/stud-circle', where: 'left front hub' }
  const draft = ({ kept }: TapeAnswer): ExhibitDraft => ({
    kind: 'measurement',
    caption: '',
    madeBy: '',
    place: '',
    panelId: null,
    view: null,
    at: null,
    inReport: true,
    measurement: {
      what: 'Stud circle, left front hub',
      value: kept.valueMm,
      unit: 'mm',
      uncertainty: kept.uncertaintyMm,
      method: kept.method,
      instrument: 'calliper',
      taken,
    },
  })
  it('holds the readings, from which the record works the result out again; undone, it is gone', async () => {
    const answer = await survey.ask('measuring.tape', taken)
    const { number } = await survey.ask('exhibit.add', { draft: draft(answer) })
    const [kept] = await survey.ask('measuring.kept', {})
    const { method } = answer.kept
    const words = { caption: '', captionIsOwn: false, method }
    expect(kept).toEqual({ exhibit: number, what: 'Stud circle, left front hub', answer, ...words })
    expect((await assess(survey.program)).measurements).toEqual([kept])
    await survey.ask('journal.undo', {})
    expect(await survey.ask('measuring.kept', {})).toEqual([])
  })
  it('says anew what the program wrote, in the units the record has since, and leaves what a person wrote', async () => {
    const answer = await survey.ask('measuring.tape', taken)
    await survey.ask('exhibit.add', { draft: { ...draft(answer), caption: captionOf('', answer) } })
    const own = draft(answer)
    if (own.measurement !== null) own.measurement.method = 'two pulls of 71.8 mm'
    await survey.ask('exhibit.add', { draft: { ...own, caption: 'Hub of 101.6 mm' } })
    await showIn(INCHES)
    const [first, second] = await survey.ask('measuring.kept', {})
    await showIn(metricUnits)
    const again = await survey.ask('measuring.kept', {})
    expect(first).toMatchObject({ captionIsOwn: true, caption: captionOf('', first?.answer ?? answer) })
    // 71.85 √2 = 101.61 mm = 4.000 in.
    expect(first?.caption).toMatch(/^4\.00\d? ± 0\.0\d+\u202fin \(/)
    expect(plain(first?.method ?? '')).toContain('neighbours 2.827; 2.831 in; good to 0.012 in each way')
    expect(second).toMatchObject({
      captionIsOwn: false,
      caption: 'Hub of 101.6 mm',
      method: 'two pulls of 71.8 mm',
    })
    expect(again[0]).toMatchObject({ caption: captionOf('', answer), method: answer.kept.method })
    for (let undone = 0; undone < 4; undone += 1) await survey.ask('journal.undo', {})
    expect(await survey.ask('measuring.kept', {})).toEqual([])
  })
  it('refuses a value that the readings do not give', async () => {
    const wrong = draft(await survey.ask('measuring.tape', taken))
    if (wrong.measurement !== null) wrong.measurement.value += 1
    const { message } = await survey.refusal('exhibit.add', { draft: wrong })
    expect(message).toContain('which is not the value to be kept')
  })
  describe('and measured again', () => {
    const { kind: _, measurement: __, ...words } = draft({ kept: {} } as TapeAnswer)
    const repeated = (...readingsMm: number[]): TapeTaken => ({
      question: { kind: 'repeated', readingsMm, goodToMm: 0.1, lowerMm: null, upperMm: null, coverage: 0.9545 },
      tell: 'sedge/stud-circle',
      where: 'left front hub',
    })
    const measured = async (again: TapeTaken) => {
      const { kept } = await survey.ask('measuring.tape', again)
      const told = draft({ kept } as TapeAnswer).measurement
      if (told === null) throw new Error('No measurement.')
      return { ...told, taken: again }
    }
    const noted = (number: number, { value, uncertainty }: Measurement) =>
      survey.ask('observation.set', {
        observation: {
          tell: 'sedge/stud-circle',
          state: 'measured',
          value: null,
          surePercent: null,
          measured: { value, standardUncertainty: (uncertainty ?? 0) / 2, from: number },
          exhibits: [number],
          note: '',
        },
      })
    const standing = (number: number) => {
      const { exhibits, observations } = survey.program.record().view()
      return {
        exhibit: exhibits.find((row) => row.number === number)?.measurement,
        tell: observations.find(({ tell }) => tell === 'sedge/stud-circle')?.measured,
      }
    }

    it('gives its new value to the tell that takes it from there; one undo gives both back', async () => {
      const first = await measured(repeated(98.4, 98.5))
      const { number } = await survey.ask('exhibit.add', {
        draft: { ...words, kind: 'measurement', measurement: first },
      })
      if (number === null) throw new Error('No number.')
      await noted(number, first)
      const before = standing(number)
      const second = await measured(repeated(101.5, 101.6, 101.7))
      await survey.ask('exhibit.remeasure', { number, words: { ...words, caption: 'read again' }, measurement: second })
      expect(standing(number)).toEqual({
        exhibit: second,
        tell: { value: second.value, standardUncertainty: (second.uncertainty ?? 0) / 2, from: number },
      })
      expect(second.value).toBeCloseTo(101.6, 6)
      await survey.ask('journal.undo', {})
      expect(standing(number)).toEqual(before)
      expect(before.exhibit).toEqual(first)
      expect((await survey.ask('record.verify', {})).sound).toBe(true)

      const { message: unknown } = await survey.refusal('exhibit.remeasure', {
        number,
        words,
        measurement: { ...first, taken: undefined, uncertainty: null },
      })
      expect(unknown).toMatch(/sedge\/stud-circle takes its value from this measurement: state how exact/)
      const { message: otherUnit } = await survey.refusal('exhibit.remeasure', {
        number,
        words,
        measurement: { ...first, taken: undefined, unit: 'kg' },
      })
      expect(otherUnit).toMatch(/keep that unit/)
      expect(standing(number)).toEqual(before)
    })

    it('refuses a tell that names a measurement which says another value', async () => {
      const first = await measured(repeated(98.4, 98.5))
      const { number } = await survey.ask('exhibit.add', {
        draft: { ...words, kind: 'measurement', measurement: first },
      })
      await expect(noted(number ?? 0, { ...first, value: 101 })).rejects.toThrow(/says another value/)
      await expect(noted(999, first)).rejects.toThrow(/no exhibit E 999/)
    })

    it('refuses what is no measurement, and a value its readings do not give', async () => {
      const first = await measured(repeated(98.4, 98.5))
      const paper = await survey.ask('exhibit.add', { draft: { ...words, kind: 'document', measurement: null } })
      const asked = { number: paper.number ?? 0, words, measurement: first }
      expect((await survey.refusal('exhibit.remeasure', asked)).message).toMatch(/holds no measurement/)
      const wrong = { ...asked, measurement: { ...first, value: first.value + 1 } }
      expect((await survey.refusal('exhibit.remeasure', wrong)).message).toMatch(/not the value to be kept/)
    })
  })
  it('is checked at the door', () => {
    const tool = { ...taken, question: { ...taken.question, goodToMm: 0 } }
    expect(() => checkedBy(requests['measuring.tape'].input, tool)).toThrow()
  })
})
