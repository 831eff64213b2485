import { resolve } from 'node:path'
import { assess } from '../../use-cases/assess.ts'
import { ask, type Verb, withProgram } from './verb.ts'

/** Prints every conclusion the program computes from a record. */
export const assessing: Verb = {
  name: 'assess',
  follows: 'RECORD.wmk',
  does: 'print every computed conclusion of a record as JSON, each with its grounds',
  fewest: 1,
  most: 1,
  options: { json: { type: 'boolean' } },
  act: ({ words: [record = ''] }, around) =>
    withProgram(around, undefined, async (begun) => {
      await ask(begun, 'records.open', { path: resolve(around.here, record), readOnly: true })
      around.print(JSON.stringify(await assess(begun.program), null, 2))
      return 0
    }),
}
