import { z } from 'zod'
import { type ComputationName, computations } from '../../../shared-types/computations.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { compute } from '../../analysis/computations.ts'
import { checkedBy, inputBounds } from '../checked-input.ts'
import { jsonFrom } from './files.ts'
import { type Surroundings, type Verb, WrongWords } from './verb.ts'

const isComputation = (name: string): name is ComputationName => Object.hasOwn(computations, name)

function named(name: string): ComputationName {
  if (isComputation(name)) return name
  throw new ProblemError('not-found', `There is no computation "${name}". Say compute --list for those there are.`)
}

const printJson = (around: Surroundings, said: unknown) => around.print(JSON.stringify(said, null, 2))

/** JSON Schema of what goes into a computation and what comes out, made from the very schemas that check them. */
function schemasOf(name: ComputationName): unknown {
  const { about, input, output } = computations[name]
  return { name, about, input: z.toJSONSchema(input, { io: 'input' }), output: z.toJSONSchema(output) }
}

/** Checks the input as a door would, with room for long lists of numbers, and computes. */
function computed(name: ComputationName, given: unknown): unknown {
  const input = checkedBy(computations[name].input, given, {
    ...inputBounds,
    values: 2_000_000,
    characters: 80_000_000,
  })
  return (compute[name] as (input: unknown) => unknown)(input)
}

/** Runs any one computation of the program on plain input, without a record, so that anybody can check its numbers. */
export const computing: Verb = {
  name: 'compute',
  follows: '[NAME] < in.json > out.json',
  does: 'run one computation on JSON; --list names them, --schema prints what one takes and answers',
  fewest: 0,
  most: 1,
  options: { list: { type: 'boolean' }, schema: { type: 'boolean' } },
  act: async ({ words: [name], options }, around) => {
    if (options.list === true) {
      for (const [known, { about }] of Object.entries(computations)) around.print(`${known}\t${about}`)
      return 0
    }
    if (name === undefined) throw new WrongWords('Say: compute NAME, or compute --list')
    if (options.schema === true) printJson(around, schemasOf(named(name)))
    else printJson(around, computed(named(name), await jsonFrom(around, undefined)))
    return 0
  },
}
