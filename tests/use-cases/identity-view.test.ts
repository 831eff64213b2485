import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { identityOf } from '../../electron/use-cases/identity-view.ts'
import { type RunningProgram, startProgram } from '../../electron/use-cases/running-program.ts'
import type { SetAside } from '../../shared-types/identity-asking.ts'
import type { IdentityView } from '../../shared-types/identity-view.ts'
import type { Observation } from '../../shared-types/observation.ts'
import { openDemonstration } from '../demonstration/made-once.ts'
import { type Survey, startSurvey } from './survey-program.ts'

const nothingAside: SetAside = { tells: [], numbers: [], parts: [] }

const saw = (tell: string, value: string, more: Partial<Observation> = {}): Observation => ({
  tell: `sedge/${tell}`,
  state: 'seen',
  value,
  surePercent: null,
  measured: null,
  exhibits: [],
  note: '',
  ...more,
})
const variable = (view: IdentityView, id: string) => view.variables.find(({ key }) => key === `sedge/${id}`)
const now = (view: IdentityView, id: string, value: string): number =>
  variable(view, id)?.values.find((each) => each.id === value)?.now ?? Number.NaN

describe('the demonstration car', () => {
  let folder: string
  let program: RunningProgram
  let view: IdentityView
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'identity-'))
    program = startProgram({ recordsFolder: folder, scratchFolder: join(folder, 'scratch'), tell: () => undefined })
    await openDemonstration(program, join(folder, 'demonstration.wmk'))
    view = await identityOf(program.record(), { more: true })
  }, 120_000)
  afterAll(async () => {
    await program.end()
    rmSync(folder, { recursive: true, force: true })
  })

  it('is a plain Sedge coupé of the spring of 1960, with its reasons', () => {
    expect(view.problem).toBeNull()
    expect(now(view, 'body', 'coupe')).toBeGreaterThan(0.99)
    expect(now(view, 'series', 'lantern')).toBeLessThan(0.001)
    expect(variable(view, 'built')?.span).toEqual({ from: '1960-03-01', to: '1960-05-31' })
    const [step] = variable(view, 'built')?.because ?? []
    expect(step).toMatchObject({ words: 'Body tag B2 5519 (N 2)' })
    expect(step?.source).toMatch(/tag ledger.*\(invented\)/)
  })

  it('has two claims contradicted, two supported and two not settled, by findings that say why', () => {
    expect(view.claims.map(({ claim, verdict }) => [claim, verdict])).toEqual([
      [1, 'contradicted'],
      [2, 'contradicted'],
      [3, 'supported'],
      [4, 'supported'],
    ])
    const badge = view.claims[0]?.because.find(({ id }) => id === 'sedge/badges')
    expect(badge?.decibans).toBeGreaterThan(5)
    expect(view.claims[0]?.because.filter(({ decibans }) => (decibans ?? 0) < -5).map(({ id }) => id)).toContain(
      'sedge/dash-dials',
    )
    expect(view.claims.flatMap(({ because }) => because).every(({ source }) => source !== '')).toBe(true)
  })

  it('leads to the loom bracket next, which would tell April from March and plain from dressed', () => {
    expect(view.tells[0]).toMatchObject({ key: 'sedge/loom-bracket', panels: ['front-bulkhead'] })
    expect(view.tells[0]?.bits).toBeGreaterThan(0.5)
    const bits = view.tells.flatMap((tell) => tell.bits ?? [])
    expect(bits).toEqual(bits.toSorted((one, other) => other - one))
  })

  it('gives each source its own weights where they disagree, and the mixture is theirs by belief', () => {
    const series = variable(view, 'series')
    expect(series?.bySource).toHaveLength(2)
    expect(series?.bySource.reduce((sum, { belief }) => sum + belief, 0)).toBeCloseTo(1, 12)
    series?.values.forEach((value, at) => {
      const mixed = series.bySource.reduce((sum, { belief, shares }) => sum + belief * (shares?.[at] ?? 0), 0)
      expect(mixed).toBeCloseTo(value.now, 12)
    })
    expect(variable(view, 'body')?.bySource).toEqual([])
  })

  it('counts cars built like it from both sources, as the cells of the sheet say, and never those left', () => {
    const rarity = view.more?.rarity
    // Cells “coupé, Sedge” of the works ledger and of the Register, read off the sheet.
    expect(rarity).toMatchObject({ low: 683, high: 747, boundsOnly: false, neverBuilt: false })
    expect(rarity?.accounts.map(({ low, high }) => [low, high])).toEqual([
      [747, 747],
      [683, 683],
    ])
    expect(rarity?.like).toEqual([
      { variable: 'Body', value: 'coupé' },
      { variable: 'Series', value: 'Sedge' },
    ])
    expect(rarity?.words).toMatch(/How many are left is not known/)
  })

  it('lists whole builds no more probable than the weights of their parts, and proves the list', () => {
    const builds = view.more?.builds ?? []
    expect(view.more?.proved).toBe(true)
    expect(builds.map(({ share }) => share)).toEqual(builds.map(({ share }) => share).toSorted((a, b) => b - a))
    expect(builds[0]?.share).toBeLessThanOrEqual(now(view, 'built', 'm1960-04'))
    expect(builds[0]?.values).toContainEqual({ variable: 'Series', value: 'Sedge' })
  })

  it('says what a contradicted claim would take, further behind the more it takes', () => {
    const outlook = (claim: number) => view.more?.claims.find((each) => each.claim === claim)
    expect(outlook(1)?.story?.decibansBehind).toBeGreaterThan(outlook(2)?.story?.decibansBehind ?? Number.NaN)
    expect(outlook(1)?.story?.argument.join(' ')).toMatch(/Series: Sedge Lantern/)
    expect(outlook(3)?.story?.decibansBehind).toBeCloseTo(0, 9)
  })

  it('weighs tells for what is asked: the date by the loom bracket before all', async () => {
    const asked = { about: 'variable', variable: 'sedge/built' } as const
    const dated = await identityOf(program.record(), { chainsOf: [], question: asked })
    expect(dated.question).toEqual(asked)
    expect(dated.tells[0]?.key).toBe('sedge/loom-bracket')
    const bits = (of: IdentityView, tell: string) => of.tells.find(({ key }) => key === tell)?.bits ?? Number.NaN
    expect(bits(dated, 'sedge/washer-bracket')).toBeLessThan(0.01)
    expect(bits(view, 'sedge/washer-bracket')).toBeGreaterThan(0.3)
    // What a look says of one variable is no more than what it says of the whole build.
    for (const { key } of dated.tells.filter((tell) => tell.bits !== null))
      expect(bits(dated, key)).toBeLessThanOrEqual(bits(view, key) + 1e-9)
  })

  it('says of each step what it rests on, and whether without it alone the conclusion would turn', async () => {
    const chain = variable(view, 'series')?.because ?? []
    expect(chain.some(({ exhibits }) => exhibits.length > 0)).toBe(true)
    for (const { id, overturns } of chain.filter((step) => step.decibans !== null && !step.id.startsWith('number '))) {
      const without = await identityOf(program.record(), {
        setAside: { tells: [id], numbers: [], parts: [] },
        chainsOf: [],
      })
      expect(now(without, 'series', 'sedge') > 0.5, id).toBe(!overturns)
    }
  })

  it('does without a number set aside also where it stands on a part', async () => {
    const tag = view.numbers.find(({ asRead }) => asRead === 'B2 5519')
    expect(
      program
        .record()
        .view()
        .parts.map(({ numberAsRead }) => numberAsRead),
    ).toContain('B2 5519')
    const without = await identityOf(program.record(), {
      setAside: { ...nothingAside, numbers: [...(tag?.rows ?? [])] },
      chainsOf: [],
    })
    expect(without.numbers).toEqual(view.numbers.filter((number) => number !== tag))
    expect(without.numbers).toHaveLength(view.numbers.length - 1)
  })

  it('answers what-if without keeping it, and retracting restores', async () => {
    const before = program.record().view().journalNumber
    const tried = await identityOf(program.record(), { whatIf: [saw('loom-bracket', 'one-hole')], chainsOf: [] })
    expect(now(tried, 'built', 'm1960-03')).toBeLessThan(0.02)
    expect(now(tried, 'series', 'marl')).toBeLessThan(now(view, 'series', 'marl'))
    expect(program.record().view().journalNumber).toBe(before)
    const again = await identityOf(program.record(), { chainsOf: [] })
    expect(again.claims).toEqual(view.claims)
  })
})

