import type { IdentityClaim, IdentityEvidence } from '../../../shared-types/identity-model.ts'
import type { CompiledModel } from './compile-circuit.ts'
import { type IndexedModel, type IndexedTell, indexLiteral, valueWeights, variableOf } from './identity-model.ts'
import { positionOf, positions, refuse } from './model-problems.ts'
import { tellLikelihood } from './tell-likelihood.ts'
import { evenWeighing, type Weighing } from './weighing.ts'

/** One thing seen, measured or said, as a likelihood over one variable or over the cells of a donor's table. */
export interface EvidenceItem {
  readonly id: string
  readonly kind: 'reading' | 'observation' | 'claim'
  readonly variable: number
  readonly likelihood: Float64Array
  /** Table of donor and variable when `likelihood` runs over its cells; null when over the variable's values. */
  readonly table: number | null
  /** Id of the claim this one repeats: it is no second witness, all its likelihoods are 1. */
  readonly repeats: string | null
}

/** Likelihoods of all evidence. @throws ProblemError naming what is unknown, given twice or impossible whatever was built. */
export function evidenceItems(model: IndexedModel, evidence: IdentityEvidence): readonly EvidenceItem[] {
  const { readings, observations, claims, certain } = evidence
  const rules = model.source.rules.map(({ id }) => id)
  positions([...readings, ...observations, ...claims, ...certain].map(({ id }) => id).concat(rules), 'evidence', 'Id')
  const fromReadings = readings.map(({ id, tell, seen }): EvidenceItem => {
    const own = model.tells[positionOf(tell, model.tellAt, `readings.${id}.tell`, 'tell')] as IndexedTell
    const { outcomes, byKind } = tellLikelihood(own, model)
    const outcomeAt = new Map(outcomes.map((outcome, at) => [outcome, at]))
    const weights = Object.entries(seen).map(([outcome, weight]) => ({
      at: positionOf(outcome, outcomeAt, `readings.${id}.seen`, `outcome of ${tell}`),
      weight,
    }))
    const likelihood = byKind.flatMap((rows) =>
      rows.map((row) => weights.reduce((sum, { at, weight }) => sum + weight * (row[at] as number), 0)),
    )
    return {
      id,
      kind: 'reading',
      variable: own.variable,
      likelihood: greatestOne(Float64Array.from(likelihood)),
      table: own.donor?.table ?? null,
      repeats: null,
    }
  })
  const fromObservations = observations.map(({ id, variable, likelihood }): EvidenceItem => {
    const at = positionOf(variable, model.variableAt, `observations.${id}.variable`, 'variable')
    const own = greatestOne(valueWeights(variableOf(model, at), likelihood, `observations.${id}`))
    return { id, kind: 'observation', variable: at, likelihood: own, table: null, repeats: null }
  })
  const claimAt = positions(
    claims.map(({ id }) => id),
    'claims',
    'Claim',
  )
  return [...fromReadings, ...fromObservations, ...claims.map((claim) => fromClaim(claim, claims, claimAt, model))]
}

/** Scales to a greatest likelihood of 1: likelihoods are known only up to a factor. All 0 stays so: a conflict by itself. */
function greatestOne(likelihood: Float64Array): Float64Array {
  const greatest = likelihood.reduce((most, each) => Math.max(most, each), 0)
  return greatest > 0 ? likelihood.map((each) => each / greatest) : likelihood
}

function fromClaim(
  claim: IdentityClaim,
  claims: readonly IdentityClaim[],
  claimAt: ReadonlyMap<string, number>,
  model: IndexedModel,
): EvidenceItem {
  const { id, says, saidWhenTrue, saidWhenFalse } = claim
  const passed = new Set([id])
  for (let origin = claim.repeats; origin !== null; ) {
    if (passed.has(origin))
      refuse(`claims.${id}.repeats`, 'These claims repeat each other in a circle.', 'Break it at one.')
    passed.add(origin)
    origin = claims[positionOf(origin, claimAt, `claims.${id}.repeats`, 'claim')]?.repeats ?? null
  }
  const ofSeveral = model.claimAt.get(id)
  const [first] = says
  if (first === undefined) return refuse(`claims.${id}.says`, 'It says nothing.', 'Give it a literal.')
  const single = indexLiteral(first, model, `claims.${id}.says`)
  if (says.length > 1 && ofSeveral === undefined) throw new RangeError(`The model was not made for claim ${id}.`)
  const holds = ofSeveral === undefined ? single.allowed : Uint8Array.of(0, 1)
  const likelihood = Float64Array.from(holds, (each) =>
    claim.repeats !== null ? 1 : each === 1 ? saidWhenTrue : saidWhenFalse,
  )
  return {
    id,
    kind: 'claim',
    variable: ofSeveral ?? single.variable,
    likelihood: greatestOne(likelihood),
    table: null,
    repeats: claim.repeats,
  }
}

/** Product of the likelihoods of some evidence. */
export function likelihoodOf(compiled: CompiledModel, items: readonly EvidenceItem[]): Weighing {
  const even = evenWeighing(compiled)
  const values = [...even.values]
  const labels = [...even.labels]
  for (const { variable, likelihood, table } of items) {
    const [rows, at] = table === null ? [values, variable] : [labels, table]
    rows[at] = (rows[at] as Float64Array).map((weight, cell) => weight * (likelihood[cell] as number))
  }
  return { values, labels }
}
