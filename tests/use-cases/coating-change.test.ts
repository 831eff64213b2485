import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { assess } from '../../electron/use-cases/assess.ts'
import type { CorrectionDraft } from '../../shared-types/correction.ts'
import type { SpotDraft } from '../../shared-types/reading.ts'
import { type Survey, startSurvey } from './survey-program.ts'

const panelId = 'front-door.L'
const places = Array.from({ length: 30 }, (_, at) => ({
  u: 1720 + 140 * (at % 6),
  v: -800 + 105 * Math.floor(at / 6),
}))
const isThick = ({ u, v }: { u: number; v: number }) => u > 2000 && v > -560

function spotAt(place: { u: number; v: number }, um: number, day: string): SpotDraft {
  return {
    panelId,
    view: 'left',
    at: place,
    where: '',
    values: [{ kind: 'value', um }],
    enteredIn: 'µm',
    gauge: null,
    mode: 'magnetic',
    substrate: 'steel',
    readAt: `${day}T10:00:00.000Z`,
    exhibits: [],
    note: '',
  }
}

const correction: CorrectionDraft = {
  what: 'Filler ground out of the door, steel let in',
  group: 'metal',
  findings: [],
  state: 'done',
  cost: null,
  by: '',
  materials: '',
  doneOn: '2026-05-20',
  removedPartsKept: '',
  reversible: 'no',
  verifiedBy: '',
  verifiedOn: null,
  exhibitsBefore: [],
  exhibitsAfter: [],
  findingsAfter: [],
  coating: null,
  note: '',
}

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
})
afterEach(() => survey.end())

async function readDoor(day: string, um: (place: { u: number; v: number }) => number): Promise<number[]> {
  const numbers: number[] = []
  for (const place of places) {
    const { number } = await survey.ask('spot.add', { draft: spotAt(place, um(place), day) })
    numbers.push(number ?? 0)
  }
  return numbers
}
const thick = (place: { u: number; v: number }) => (isThick(place) ? 1100 : 118 + (place.u % 7))
const thin = (place: { u: number; v: number }) => 121 + (place.u % 9)

describe('a correction that cites the coating before and after', () => {
  it('says that filler narrowed only where the interval of the difference says so', async () => {
    const before = await readDoor('2026-05-14', thick)
    const after = await readDoor('2026-05-21', thin)
    await survey.ask('correction.add', { draft: { ...correction, coating: { panelId, before, after } } })
    const change = await survey.ask('coating.change', { number: 1 })
    expect(change?.problem).toBeNull()
    expect(change?.area?.verdict).toBe('less')
    expect(change?.area?.change.high).toBeLessThan(0)
    expect(change?.area?.change.words).toMatch(/^Narrowed by [\d.]+ m² \(/)
    expect(change?.volume?.change.words).toMatch(/^Narrowed by [\d.]+ cm³ \(/)
    // The difference rests on both maps: it cannot be known better than the one before.
    const { before: was, change: less } = change?.volume ?? { before: null, change: null }
    expect((less?.high ?? 0) - (less?.low ?? 0)).toBeGreaterThan(0.8 * ((was?.high ?? 0) - (was?.low ?? 0)))
    const assessed = await assess(survey.program)
    expect(assessed.coatingChanges).toEqual([change])
  })

  it('claims nothing where the same was read again, nor from few readings', async () => {
    const before = await readDoor('2026-05-14', thick)
    const after = await readDoor('2026-05-21', thick)
    await survey.ask('correction.add', { draft: { ...correction, coating: { panelId, before, after } } })
    const same = await survey.ask('coating.change', { number: 1 })
    expect(same?.area?.verdict).toBe('not told')
    expect(same?.area?.change.words).toMatch(/^No change can be told: between .* less and .* more/)
    const few = { ...correction, coating: { panelId, before, after: after.slice(0, 6) } }
    await survey.ask('correction.amend', { number: 1, draft: few })
    const little = await survey.ask('coating.change', { number: 1 })
    expect(little?.area?.change.coverage).toBeNull()
    expect(little?.area?.change.words).toMatch(/^Not decided: .*too few/)
  })

  it('keeps the readings as they stood when they were cited, and says when one was amended since', async () => {
    const before = await readDoor('2026-05-14', thick)
    const after = await readDoor('2026-05-21', thin)
    const draft = { ...correction, coating: { panelId, before, after } }
    await survey.ask('correction.add', { draft })
    const cited = await survey.ask('coating.change', { number: 1 })
    const [place] = places
    if (place === undefined) throw new Error('no place')
    await survey.ask('spot.amend', { number: before[0] ?? 0, draft: spotAt(place, 1900, '2026-05-14') })
    await survey.ask('correction.amend', { number: 1, draft: { ...draft, note: 'looked at again' } })
    const now = await survey.ask('coating.change', { number: 1 })
    expect(now?.area).toEqual(cited?.area)
    expect(now?.notes).toEqual(['R 1 was amended since; computed from the readings as they were cited.'])
    expect((await survey.refusal('spot.withdraw', { number: 1 })).message).toMatch(/cited by K 1/)
  })

  it('leaves what was read before the work out of the map of the panel as it stands', async () => {
    const before = await readDoor('2026-05-14', thick)
    const after = await readDoor('2026-05-21', thin)
    const mixed = await survey.ask('coating.map', { panelId })
    expect(mixed.spots).toHaveLength(60)
    const coating = { panelId, before, after }
    await survey.ask('correction.add', { draft: { ...correction, state: 'planned', coating } })
    expect((await survey.ask('coating.map', { panelId })).spots).toHaveLength(60)
    await survey.ask('correction.amend', { number: 1, draft: { ...correction, coating } })
    const now = await survey.ask('coating.map', { panelId })
    expect(now.spots).toHaveLength(30)
    expect(now.leftOut).toContain('30: read before K 1 was done')
    expect(now.fillerArea?.middle).toBeLessThan(0.02)
  })

  it('is refused for a reading of both sides, of another panel, or that is not there', async () => {
    await readDoor('2026-05-14', thick)
    const refusal = (coating: CorrectionDraft['coating']) =>
      survey.refusal('correction.add', { draft: { ...correction, coating } })
    expect((await refusal({ panelId, before: [1, 2], after: [2] })).message).toMatch(/R 2 cannot be read before/)
    expect((await refusal({ panelId, before: [99], after: [] })).message).toMatch(/no R 99/)
    expect((await refusal({ panelId: 'front-door.R', before: [1], after: [] })).message).toMatch(/was not read on/)
  })

  it('says what is still missing, and a reading after the work can verify it', async () => {
    const before = await readDoor('2026-05-14', thick)
    await survey.ask('correction.add', { draft: { ...correction, coating: { panelId, before, after: [] } } })
    expect((await survey.ask('coating.change', { number: 1 }))?.problem).toMatch(/cite the readings after the work/)
    const verified: CorrectionDraft = { ...correction, state: 'verified', verifiedBy: 'A', verifiedOn: '2026-05-22' }
    expect((await survey.refusal('correction.add', { draft: verified })).field).toBe('draft.state')
    const after = await readDoor('2026-05-21', thin)
    await survey.ask('correction.add', { draft: { ...verified, coating: { panelId, before: [], after } } })
    await survey.ask('correction.add', { draft: correction })
    expect(await survey.ask('coating.change', { number: 3 })).toBeNull()
  })
})