describe('a record without observations', () => {
  let survey: Survey
  beforeEach(async () => {
    survey = await startSurvey()
  })
  afterEach(() => survey.end())
  const ask = (chainsOf: string[] = []) => survey.ask('identity.view', { whatIf: [], chainsOf })

  it('says to take in a sheet first; a sheet taken in is frozen, offered as such, and can be left again', async () => {
    expect((await ask()).problem).toMatch(/Take one in/)
    const offered = async () =>
      (await survey.ask('sheets.offered', {})).find(({ sheetId }) => sheetId === 'sedge')?.inRecord
    expect(await offered()).toBe('no')
    expect(await survey.ask('looks.next', {})).toEqual([])
    await survey.ask('sheet.take', { sheetId: 'sedge' })
    expect(await offered()).toBe('this one')
    const looks = await survey.ask('looks.next', {})
    expect(looks.map(({ tell }) => tell)).toEqual((await ask()).tells.slice(0, 3).map(({ key }) => key))
    expect(looks.every(({ reason }) => /\d bit of the whole build/.test(reason))).toBe(true)
    const view = await ask()
    expect(view.sheets).toMatchObject([{ sheetId: 'sedge', edition: '3' }])
    expect(view.tells.length).toBeGreaterThanOrEqual(60)
    expect(view.claims).toEqual([])
    await survey.ask('sheet.leave', { sheetId: 'sedge' })
    expect((await ask()).problem).toMatch(/Take one in/)
  })

  it('takes soft and measured observations for less than certain ones', async () => {
    await survey.ask('sheet.take', { sheetId: 'sedge' })
    const prior = now(await ask(), 'built', 'm1963-06')
    const weightAfter = async (observation: Observation) => {
      await survey.ask('observation.set', { observation })
      return now(await ask(), 'built', 'm1963-06')
    }
    const soft = await weightAfter(saw('stud-circle', 'c101', { state: 'believed', surePercent: 70 }))
    const sure = await weightAfter(saw('stud-circle', 'c101'))
    expect(prior).toBeLessThan(soft)
    expect(soft).toBeLessThan(sure)
    const rough = { state: 'measured', value: null, measured: { value: 100, standardUncertainty: 8 } } as const
    expect(Math.abs((await weightAfter(saw('stud-circle', 'c101', rough))) - prior)).toBeLessThan(0.15 * prior)
    const fine = { state: 'measured', value: null, measured: { value: 101.6, standardUncertainty: 0.2 } } as const
    expect(await weightAfter(saw('stud-circle', 'c101', fine))).toBeGreaterThan(0.9 * sure)
    // As everywhere, ± is the expanded uncertainty and says so.
    const told = JSON.stringify(await identityOf(survey.program.record(), { more: true }))
    expect(told).toContain('Stud circle of the hubs: 101.6 ± 0.4 mm (k = 2)')
    await survey.ask('observation.withdraw', { tell: 'sedge/stud-circle' })
    expect(now(await ask(), 'built', 'm1963-06')).toBeCloseTo(prior, 14)
  })

  it('refuses what does not fit, in words, and changes nothing', async () => {
    const set = (observation: Observation) => survey.refusal('observation.set', { observation })
    expect((await set(saw('badges', 'lantern'))).message).toMatch(/Take the sheet in first/)
    expect((await survey.refusal('sheet.take', { sheetId: 'nothing' })).code).toBe('not-found')
    await survey.ask('sheet.take', { sheetId: 'sedge' })
    expect((await set(saw('badges', 'gold'))).field).toBe('observation.value')
    expect((await set(saw('badges', 'lantern', { value: null }))).field).toBe('observation.value')
    expect((await set(saw('badges', 'lantern', { state: 'believed' }))).field).toBe('observation.surePercent')
    const measured = { value: 1, standardUncertainty: 1 }
    expect((await set(saw('badges', 'lantern', { state: 'measured', measured }))).message).toMatch(/not measured/)
    expect((await set(saw('badges', 'lantern', { exhibits: [4] }))).field).toBe('observation.exhibits')
    expect((await survey.refusal('observation.withdraw', { tell: 'sedge/badges' })).code).toBe('not-found')
    await survey.ask('observation.set', { observation: saw('badges', 'lantern') })
    expect((await survey.refusal('sheet.leave', { sheetId: 'sedge' })).message).toMatch(/1 observations speak of tells/)
    expect(survey.program.record().view().observations).toHaveLength(1)
  })

  it('does without a number or an observation set aside as if it had never been noted, and keeps nothing of the try', async () => {
    await survey.ask('sheet.take', { sheetId: 'sedge' })
    await survey.ask('observation.set', { observation: saw('stud-circle', 'c101') })
    const before = await ask()
    const draft = { kind: 'Body tag', where: '', onPaper: '', paper: '', asRead: 'B2 5519', exhibits: [], note: '' }
    await survey.ask('carNumber.add', { draft: { ...draft, howRead: 'read character by character' } })
    const read = await ask()
    expect(read.numbers).toHaveLength(1)
    expect(now(read, 'built', 'm1960-04')).toBeGreaterThan(now(before, 'built', 'm1960-04') + 0.1)
    const journal = survey.program.record().view().journalNumber
    const without = (setAside: Partial<SetAside>) =>
      survey.ask('identity.view', { whatIf: [], chainsOf: [], setAside: { ...nothingAside, ...setAside } })
    expect(await without({ numbers: [1] })).toEqual(before)
    const tell = await without({ tells: ['sedge/stud-circle'] })
    expect(tell.numbers).toHaveLength(1)
    expect(tell.tells.find(({ key }) => key === 'sedge/stud-circle')?.observation).toBeNull()
    const more = await survey.ask('identity.more', { whatIf: [], setAside: { ...nothingAside, numbers: [1] } })
    expect(more?.builds[0]?.share).not.toBe((await survey.ask('identity.more', { whatIf: [] }))?.builds[0]?.share)
    expect(survey.program.record().view().journalNumber).toBe(journal)
    expect(await ask()).toEqual(read)
  })

  it('counts a claim only with a reliability, and its repetition not at all', async () => {
    await survey.ask('sheet.take', { sheetId: 'sedge' })
    const claim = {
      words: 'A Lantern',
      who: '',
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
      wouldSettle: '',
      asserts: [{ sheetId: 'sedge', variable: 'series', values: ['lantern'] }],
      reliability: null,
      findings: [],
      exhibits: [],
    } as const
    const draft = (more: object) => ({
      ...claim,
      asserts: [...claim.asserts.map((one) => ({ ...one, values: [...one.values] }))],
      findings: [],
      exhibits: [],
      ...more,
    })
    const weight = async () => now(await ask(), 'series', 'lantern')
    const prior = await weight()
    await survey.ask('claim.add', { draft: draft({}) })
    expect(await weight()).toBeCloseTo(prior, 12)
    await survey.ask('claim.amend', { number: 1, draft: draft({ reliability: 80 }) })
    const once = await weight()
    expect(once).toBeCloseTo((0.8 * prior) / (0.8 * prior + 0.2 * (1 - prior)), 9)
    await survey.ask('claim.add', { draft: draft({ reliability: 80, repeats: 1 }) })
    expect(await weight()).toBeCloseTo(once, 9)
  })
})
