import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { UseCase } from '../../electron/use-cases/program.ts'
import { type RunningProgram, startProgram } from '../../electron/use-cases/running-program.ts'
import { useCases } from '../../electron/use-cases/use-cases.ts'
import type { RequestInput, RequestName, RequestOutput } from '../../shared-types/contract.ts'
import type { Observation } from '../../shared-types/observation.ts'
import { openDemonstration } from '../demonstration/made-once.ts'

const bracket: Observation = {
  tell: 'sedge/loom-bracket',
  state: 'seen',
  value: 'one-hole',
  surePercent: null,
  measured: null,
  exhibits: [],
  note: '',
}

describe('what a page asks after every key', () => {
  let folder: string
  let program: RunningProgram
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'identity-weights-'))
    program = startProgram({ recordsFolder: folder, scratchFolder: join(folder, 'scratch'), tell: () => undefined })
    await openDemonstration(program, join(folder, 'demonstration.wmk'))
  }, 120_000)
  afterAll(async () => {
    await program.end()
    rmSync(folder, { recursive: true, force: true })
  })
  const ask = async <N extends RequestName>(name: N, input: RequestInput<N>): Promise<RequestOutput<N>> =>
    (useCases[name] as UseCase<N>)(program, input)

  it.each([
    ['as recorded', []],
    ['with an answer tried', [bracket]],
  ])('is, with what the sheets say of their tells, the whole answer: %s', async (_, whatIf) => {
    const chainsOf = ['sedge/built']
    const whole = await ask('identity.view', { whatIf, chainsOf })
    const { sheetsKey, tells: texts } = await ask('identity.tells', {})
    const weights = await ask('identity.weights', { whatIf, chainsOf, claimChains: [1, 2, 3, 4] })
    expect(weights.sheetsKey).toBe(sheetsKey)
    const textOf = new Map(texts.map((text) => [text.key, text]))
    const { sheetsKey: _key, ...rest } = weights
    expect({
      ...rest,
      tells: weights.tells.map((standing) => ({ ...textOf.get(standing.key), ...standing })),
      variables: weights.variables.map(({ because, ...variable }) => ({ ...variable, because: because ?? [] })),
      more: null,
    }).toEqual(whole)
  })

  it('carries a chain only where it is open: null says that it was not asked for', async () => {
    const { variables, claims } = await ask('identity.weights', {
      whatIf: [],
      chainsOf: ['sedge/series'],
      claimChains: [2],
    })
    expect(variables.filter(({ because }) => because !== null).map(({ key }) => key)).toEqual(['sedge/series'])
    expect(claims.filter(({ because }) => because !== null).map(({ claim }) => claim)).toEqual([2])
    expect(claims.find(({ claim }) => claim === 2)?.because?.length).toBeGreaterThan(5)
  })

  it('weighs a claim the same whether its chain is open or not', async () => {
    const claimsWith = async (claimChains: number[]) =>
      (await ask('identity.weights', { whatIf: [bracket], chainsOf: [], claimChains })).claims
    const closed = await claimsWith([])
    const open = await claimsWith([1, 2, 3, 4])
    expect(closed).toHaveLength(4)
    closed.forEach(({ claim, verdict, words, speaks, before, after, decibans }, at) => {
      expect(open[at]).toMatchObject({ claim, verdict, words, speaks })
      expect(open[at]?.before).toBeCloseTo(before, 12)
      expect(open[at]?.after).toBeCloseTo(after, 12)
      expect(open[at]?.decibans).toBeCloseTo(decibans ?? Number.NaN, 9)
    })
  })

  it('does not carry again what stays the same of a tell', async () => {
    const { tells } = await ask('identity.weights', { whatIf: [], chainsOf: [], claimChains: [] })
    expect(tells.length).toBeGreaterThanOrEqual(60)
    for (const tell of tells) expect(Object.keys(tell)).toEqual(['key', 'bits', 'worth', 'toldBy', 'observation'])
  })
})
