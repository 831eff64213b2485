import { existsSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type DemonstrationStep, readDemonstration } from '../../electron/use-cases/demonstration-record.ts'
import { panelList } from '../../electron/sheets/panel-list.ts'
import type { RequestName } from '../../shared-types/contract.ts'

const survey = readDemonstration()
type StepOf<N extends RequestName> = Extract<DemonstrationStep, { request: N }>
const steps = <N extends RequestName>(name: N): StepOf<N>[] =>
  survey.steps.filter((step): step is StepOf<N> => step.request === name)

describe('the survey of the demonstration car', () => {
  it('passes every schema of the contract and runs forward in time', () => {
    const times = survey.steps.map((step) => step.at)
    expect(times).toEqual([...times].sort())
    expect(survey.made <= (times[0] ?? '')).toBe(true)
  })

  it('leaves panels unseen and out of reach, with reasons, and never says all is well', () => {
    const walked = panelList('coupe', survey.create.commission.level, survey.create.particulars.conditions).panels
    const seen = new Set(steps('panel.setMetal').map((step) => step.input.panelId))
    const shut = steps('panel.notAccessible')
    expect(walked.length).toBeGreaterThan(80)
    expect(seen.size / walked.length).toBeGreaterThan(0.8)
    expect(shut.length).toBeGreaterThanOrEqual(5)
    for (const step of shut) expect(step.input.reason.length).toBeGreaterThan(15)
    expect(walked.filter((panel) => !seen.has(panel.id)).length).toBeGreaterThan(shut.length)
    const ids = new Set(walked.map((panel) => panel.id))
    for (const step of steps('panel.setMetal')) expect(ids, step.input.panelId).toContain(step.input.panelId)
  })

  it('says a panel has nothing found only where no finding was written', () => {
    const found = new Set(steps('finding.add').map((step) => step.input.draft.panelId))
    for (const step of steps('panel.nothingFound')) expect(found.has(step.input.panelId), step.input.panelId).toBe(false)
  })

  it('ends with two claims supported, two contradicted and two not settled, each with reasons', () => {
    const verdicts = steps('claim.amend').map((step) => step.input.draft.verdict)
    expect([...verdicts].sort()).toEqual([
      'contradicted',
      'contradicted',
      'not settled',
      'not settled',
      'supported',
      'supported',
    ])
    for (const step of steps('claim.amend')) expect(step.input.draft.reasons).not.toBe('')
  })

  it('cites only exhibits and findings that were there before', () => {
    let exhibits = 0
    let findings = 0
    for (const step of survey.steps) {
      if (['exhibit.add', 'exhibit.addPicked', 'exhibits.import'].includes(step.request)) exhibits += 1
      const text = JSON.stringify(step.input)
      for (const list of text.matchAll(/"exhibits(?:Before|After)?":\[([\d,]*)\]/g)) {
        for (const number of (list[1] ?? '').split(',').filter(Boolean)) expect(Number(number)).toBeLessThanOrEqual(exhibits)
      }
      for (const list of text.matchAll(/"findings(?:After)?":\[([\d,]*)\]/g)) {
        for (const number of (list[1] ?? '').split(',').filter(Boolean)) expect(Number(number)).toBeLessThanOrEqual(findings)
      }
      if (step.request === 'finding.add') findings += 1
    }
    expect(findings).toBeGreaterThanOrEqual(16)
  })

  it('has every photograph it names', () => {
    for (const step of steps('exhibits.import')) {
      for (const source of step.input.sources) {
        if (source.from === 'file') expect(existsSync(source.path), source.path).toBe(true)
      }
    }
  })
})
