import type { Bool, init as beginZ3 } from 'z3-solver'
import type { IdentityCertainty, IdentityLiteral, IdentityModel } from '../../../shared-types/identity-model.ts'
import { chanceFrom } from './random-models.ts'

/** Answers whether named rules and readings of a model can all stand. */
type Asked = (standing: readonly string[]) => Promise<boolean>

export interface Judge {
  readonly about: (model: IdentityModel, certain: readonly IdentityCertainty[]) => Asked
  /** Ids of some items that cannot stand together; null when all can. */
  readonly core: (model: IdentityModel, certain: readonly IdentityCertainty[]) => Promise<readonly string[] | null>
  readonly end: () => void
}

/** The SMT solver z3 (N. Bjorner and others, MIT licence): values as integers, each rule and reading behind a switch. */
export async function makeJudge(init: typeof beginZ3): Promise<Judge> {
  const { Context, em } = await init()
  const { Solver, Bool: Switch, Int, And, Or, Implies } = Context('main')
  const entered = (model: IdentityModel, certain: readonly IdentityCertainty[]) => {
    const solver = new Solver()
    const variables = new Map(model.variables.map(({ name, values }) => [name, { own: Int.const(name), values }]))
    for (const { own, values } of variables.values()) solver.add(own.ge(0), own.lt(values.length))
    const literal = ([name, allowed]: IdentityLiteral) => {
      const { own, values } = variables.get(name) ?? { own: Int.const(name), values: [] }
      return Or(...allowed.map((value) => own.eq(values.indexOf(value))))
    }
    const switches = new Map<string, Bool<'main'>>()
    const add = (id: string, what: Bool<'main'>) => {
      const own = Switch.const(`on ${id}`)
      switches.set(id, own)
      solver.add(Implies(own, what))
    }
    for (const { id, ifs, thenAny } of model.rules)
      add(id, Or(...ifs.map((each) => literal(each).not()), ...thenAny.map(literal)))
    for (const { id, says } of certain) add(id, And(...says.map(literal)))
    return { solver, switches }
  }
  return {
    about: (model, certain) => {
      const { solver, switches } = entered(model, certain)
      return async (standing) => {
        const on = standing.flatMap((id) => switches.get(id) ?? [])
        const answer = await solver.check(...on)
        if (answer === 'unknown') throw new Error('The solver could not tell.')
        return answer === 'sat'
      }
    },
    core: async (model, certain) => {
      const { solver, switches } = entered(model, certain)
      if ((await solver.check(...switches.values())) === 'sat') return null
      return [...solver.unsatCore()].map((each) => `${each}`.replaceAll('|', '').replace('on ', ''))
    },
    end: () => em.PThread.terminateAllThreads(),
  }
}

/** Readings of features drawn at random: some go together, most sets of ten do not. */
export function hardReadings(model: IdentityModel, count: number, seed: number): readonly IdentityCertainty[] {
  const chance = chanceFrom(seed)
  return Array.from({ length: count }, (_, at) => {
    const { name, values } = chance.pick(model.variables)
    return { id: `h${at}`, says: [[name, [chance.pick(values)]]] }
  })
}
