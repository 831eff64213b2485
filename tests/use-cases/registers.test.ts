import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { assess } from '../../electron/use-cases/assess.ts'
import type { ClaimDraft } from '../../shared-types/claim.ts'
import type { CorrectionDraft } from '../../shared-types/correction.ts'
import type { ExhibitDraft } from '../../shared-types/exhibit.ts'
import type { PartEntry } from '../../shared-types/part.ts'
import type { SpotDraft } from '../../shared-types/reading.ts'
import { beginning } from '../record/sample-record.ts'
import { rust, type Survey, startSurvey } from './survey-program.ts'

const document: ExhibitDraft = {
  caption: 'Bill',
  madeBy: '',
  place: '',
  panelId: null,
  view: null,
  at: null,
  inReport: true,
  kind: 'document',
  measurement: null,
}
const claim: ClaimDraft = {
  words: 'Original engine',
  who: 'seller',
  kind: 'seller',
  on: null,
  where: '',
  repeats: null,
  question: '',
  ifTrue: '',
  ifNot: '',
  takenAsGiven: '',
  verdict: 'not settled',
  strength: 'not stated',
  reasons: '',
  setAside: '',
  wouldSettle: 'the pad',
  asserts: [],
  reliability: null,
  findings: [],
  exhibits: [],
}
const correction: CorrectionDraft = {
  what: 'Wing let in',
  group: 'metal',
  findings: [],
  state: 'planned',
  cost: null,
  by: '',
  materials: '',
  doneOn: null,
  removedPartsKept: '',
  reversible: 'not determined',
  verifiedBy: '',
  verifiedOn: null,
  exhibitsBefore: [],
  exhibitsAfter: [],
  findingsAfter: [],
  coating: null,
  note: '',
}
const part: PartEntry = {
  partId: 'wheels.1',
  state: 'later fitment',
  numberAsRead: '',
  dateAsRead: '',
  marks: '',
  expected: '',
  learned: 'seen',
  exhibits: [],
  countsWith: null,
  fastening: null,
  note: '',
}
const spot: SpotDraft = {
  panelId: 'front-door.L',
  view: 'left',
  at: null,
  where: '',
  values: [{ kind: 'value', um: 120 }],
  enteredIn: 'µm',
  gauge: null,
  mode: 'magnetic',
  substrate: 'steel',
  readAt: '2026-05-14T10:00:00.000Z',
  exhibits: [],
  note: '',
}

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
})
afterEach(() => survey.end())

describe('exhibits', () => {
  it('cited by a finding cannot be withdrawn, and the finding is named', async () => {
    await survey.ask('exhibit.add', { draft: document })
    await survey.ask('finding.add', { draft: { ...rust, exhibits: [1] } })
    const problem = await survey.refusal('exhibit.withdraw', { number: 1 })
    expect(problem).toMatchObject({ code: 'rule-of-the-trade', field: 'number' })
    expect(problem.message).toContain('F 1')
    await survey.ask('finding.amend', { number: 1, draft: rust })
    await survey.ask('exhibit.withdraw', { number: 1 })
    expect(survey.program.record().view().exhibits).toEqual([])
    expect((await survey.ask('exhibit.add', { draft: document })).number).toBe(2)
  })

  it('carry a value when and only when they are measurements', async () => {
    const bare = await survey.refusal('exhibit.add', { draft: { ...document, kind: 'measurement' } })
    expect(bare.field).toBe('draft.measurement')
    const measurement = { what: 'gap', value: 4, unit: 'mm', uncertainty: 0.5, method: '', instrument: '' } as const
    expect((await survey.refusal('exhibit.add', { draft: { ...document, measurement } })).code).toBe('input-refused')
    await survey.ask('exhibit.add', { draft: { ...document, kind: 'measurement', measurement } })
  })

  it('sent twice under one id are one exhibit', async () => {
    const commandId = 'd9bb0e8e-2b6c-4e29-8d2c-3f9d4d3fd0a1'
    const first = await survey.ask('exhibit.add', { commandId, draft: document } as { draft: ExhibitDraft })
    const again = await survey.ask('exhibit.add', { commandId, draft: document } as { draft: ExhibitDraft })
    expect(again.number).toBe(first.number)
    expect(survey.program.record().view().exhibits).toHaveLength(1)
  })
})

