import type { IdentityTell } from '../../../shared-types/identity-model.ts'
import type { IndexedModel, IndexedTell, IndexedVariable } from './identity-model.ts'
import { valueWeights, variableOf } from './identity-model.ts'
import { refuse } from './model-problems.ts'

/** How a tell reads: outcomes, and the likelihood of each for every as-built value, without and with each kind of donor. */
export interface TellLikelihood {
  readonly outcomes: readonly string[]
  /** By kind of donor (the first is none), by value as built, by outcome. One kind when the part stands alone. */
  readonly byKind: readonly (readonly Float64Array[])[]
}

type PartReads = Extract<IdentityTell['reads'], { kind: 'part' }>

/** Sums of shares may miss 1 by this much (shares written with a few decimals). */
const ROUNDING = 1e-6

/**
 * P(read | built) = original · P(read | built, misreading) + replaced · service[read] + wrong / k, and for a part off a
 * donor the donor's own distribution, misread like any other.
 * @throws ProblemError when shares do not add up or name unknown values.
 */
export function tellLikelihood(own: IndexedTell, model: IndexedModel): TellLikelihood {
  const known = worked.get(own)
  if (known !== undefined) return known
  const made = workOut(own, model)
  worked.set(own, made)
  return made
}

/** Tells of indexed models never change, and are asked of again and again. */
const worked = new WeakMap<IndexedTell, TellLikelihood>()

function workOut({ tell, variable, donor }: IndexedTell, model: IndexedModel): TellLikelihood {
  const own = variableOf(model, variable)
  const field = `tells ${tell.id}`
  if (tell.reads.kind === 'direct') {
    const { outcomes, likelihood } = tell.reads
    const rows = own.values.map((value) => {
      const row = likelihood[value]
      if (row === undefined || row.length !== outcomes.length)
        return refuse(`${field}.likelihood.${value}`, `It needs ${outcomes.length} numbers for ${value}.`, 'Add them.')
      return Float64Array.from(row)
    })
    return { outcomes, byKind: [rows] }
  }
  const { reads } = tell
  const misread = misreading(own, reads, field)
  const standing = alone(own, reads, misread, field)
  const donors = model.source.donors.find(({ id }) => id === reads.donor)?.kinds ?? []
  const brought =
    donor === null
      ? []
      : donors.map(({ id, fitted }) => {
          const given = fitted[tell.id]
          // A kind of donor that says nothing of this part did not bring it.
          if (given === undefined) return standing
          const shares = valueWeights(own, given, `donors ${reads.donor}.${id}.${tell.id}`)
          sumsToOne(shares, `donors ${reads.donor}.${id}.${tell.id}`)
          const read = own.values.map((_, outcome) =>
            shares.reduce((sum, share, value) => sum + share * (misread[value]?.[outcome] as number), 0),
          )
          return own.values.map(() => Float64Array.from(read))
        })
  return { outcomes: own.values, byKind: [standing, ...brought] }
}

function sumsToOne(shares: Float64Array, field: string): void {
  const sum = shares.reduce((total, share) => total + share, 0)
  if (Math.abs(sum - 1) > ROUNDING) refuse(field, `Its shares add up to ${sum}.`, 'They must add up to 1.')
}

/** By value as fitted, by value as read. */
function misreading(variable: IndexedVariable, { misread }: PartReads, field: string): readonly Float64Array[] {
  const count = variable.values.length
  if (typeof misread === 'number') {
    if (count === 1) return [Float64Array.of(1)]
    return variable.values.map((_, fitted) =>
      Float64Array.from(variable.values, (_read, read) => (read === fitted ? 1 - misread : misread / (count - 1))),
    )
  }
  return variable.values.map((value, fitted) => {
    const row = misread[value]
    if (row === undefined) return Float64Array.from(variable.values, (_read, read) => (read === fitted ? 1 : 0))
    const shares = valueWeights(variable, row, `${field}.misread.${value}`)
    sumsToOne(shares, `${field}.misread.${value}`)
    return shares
  })
}

function alone(
  variable: IndexedVariable,
  { replaced, wrong, service }: PartReads,
  misread: readonly Float64Array[],
  field: string,
): readonly Float64Array[] {
  const original = 1 - replaced - wrong
  if (original < -ROUNDING) refuse(field, `Replaced and wrong add up to ${replaced + wrong}.`, 'They may be 1 at most.')
  const fitted = valueWeights(variable, service, `${field}.service`)
  if (replaced > 0) sumsToOne(fitted, `${field}.service`)
  const count = variable.values.length
  return misread.map((row) =>
    row.map((read, at) => original * read + replaced * (fitted[at] as number) + wrong / count),
  )
}
