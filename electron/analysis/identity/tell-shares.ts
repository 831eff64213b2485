import type { z } from 'zod'
import type { IdentityLiteral } from '../../../shared-types/identity-model.ts'
import type { tellShares } from '../../../shared-types/tell-shares.ts'
import { type CircuitShelf, compiledOnce } from './compiled-once.ts'
import { indexLiteral } from './identity-model.ts'
import { positionOf } from './model-problems.ts'
import { mixedMarginals } from './posterior.ts'
import { itemsOf, type Reasoner, statementWeighings, viewOf } from './reasoner.ts'
import { product, type Weighing } from './weighing.ts'

type Input = z.infer<typeof tellShares.input>
type Answers = z.infer<typeof tellShares.output>

/**
 * What variables and statements weigh, exactly, for several choices of what is left out of the evidence or taken as given.
 * Leaving out what was read on a part itself asks what the part should be by everything else.
 * @throws ProblemError naming a variable or value the model does not have.
 */
export function sharesAsked({ model, evidence, questions }: Input, shelf: CircuitShelf | null = null): Answers {
  const { reasoner } = compiledOnce(model, evidence.claims, shelf)
  const items = itemsOf(reasoner, evidence)
  return {
    answers: questions.map(({ id, variables, statements, beforeLooking, without, given }) => {
      const left = beforeLooking ? [] : items.filter((item) => !without.includes(item.id))
      const restricted = given.length === 0 ? null : holding(reasoner, given, `questions ${id} given`)
      const view = viewOf(reasoner, left, restricted)
      if (view === null) return { id, possible: false, variables: {}, statements: {} }
      const field = `questions ${id}`
      const marginals = () => mixedMarginals(reasoner, view).mixed
      const mixed = variables.length > 0 || statements.some(({ says }) => says.length === 1) ? marginals() : []
      const probability = (says: readonly IdentityLiteral[], at: string): number => {
        const [first, second] = says
        if (first === undefined) return 1
        if (second === undefined) {
          const { variable, allowed } = indexLiteral(first, reasoner.compiled.model, at)
          return allowed.reduce((sum, each, value) => sum + each * (mixed[variable]?.[value] as number), 0)
        }
        const own = holding(reasoner, says, at)
        const under = viewOf(reasoner, left, restricted === null ? own : product(restricted, own))
        return under === null ? 0 : Math.min(1, Math.exp(under.logLikelihood - view.logLikelihood))
      }
      return {
        id,
        possible: true,
        variables: Object.fromEntries(
          variables.map((name) => [name, byValue(reasoner, mixed, name, `${field} variables`)]),
        ),
        statements: Object.fromEntries(
          statements.map((statement) => [statement.id, probability(statement.says, `${field} ${statement.id}`)]),
        ),
      }
    }),
  }
}

const holding = (reasoner: Reasoner, says: readonly IdentityLiteral[], field: string): Weighing =>
  statementWeighings(reasoner, says, field).holds

function byValue(
  { compiled }: Reasoner,
  mixed: readonly Float64Array[],
  name: string,
  field: string,
): Record<string, number> {
  const at = positionOf(name, compiled.model.variableAt, field, 'variable')
  const values = compiled.model.variables[at]?.values ?? []
  return Object.fromEntries(values.map((value, place) => [value, mixed[at]?.[place] as number]))
}