describe('claims', () => {
  it('cannot repeat themselves, a ring of others, or one that is not there', async () => {
    expect((await survey.refusal('claim.add', { draft: { ...claim, repeats: 5 } })).code).toBe('not-found')
    await survey.ask('claim.add', { draft: claim })
    await survey.ask('claim.add', { draft: { ...claim, repeats: 1 } })
    const itself = await survey.refusal('claim.amend', { number: 1, draft: { ...claim, repeats: 1 } })
    expect(itself).toMatchObject({ code: 'rule-of-the-trade', field: 'draft.repeats' })
    expect((await survey.refusal('claim.amend', { number: 1, draft: { ...claim, repeats: 2 } })).code).toBe(
      'rule-of-the-trade',
    )
    expect((await survey.refusal('claim.withdraw', { number: 1 })).message).toContain('C 2')
  })
})

describe('corrections', () => {
  it('are verified only by an exhibit of the day or after, or a finding numbered later', async () => {
    await survey.ask('finding.add', { draft: rust })
    await survey.ask('exhibit.add', { draft: document })
    const verified: CorrectionDraft = { ...correction, state: 'verified', findings: [1], doneOn: '2026-05-10' }
    expect((await survey.refusal('correction.add', { draft: verified })).field).toBe('draft.state')
    expect((await survey.refusal('correction.add', { draft: { ...verified, findingsAfter: [1] } })).code).toBe(
      'rule-of-the-trade',
    )
    const undated = { ...verified, doneOn: null, exhibitsAfter: [1] }
    expect((await survey.refusal('correction.add', { draft: undated })).field).toBe('draft.doneOn')
    const before = { ...verified, doneOn: '2026-06-01', exhibitsAfter: [1] }
    expect((await survey.refusal('correction.add', { draft: before })).instead).toEqual(['done'])
    await survey.ask('correction.add', { draft: { ...verified, exhibitsAfter: [1] } })
    await survey.ask('finding.add', { draft: rust })
    await survey.ask('correction.add', { draft: { ...verified, findingsAfter: [2] } })
  })

  it('keep their costs in order', async () => {
    const cost = { low: 10, likely: 5, high: 20, basis: '', pricedOn: null }
    expect((await survey.refusal('correction.add', { draft: { ...correction, cost } })).field).toBe('draft.cost')
  })
})

describe('the rest', () => {
  it('parts are of the list and of the body', async () => {
    await survey.ask('part.set', { entry: part })
    expect((await survey.refusal('part.set', { entry: { ...part, partId: 'wings' } })).field).toBe('entry.partId')
    const hood = { ...part, partId: 'folding-roof-cloth' }
    expect((await survey.refusal('part.set', { entry: hood })).message).toContain('hood cloth')
  })

  it('fastenings keep what was expected and found, and are compared in the assessment; undone, nothing is left', async () => {
    const blank = { head: '', drive: '', thread: '', plating: '', mark: '' }
    const fastening = {
      expected: { ...blank, plating: 'cadmium' },
      expectedBy: 'the right wing',
      found: { ...blank, plating: 'zinc' },
      witness: 'disturbed',
    } as const
    await survey.ask('part.set', { entry: { ...part, partId: 'front-side-bolts', fastening } })
    const { fastenings } = await assess(survey.program)
    expect(fastenings).toMatchObject([{ partId: 'front-side-bolts', differs: 1 }])
    expect(await survey.ask('parts.fastening', fastening)).toMatchObject({ words: fastenings[0]?.words })
    expect((await survey.ask('record.view', {})).parts[0]?.fastening).toEqual(fastening)
    await survey.ask('journal.undo', {})
    expect((await assess(survey.program)).fastenings).toEqual([])
  })

  it('readings are taken with a gauge that is there', async () => {
    expect((await survey.refusal('spot.add', { draft: { ...spot, gauge: 1 } })).field).toBe('draft.gauge')
    await survey.ask('spot.add', { draft: spot })
  })

  it('an intrusive step is noted as done only after leave was given', async () => {
    const consent = { step: 'lift the car', given: false, by: '', on: null, done: 'lifted at the sills' } as const
    expect((await survey.refusal('consent.set', { consent })).field).toBe('consent.given')
    await survey.ask('consent.set', { consent: { ...consent, given: true } })
  })

  it('a visit does not end before it began', async () => {
    const draft = { ...beginning.visit, endedAt: '2026-05-13T09:00:00.000Z' }
    expect((await survey.refusal('visit.add', { draft })).field).toBe('draft.endedAt')
    expect((await survey.ask('visit.add', { draft: beginning.visit })).number).toBe(2)
  })
})
