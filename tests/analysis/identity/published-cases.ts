import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { identityEvidence, identityModel } from '../../../shared-types/identity-model.ts'

/*
 * Six worked cases, made outside the project by enumeration; the provenance of each stands in the file beside it:
 * Lauritzen and Spiegelhalter, J. R. Statist. Soc. B 50 (1988) 157-224, a base-rate case after Eddy (1982), two after
 * published objections, and three invented ones.
 */
const literal = z.tuple([z.string(), z.array(z.string())])
const numbers = z.record(z.string(), z.number())
const publishedCase = z.object({
  id: z.string(),
  provenance: z.string(),
  variables: z.array(z.object({ name: z.string(), values: z.array(z.string()) })),
  rules: z.array(z.object({ id: z.string(), source: z.string(), ifs: z.array(literal) }).loose()),
  tables: z.array(z.object({ id: z.string(), scope: z.array(z.string()), weights: z.array(z.number()) })),
  counts: z
    .object({
      scope: z.array(z.string()),
      sources: z.array(z.object({ id: z.string(), reliability: z.number(), counts: z.array(z.number()) })),
    })
    .optional(),
  observations: z.array(
    z.object({ id: z.string(), var: z.string(), likelihood: numbers, reading: z.string().optional() }).loose(),
  ),
  target: z.string(),
  hypothesis: z.tuple([z.string(), z.string()]),
  tells: z.array(
    z.object({
      id: z.string(),
      var: z.string(),
      outcomes: z.array(z.string()),
      likelihood: z.record(z.string(), z.array(z.number())),
    }),
  ),
  hardReadings: z.array(z.object({ id: z.string(), var: z.string(), value: z.string() })),
  expected: z.object({
    legalBuilds: z.number(),
    prior: z.record(z.string(), numbers),
    posterior: z.record(z.string(), numbers),
    mostProbableBuild: z.object({ build: z.record(z.string(), z.string()), probability: z.number() }),
    posteriorBySource: z.record(z.string(), z.record(z.string(), numbers)).optional(),
    posteriorOfSource: numbers.optional(),
    targetEntropyBits: z.number(),
    voiBits: numbers,
    bestTell: z.string(),
    decibans: z.object({ total: z.number(), leaveOneOut: numbers, inOrder: numbers }),
    minimalConflicts: z.array(z.array(z.string())).default([]),
    minimalRepairs: z.array(z.array(z.string())).default([[]]),
  }),
})

const file = z.object({ cases: z.array(publishedCase) })
const path = join(import.meta.dirname, '../../fixtures/identity-cases.json')

/** The cases as the engine's own input, with what is expected of each. */
export const publishedCases = file.parse(JSON.parse(readFileSync(path, 'utf8'))).cases.map((one) => ({
  id: one.id,
  provenance: one.provenance,
  expected: one.expected,
  target: one.target,
  hypothesis: one.hypothesis,
  partReadings: one.observations.filter((observation) => 'partModel' in observation),
  model: identityModel.parse({
    variables: one.variables,
    rules: one.rules.map(({ id, source, ifs, then }) => ({ id, source, ifs, thenAny: then })),
    tables: one.tables.map(({ id, scope, weights }) => ({ id, scope, weights })),
    accounts: (one.counts?.sources ?? []).map(({ id, reliability, counts }) => ({
      id,
      reliability,
      tables: [{ id: `counts ${id}`, scope: one.counts?.scope, counts }],
    })),
    tells: one.tells.map(({ id, var: variable, outcomes, likelihood }) => ({
      id,
      variable,
      reads: { kind: 'direct', outcomes, likelihood },
    })),
  }),
  evidence: identityEvidence.parse({
    observations: one.observations.map(({ id, var: variable, likelihood }) => ({ id, variable, likelihood })),
    certain: one.hardReadings.map(({ id, var: variable, value }) => ({ id, says: [[variable, [value]]] })),
  }),
}))
