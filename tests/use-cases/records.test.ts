import { rmSync, utimesSync } from 'node:fs'
import { Readable } from 'node:stream'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { assess } from '../../electron/use-cases/assess.ts'
import { beginning } from '../record/sample-record.ts'
import { rust, type Survey, startSurvey } from './survey-program.ts'

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
})
afterEach(() => survey.end())

it('a record is listed with its title, and as missing once its file is gone', async () => {
  const { path } = survey.program.record()
  await survey.ask('records.close', {})
  expect(await survey.ask('records.list', {})).toMatchObject([
    { path, title: 'Sedge coupé, 1960', recordNumber: 'T-1', missing: false },
  ])
  rmSync(path)
  expect((await survey.ask('records.list', {}))[0]).toMatchObject({ path, missing: true })
})

it('a record is listed as changed when its file was, also while it is open', async () => {
  const { path } = survey.program.record()
  const longAgo = new Date('2026-01-02T03:04:05.000Z')
  const changedAt = async () => (await survey.ask('records.list', {}))[0]?.changedAt ?? ''
  await survey.ask('records.close', {})
  utimesSync(path, longAgo, longAgo)
  expect(await changedAt()).toBe(longAgo.toISOString())
  await survey.ask('records.open', { path, readOnly: false })
  for (const each of [path, `${path}-wal`]) utimesSync(each, longAgo, longAgo)
  await survey.ask('finding.add', { draft: rust })
  expect((await changedAt()) > longAgo.toISOString()).toBe(true)
})

it('the demonstration car is made without taking the record in hand away, once for all who ask', async () => {
  const { path } = survey.program.record()
  const [one, other] = await Promise.all([
    survey.ask('records.makeDemonstration', {}),
    survey.ask('records.makeDemonstration', {}),
  ])
  expect(other).toEqual(one)
  expect(survey.program.record().path).toBe(path)
  expect((await survey.ask('records.demonstration', {})).path).toBe(one.path)
})

it('without an open record every question about it says what to do', async () => {
  await survey.ask('records.close', {})
  expect((await survey.refusal('record.view', {})).code).toBe('no-record-open')
  expect((await survey.refusal('finding.add', { draft: rust })).code).toBe('no-record-open')
})

it('a second record of the same name is refused and the first stays', async () => {
  const { particulars, commission, visit } = beginning
  const problem = await survey.refusal('records.create', { fileName: 'sedge', particulars, commission, visit })
  expect(problem.code).toBe('record-exists')
})

it('a record opens again with everything in it, and a copy of it lies beside it', async () => {
  await survey.ask('finding.add', { draft: rust })
  const { path } = await survey.ask('record.backup', {})
  const view = await survey.ask('records.open', { path, readOnly: true })
  expect(view.findings).toHaveLength(1)
  expect((await survey.ask('record.verify', {})).sound).toBe(true)
  expect((await survey.ask('record.journal', { before: null, limit: 10 })).entries.map((row) => row.command)).toEqual([
    'finding.add',
    'records.create',
  ])
})

it('an upload serves once', async () => {
  const id = await survey.program.acceptUpload('../../a.jpg', Readable.from(['abc']))
  expect((await survey.program.upload(id)).fileName).toBe('a.jpg')
  await expect(survey.program.upload(id)).rejects.toMatchObject({ problem: { code: 'not-found' } })
})

it('an assessment is plain JSON with every computed conclusion', async () => {
  await survey.ask('finding.add', {
    draft: { ...rust, grade: { standard: 'ISO 4628-3', affectedPercent: 0.4, basis: 'estimated' } },
  })
  const assessment = await assess(survey.program)
  expect(JSON.parse(JSON.stringify(assessment))).toEqual(assessment)
  expect(assessment.rustGrades).toMatchObject([{ finding: 1, iso4628Part3: { grade: 'Ri 2' }, astmD610: { grade: 6 } }])
  expect(assessment.judgement.whole.originalMetal).toMatchObject({ lowPercent: 0, highPercent: 100 })
})

it('a record that cannot be opened leaves the one in hand open', async () => {
  const { path } = survey.program.record()
  expect((await survey.refusal('records.open', { path: `${path}.gone`, readOnly: false })).code).toBe('record-missing')
  expect((await survey.ask('record.view', {})).path).toBe(path)
  expect((await survey.ask('records.open', { path, readOnly: true })).readOnly).toBe(true)
})
