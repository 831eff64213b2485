import type { IdentityQuestion } from '../../../shared-types/identity-model.ts'
import { positionOf } from './model-problems.ts'
import { type AccountView, type Reasoner, statementWeighings } from './reasoner.ts'
import { product, type Weighing } from './weighing.ts'

/** Builds of one group, or of a part of it: what a weighing lets through, or one class of a variable. */
export type GroupPart = Weighing | { readonly variable: number; readonly own: number }

/** What is to be settled, as groups of builds that exclude each other; the whole build has none. */
export interface Groups {
  /** Variable the groups are classes of; -1 for a statement and for the whole build. */
  readonly variable: number
  /** By group: parts of it that exclude each other. */
  readonly through: readonly (readonly GroupPart[])[]
}

/**
 * Groups of a question. A variable is asked by its classes: under one account, values no rule and no table tells apart
 * keep their proportions whatever another variable's tell shows.
 */
export function groupsOf(reasoner: Reasoner, question: IdentityQuestion): Groups {
  const { compiled } = reasoner
  if (question.about === 'build') return { variable: -1, through: [] }
  if (question.about === 'statement') {
    const { holds, fails } = statementWeighings(reasoner, question.says, 'question.says')
    return { variable: -1, through: [[holds], fails] }
  }
  const variable = positionOf(question.variable, compiled.model.variableAt, 'question.variable', 'variable')
  return { variable, through: (compiled.classes[variable]?.members ?? []).map((_, own) => [{ variable, own }]) }
}

/** For one group under one account: its weight, weights there, and of every value and label the joint probability. */
export interface GroupShares {
  readonly values: readonly Float64Array[]
  readonly labels: readonly Float64Array[]
}

/** Variables and tables a joint distribution is wanted of; the first variable is always among them. */
export interface Wanted {
  readonly variables: ReadonlySet<number>
  readonly tables: ReadonlySet<number>
}

/**
 * Joint probabilities of group and value, group and table label, under one account; they sum to the group's probability.
 * What is not wanted is left empty.
 */
export function jointShares(
  { compiled, passes }: Reasoner,
  account: AccountView,
  group: GroupPart | null,
  { variables, tables }: Wanted,
): GroupShares {
  const { total } = account
  const ofClass = group !== null && 'own' in group ? group : null
  const weighing = group === null || 'own' in group ? account.weighing : product(account.weighing, group)
  if (ofClass === null) passes.slopesAsWell(weighing)
  else passes.slopesOfClass(weighing, ofClass.variable, ofClass.own)
  const nothing = new Float64Array()
  return {
    values: weighing.values.map((weights, variable) => {
      if (variable !== 0 && !variables.has(variable)) return nothing
      const shares = new Float64Array(weights.length)
      const only = variable === ofClass?.variable ? compiled.classes[variable]?.members[ofClass.own] : null
      if (only == null)
        for (let value = 0; value < shares.length; value++)
          shares[value] = passes.ofValue(weighing, variable, value) / total
      else for (const value of only) shares[value] = passes.ofValue(weighing, variable, value) / total
      return shares
    }),
    labels: weighing.labels.map((labels, table) =>
      tables.has(table) ? labels.map((_, label) => passes.ofLabel(weighing, table, label) / total) : nothing,
    ),
  }
}
