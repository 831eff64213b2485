import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { carFeatures } from '../../electron/sheets/car-features.ts'
import { requireDimensions } from '../../electron/sheets/dimension-check.ts'
import { dimensionList, dimensionsOf } from '../../electron/sheets/dimension-list.ts'
import { relations } from '../../electron/sheets/dimension-relations.ts'
import { panelConditions, panelList } from '../../electron/sheets/panel-list.ts'
import { bodyDimensions, type OwnDimensions } from '../../shared-types/body-dimensions.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { type BodyStyle, bodyStyle } from '../../shared-types/words.ts'
import { type Survey, startSurvey } from './survey-program.ts'

const refusal = (body: BodyStyle, own: OwnDimensions) => {
  try {
    requireDimensions(body, own, { field: 'dimensions' })
  } catch (fault) {
    if (fault instanceof ProblemError) return fault.problem
    throw fault
  }
  return null
}

describe.each(bodyStyle.options)('dimensions of a %s', (body) => {
  it('are all there, each usual value inside its range, and go with each other', () => {
    const { dimensions } = dimensionList(body)
    expect(dimensions.map(({ name }) => name)).toEqual(bodyDimensions.keyof().options)
    expect(requireDimensions(body, {}, { field: 'dimensions' })).toEqual(dimensionsOf(body, {}))
    for (const { us } of dimensions) expect(us).not.toMatch(/tyre|centre|sill|waist|windscreen/i)
  })

  it('are taken or refused, and a refusal names a dimension whose accepted range then holds', () => {
    const { dimensions } = dimensionList(body)
    const given = fc.record(
      Object.fromEntries(
        dimensions.map(({ name, least, greatest }) => [name, fc.integer({ min: least, max: greatest })]),
      ),
      { requiredKeys: [] },
    )
    fc.assert(
      fc.property(given, (said) => {
        const own = said as OwnDimensions
        const problem = refusal(body, own)
        const whole = dimensionsOf(body, own)
        expect(problem === null).toBe(relations.every(({ holds }) => holds(whole)))
        const range = /Accepted here: ([\d.]+) .*? to ([\d.]+) /.exec(problem?.message ?? '')
        const name = problem?.field?.split('.')[1]
        if (range === null || name === undefined) return
        for (const value of range.slice(1).map(Number)) expect(refusal(body, { ...own, [name]: value })).toBeNull()
      }),
      { numRuns: 200, seed: 1956 },
    )
  })

  it('goes with what it can have: each decides about a panel, and a new record’s choice is one of the walk', () => {
    for (const { id, usually, onOneSide } of carFeatures(body)) {
      const held = usually === 'L' || usually === 'R' ? `${id}.${usually}` : id
      const without = panelList(body, 'with underneath', []).panels.length
      expect(panelList(body, 'with underneath', [held]).panels.length).toBeGreaterThan(without)
      expect(usually === 'L' || usually === 'R').toBe(onOneSide && usually !== 'absent')
    }
  })
})

describe('the coupé of the demonstration', () => {
  it('is drawn as wide, long and high as its maker built it', () => {
    expect(dimensionsOf('coupe', {})).toEqual({
      lengthMm: 4250,
      wheelbaseMm: 2500,
      widthMm: 1616,
      heightMm: 1350,
      frontOverhangMm: 760,
      beltHeightMm: 846,
      sillHeightMm: 206,
      tyreRadiusMm: 316,
      archRadiusMm: 378,
      tumblehomeDegrees: 22,
      screenRakeDegrees: 47,
      rearScreenRakeDegrees: 60,
    })
  })

  it('says of a dimension out of range which, what is accepted, and what to do', () => {
    const problem = refusal('coupe', { lengthMm: 6000 })
    expect(problem).toMatchObject({ code: 'input-refused', field: 'dimensions.lengthMm' })
    expect(problem?.message).toMatch(/Overall length, 6000 mm, .* 3740 mm to 4890 mm\. .*leave it empty.*4250 mm/)
  })

  it.each<[keyof OwnDimensions, OwnDimensions, RegExp]>([
    ['wheelbaseMm', { wheelbaseMm: 2870, lengthMm: 3900 }, /no room behind the rear axle/],
    ['wheelbaseMm', { wheelbaseMm: 2200, lengthMm: 4880 }, /longer than six tenths/],
    ['archRadiusMm', { archRadiusMm: 340, tyreRadiusMm: 340 }, /clear the wheel/],
    ['beltHeightMm', { beltHeightMm: 750 }, /reach into the line/],
    ['beltHeightMm', { beltHeightMm: 970, heightMm: 1200 }, /330 mm/],
    ['tumblehomeDegrees', { tumblehomeDegrees: 30, heightMm: 1550 }, /six tenths of the car/],
    ['screenRakeDegrees', { screenRakeDegrees: 55, rearScreenRakeDegrees: 68 }, /three quarters/],
  ])('names %s where %o do not go together', (name, own, words) => {
    const problem = refusal('coupe', own)
    expect(problem?.field).toBe(`dimensions.${name}`)
    expect(problem?.message).toMatch(words)
  })
})

