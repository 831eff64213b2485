import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { init } from 'z3-solver'
import { z } from 'zod'
import { compileModel } from '../../../electron/analysis/identity/compile-circuit.ts'
import { ConflictFinder } from '../../../electron/analysis/identity/conflicts.ts'
import { certainFacts } from '../../../electron/analysis/identity/hard-facts.ts'
import { indexModel } from '../../../electron/analysis/identity/index-model.ts'
import { countLegalBuilds } from '../../../electron/analysis/identity/legal-builds.ts'
import { posterior } from '../../../electron/analysis/identity/posterior.ts'
import { makeReasoner, viewOf } from '../../../electron/analysis/identity/reasoner.ts'
import { identityModel } from '../../../shared-types/identity-model.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { carLineModel } from './car-line-models.ts'
import { hardReadings, type Judge, makeJudge } from './outside-judge.ts'

const literals = z.array(z.tuple([z.number(), z.array(z.number())]))
const counted = z.object({
  note: z.string(),
  models: z.array(
    z.object({
      sizes: z.array(z.number()),
      rules: z.array(z.tuple([literals, literals])),
      builds: z.string(),
      buildsByValue: z.array(z.array(z.string())),
    }),
  ),
})
const path = join(import.meta.dirname, '../../fixtures/car-line-counts.json')
const file = counted.parse(JSON.parse(readFileSync(path, 'utf8')))

describe('legal builds and marginals of generated car lines, as BuDDy 2.4 counts them', () => {
  it.each(file.models.map((model, at) => ({ ...model, name: `line ${at + 1}, ${model.builds} builds` })))(
    '$name',
    (one) => {
      const named = ([variable, values]: z.infer<typeof literals>[number]) => [`v${variable}`, values.map(String)]
      const model = identityModel.parse({
        variables: one.sizes.map((size, at) => ({
          name: `v${at}`,
          values: Array.from({ length: size }, (_, own) => `${own}`),
        })),
        rules: one.rules.map(([ifs, then], at) => ({ id: `r${at}`, ifs: ifs.map(named), thenAny: then.map(named) })),
      })
      const compiled = compileModel(indexModel(model))
      expect(countLegalBuilds(compiled).toString()).toBe(one.builds)
      const reasoner = makeReasoner(compiled)
      const view = viewOf(reasoner, [])
      if (view === null) throw new Error('Something must be possible.')
      const { variables } = posterior(reasoner, view)
      one.buildsByValue.forEach((counts, at) => {
        counts.forEach((count, value) => {
          const error = Math.abs((variables[`v${at}`]?.[`${value}`] ?? Number.NaN) - Number(count) / Number(one.builds))
          expect(error).toBeLessThan(1e-12)
        })
      })
    },
  )
})

describe('minimal conflicts of generated car lines, judged by the SMT solver z3', () => {
  let judge: Judge
  beforeAll(async () => {
    judge = await makeJudge(init)
  })
  afterAll(() => judge.end())

  it('what is found cannot stand, and can without any one item; what is not found can stand', async () => {
    let conflicts = 0
    for (let seed = 1; seed <= 12; seed++) {
      const model = carLineModel({ variables: 30, rules: 200, dates: 24 }, 40 + seed)
      const certain = hardReadings(model, 10, seed)
      const indexed = indexModel(model)
      const finder = new ConflictFinder(indexed, certainFacts(indexed, certain))
      const asked = judge.about(model, certain)
      const found = finder.one()?.map((item) => finder.items[item]?.id ?? '') ?? null
      const all = finder.items.map(({ id }) => id)
      expect(await asked(all), `seed ${seed}`).toBe(found === null)
      if (found === null) continue
      conflicts += 1
      expect(await asked(found)).toBe(false)
      for (const id of found) expect(await asked(found.filter((other) => other !== id))).toBe(true)
    }
    expect(conflicts).toBeGreaterThan(4)
  }, 120_000)
})

it('a sheet too entangled is refused in plain words that name the densest part', () => {
  const model = indexModel(carLineModel({ variables: 40, rules: 300, dates: 24 }, 3))
  const compiling = () => compileModel(model, { edges: 500, decisions: 1000 })
  expect(compiling).toThrow(ProblemError)
  expect(compiling).toThrow(/densest part joins \d+ variables.*date \(\d+\)/)
})
