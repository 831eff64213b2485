import type { IdentityAnswer } from '../../shared-types/identity-answer.ts'
import type { SourceWeights, VariableView } from '../../shared-types/identity-view.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import type { KnownVariable } from '../sheets/reference/sheet-names.ts'
import type { Noted } from './identity-evidence.ts'
import { accountName, chainOf, oddsDecibans } from './identity-words.ts'

/** First and last day of the values that hold nine tenths of the weight, a twentieth left out at either end. */
function spanOf(variable: KnownVariable, shares: Readonly<Record<string, number>>): VariableView['span'] {
  if (variable.definition.kind !== 'dates') return null
  const { values } = variable.definition
  let below = 0
  let from: string | null = null
  let to: string | null = null
  for (const value of values) {
    below += shares[value.id] ?? 0
    if (from === null && below > 0.05) from = value.from
    if (to === null && below >= 0.95) to = value.to
  }
  return from === null || to === null ? null : { from, to }
}

export function variableViews(compiled: CompiledSheets, answer: IdentityAnswer, noted: Noted): readonly VariableView[] {
  return compiled.variables.map((variable) => {
    const { key, definition } = variable
    const before = answer.prior.variables[key] ?? {}
    const now = answer.posterior?.variables[key] ?? {}
    const own = answer.statements.find(({ id }) => id === key)?.contributions
    return {
      key,
      name: compiled.nameOf(key),
      kind: definition.kind,
      values: definition.values.map(({ id, name }) => ({ id, name, before: before[id] ?? 0, now: now[id] ?? 0 })),
      span: spanOf(variable, now),
      because: chainOf(own, compiled, noted),
      startDecibans: own == null ? null : oddsDecibans(own.before),
      bySource: sourceWeights(compiled, answer, variable, now),
    }
  })
}

/** Sources that move a weight by less than this are said to agree. */
const LEAST_DISAGREEMENT = 0.005

/** Weights under each source alone, where they are not those of all together. */
function sourceWeights(
  compiled: CompiledSheets,
  answer: IdentityAnswer,
  { key, definition }: KnownVariable,
  now: Readonly<Record<string, number>>,
): readonly SourceWeights[] {
  const accounts = answer.posterior?.accounts ?? []
  const disagrees = accounts.some(({ variables }) =>
    definition.values.some(({ id }) => {
      const own = variables?.[key]?.[id]
      return own === undefined || Math.abs(own - (now[id] ?? 0)) >= LEAST_DISAGREEMENT
    }),
  )
  if (accounts.length < 2 || !disagrees) return []
  return accounts.map(({ id, share, variables }) => ({
    source: accountName(compiled, id),
    belief: share,
    shares: variables === null ? null : definition.values.map((value) => variables[key]?.[value.id] ?? 0),
  }))
}