describe('a record', () => {
  let survey: Survey
  beforeEach(async () => {
    survey = await startSurvey()
  })
  afterEach(() => survey.end())
  const particulars = () => survey.program.record().view().particulars

  it('keeps its own dimensions and gives them back by undo', async () => {
    await survey.ask('particulars.set', { particulars: { ...particulars(), dimensions: { wheelbaseMm: 2540 } } })
    expect(particulars().dimensions).toEqual({ wheelbaseMm: 2540 })
    await survey.ask('journal.undo', {})
    expect(particulars().dimensions).toEqual({})
    await survey.ask('journal.redo', {})
    expect(particulars().dimensions).toEqual({ wheelbaseMm: 2540 })
  })

  it('refuses dimensions its body cannot have, also when the body changes under them', async () => {
    await survey.ask('particulars.set', { particulars: { ...particulars(), dimensions: { heightMm: 1400 } } })
    const refused = await survey.refusal('particulars.set', { particulars: { ...particulars(), body: 'van' } })
    expect(refused.field).toBe('particulars.dimensions.heightMm')
    expect(refused.message).toMatch(/Overall height/)
  })

  it('keeps no dimensions its plan could not be drawn with', { timeout: 120_000 }, async () => {
    const { dimensions } = dimensionList('pickup')
    const given = fc.record(
      Object.fromEntries(
        dimensions.map(({ name, least, greatest }) => [name, fc.integer({ min: least, max: greatest })]),
      ),
      { requiredKeys: [] },
    )
    for (const own of fc.sample(given, { numRuns: 25, seed: 3 }) as OwnDimensions[]) {
      const entered = { ...particulars(), body: 'pickup' as const, dimensions: own }
      const said = await survey.ask('particulars.set', { particulars: entered }).catch((fault: unknown) => fault)
      if (said instanceof ProblemError) {
        expect(said.problem).toMatchObject({
          code: 'input-refused',
          field: expect.stringMatching(/^particulars\.dimensions/),
        })
        continue
      }
      const { body, conditions } = particulars()
      const plan = await survey.ask('figures.plan', { body, names: 'uk', dimensions: own, conditions })
      expect(plan.sheets.length).toBeGreaterThan(0)
    }
  })

  it('shown in inches is refused in inches', async () => {
    const { commission } = survey.program.record().view()
    await survey.ask('commission.set', { commission: { ...commission, lengthUnit: 'in', names: 'us' } })
    const dimensions = { sillHeightMm: 900 }
    const refused = await survey.refusal('particulars.set', { particulars: { ...particulars(), dimensions } })
    expect(refused.message).toMatch(/^Rocker height, 35\.4 in, .* in to .* in\./)
  })

  it('refuses a feature nobody knows, and a side where a thing has none', async () => {
    for (const strange of ['sunrof', 'sunroof.L']) {
      const conditions = [...particulars().conditions, strange]
      const refused = await survey.refusal('particulars.set', { particulars: { ...particulars(), conditions } })
      expect(refused).toMatchObject({ code: 'input-refused', field: 'particulars.conditions' })
      expect(refused.message).toContain(strange)
    }
    const conditions = Object.keys(panelConditions())
    await survey.ask('particulars.set', { particulars: { ...particulars(), conditions } })
  })

  it('gives its plan a request of its own, refused when it cannot be drawn', async () => {
    const plan = { body: 'coupe', names: 'uk' } as const
    expect(await survey.ask('figures.plan', { ...plan, dimensions: { lengthMm: 4200 }, conditions: [] })).toBeTruthy()
    const refused = await survey.refusal('figures.plan', { ...plan, dimensions: { lengthMm: 8000 } })
    expect(refused.field).toBe('dimensions.lengthMm')
  })
})
