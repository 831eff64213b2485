import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { rust, type Survey, startSurvey } from './survey-program.ts'

const wing = 'front-side.L'
let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
})
afterEach(() => survey.end())

const panel = (panelId = wing) =>
  survey.program
    .record()
    .view()
    .panels.find((row) => row.panelId === panelId)

describe('a panel on the walk', () => {
  it('starts without a row, which means not inspected', () => {
    expect(panel()).toBeUndefined()
  })

  it('is inspected once its metal is set', async () => {
    const said = await survey.ask('panel.setMetal', { panelId: wing, metal: 'replacement panel' })
    expect(panel()).toMatchObject({ inspection: 'inspected', metal: 'replacement panel', paint: 'not inspected' })
    expect(said.undoState.undo).toBe('Left front wing: replacement panel')
  })

  it('has metal not determined when only its paint was set', async () => {
    await survey.ask('panel.setPaint', { panelId: wing, paint: 'refinished' })
    expect(panel()).toMatchObject({ inspection: 'inspected', metal: 'not determined', paint: 'refinished' })
  })

  it('goes back to where it started when its metal is set to not inspected, and keeps its note', async () => {
    await survey.ask('panel.setPaint', { panelId: wing, paint: 'refinished' })
    await survey.ask('panel.note', { panelId: wing, note: 'seen from the kerb' })
    await survey.ask('panel.setMetal', { panelId: wing, metal: 'not inspected' })
    expect(panel()).toMatchObject({
      inspection: 'not inspected',
      metal: 'not inspected',
      paint: 'not inspected',
      nothingFound: false,
      note: 'seen from the kerb',
    })
  })

  it('keeps the reason it was not accessible, and loses what was set before', async () => {
    await survey.ask('panel.setMetal', { panelId: wing, metal: 'original metal' })
    await survey.ask('panel.notAccessible', { panelId: wing, reason: 'against the wall' })
    expect(panel()).toMatchObject({ inspection: 'not accessible', reason: 'against the wall', metal: 'not inspected' })
    await survey.ask('panel.setMetal', { panelId: wing, metal: 'original metal' })
    expect(panel()).toMatchObject({ inspection: 'inspected', reason: '' })
  })

  it('is refused when the body has no such panel', async () => {
    const problem = await survey.refusal('panel.setMetal', { panelId: 'bed-floor', metal: 'original metal' })
    expect(problem).toMatchObject({ code: 'not-found', field: 'panelId' })
    expect((await survey.refusal('panel.note', { panelId: 'sunroof-panel', note: '' })).code).toBe('not-found')
  })

  it('has a sunroof once the particulars say so', async () => {
    const { particulars } = survey.program.record().view()
    const conditions = [...particulars.conditions, 'sunroof']
    await survey.ask('particulars.set', { particulars: { ...particulars, conditions } })
    await survey.ask('panel.setMetal', { panelId: 'sunroof-panel', metal: 'original metal' })
    expect(panel('sunroof-panel')?.inspection).toBe('inspected')
  })
})

describe('filler in place of metal', () => {
  const set = { panelId: wing, metal: 'filler in place of metal' } as const

  it('is refused from the front, with what may be said instead and why', async () => {
    const problem = await survey.refusal('panel.setMetal', set)
    expect(problem).toMatchObject({
      code: 'rule-of-the-trade',
      field: 'metal',
      instead: ['filler over metal', 'not determined'],
    })
    expect(problem.message).toMatch(/back of the panel was seen/)
    expect(panel()).toBeUndefined()
  })

  it.each([
    { backSeen: true, magnetVoid: false },
    { backSeen: false, magnetVoid: true },
  ])('is taken with %o, which cannot be taken away under it', async (how) => {
    await survey.ask('panel.howSeen', { panelId: wing, ...how })
    await survey.ask('panel.setMetal', set)
    expect(panel()?.metal).toBe('filler in place of metal')
    const problem = await survey.refusal('panel.howSeen', { panelId: wing, backSeen: false, magnetVoid: false })
    expect(problem.instead).toEqual(['filler over metal', 'not determined'])
  })
})

describe('a finding', () => {
  it('shows its panel as inspected and takes back that nothing was found', async () => {
    await survey.ask('panel.nothingFound', { panelId: wing })
    expect(panel()).toMatchObject({ nothingFound: true, metal: 'not determined' })
    const said = await survey.ask('finding.add', { draft: rust })
    expect(said).toMatchObject({ number: 1 })
    expect(said.undoState.undo).toBe('Finding F 1 added: corrosion, Left front wing')
    expect(panel()).toMatchObject({ inspection: 'inspected', nothingFound: false })
  })

  it('told or inferred does not make a panel inspected', async () => {
    await survey.ask('finding.add', { draft: { ...rust, learned: 'told', learnedFrom: 'the owner' } })
    expect(panel()?.inspection ?? 'not inspected').toBe('not inspected')
  })

  it('keeps its panel from nothing found, not inspected and not accessible, and is named', async () => {
    await survey.ask('finding.add', { draft: rust })
    for (const problem of [
      await survey.refusal('panel.nothingFound', { panelId: wing }),
      await survey.refusal('panel.notInspected', { panelId: wing }),
      await survey.refusal('panel.setMetal', { panelId: wing, metal: 'not inspected' }),
      await survey.refusal('panel.notAccessible', { panelId: wing, reason: 'dark' }),
    ]) {
      expect(problem.code).toBe('rule-of-the-trade')
      expect(problem.message).toContain('F 1')
    }
  })

  it('takes its panel back with it when it is undone, and its number is not given again', async () => {
    await survey.ask('finding.add', { draft: rust })
    await survey.ask('journal.undo', {})
    expect(panel()).toBeUndefined()
    expect(survey.program.record().view().findings).toEqual([])
    expect((await survey.ask('finding.add', { draft: rust })).number).toBe(2)
  })

  it('must stand on a panel and exhibits that are there', async () => {
    const noPanel = await survey.refusal('finding.add', { draft: { ...rust, panelId: 'no-panel' } })
    expect(noPanel).toMatchObject({ code: 'not-found', field: 'draft.panelId' })
    const noExhibit = await survey.refusal('finding.add', { draft: { ...rust, exhibits: [7] } })
    expect(noExhibit).toMatchObject({ code: 'not-found', field: 'draft.exhibits' })
    expect(noExhibit.message).toContain('E 7')
    expect((await survey.refusal('finding.amend', { number: 3, draft: rust })).code).toBe('not-found')
  })
})

it('every change is told to the windows once it is durable', async () => {
  await survey.ask('panel.setMetal', { panelId: wing, metal: 'original metal' })
  const told = survey.events.filter((event) => event.event === 'record.changed')
  expect(told).toHaveLength(1)
})
