import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { assess } from '../../electron/use-cases/assess.ts'
import { requests } from '../../shared-types/contract.ts'
import { beginning } from '../record/sample-record.ts'
import { type Survey, startSurvey } from './survey-program.ts'

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
})
afterEach(() => survey.end())

const doors = { weighs: 'body area/left side', factor: 3, reason: 'what the buyer asks about' }
const metal = async () => (await survey.ask('judgement.view', {})).whole.originalMetal

describe('weights the user sets', () => {
  it('are kept with who set them and when, follow into the judgement and the assessment, and are undone', async () => {
    await survey.ask('panel.setMetal', { panelId: 'front-side.L', metal: 'original metal' })
    const plain = await metal()
    const { at } = await survey.ask('weight.set', { draft: doors })
    const kept = { ...doors, setBy: beginning.commission.examiner, setAt: at }
    expect((await survey.ask('record.view', {})).weights).toEqual([kept])
    const weighed = await metal()
    expect(weighed.lowPercent).toBeGreaterThan(plain.lowPercent)
    const { judgement } = await assess(survey.program)
    expect(judgement.weightsSet).toMatchObject([{ ...kept, label: 'Left side', sort: 'body area' }])
    expect(judgement.weightsSet[0]?.things).toBeGreaterThan(3)
    expect(judgement.unweighed?.originalMetal.lowPercent).toBe(plain.lowPercent)
    const { entries } = await survey.ask('record.journal', { before: null, limit: 1 })
    expect(entries[0]).toMatchObject({ command: 'weight.set', label: 'Weight of Left side: 3' })
    await survey.ask('journal.undo', {})
    expect((await metal()).lowPercent).toBe(plain.lowPercent)
    await survey.ask('journal.redo', {})
    await survey.ask('weight.withdraw', { weighs: doors.weighs })
    expect((await survey.ask('record.view', {})).weights).toEqual([])
  })

  it('stand for everything of this car that is listed, and for nothing else', async () => {
    const things = await survey.ask('judgement.weighable', {})
    expect(new Set(things.map(({ sort }) => sort)).size).toBe(5)
    for (const sort of ['body area', 'layer', 'panel', 'group of parts', 'part']) {
      const thing = things.find((each) => each.sort === sort)
      await survey.ask('weight.set', { draft: { weighs: thing?.weighs ?? '', factor: 2, reason: '' } })
    }
    expect((await survey.ask('judgement.view', {})).weightsSet).toHaveLength(5)
    const refused = await survey.refusal('weight.set', { draft: { ...doors, weighs: 'panel/second-bonnet' } })
    expect(refused).toMatchObject({ code: 'not-found', field: 'draft.weighs' })
    expect((await survey.refusal('weight.withdraw', { weighs: 'part/horns' })).field).toBe('weighs')
  })

  it('are numbers from 0 to 1000: the door takes no other', () => {
    const set = (factor: number) =>
      requests['weight.set'].input.safeParse({ commandId: crypto.randomUUID(), draft: { ...doors, factor } }).success
    expect([0, 0.5, 1000].map(set)).toEqual([true, true, true])
    expect([-1, 1000.5, Number.NaN, Number.POSITIVE_INFINITY].map(set)).toEqual([false, false, false, false])
  })
})
