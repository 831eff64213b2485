import { describe, expect, it } from 'vitest'
import { type Circuit, PRODUCT, SUM_OF_INPUTS } from '../../../electron/analysis/identity/circuit.ts'
import { compileModel } from '../../../electron/analysis/identity/compile-circuit.ts'
import { indexModel } from '../../../electron/analysis/identity/index-model.ts'
import { evenWeighing, Passes, type Weighing } from '../../../electron/analysis/identity/weighing.ts'
import { carLineModel } from './car-line-models.ts'
import { chanceFrom } from './random-models.ts'

/** Total of a circuit as its definition has it, node by node, without any lay-out. */
function plainTotal({ kind, start, children }: Circuit, inputs: Float64Array): number {
  const values: number[] = []
  kind.forEach((own, node) => {
    const below = [...children.subarray(start[node], start[node + 1])]
    const terms = below.map((child) => (own === SUM_OF_INPUTS ? inputs[child] : values[child]) as number)
    values.push(
      own === PRODUCT ? terms.reduce((all, term) => all * term, 1) : terms.reduce((all, term) => all + term, 0),
    )
  })
  return values.at(-1) as number
}

const close = (one: number, other: number, total: number) => Math.abs(one - other) <= 1e-12 * total

describe.each([3, 11, 29])('passes over the circuit of a car line, seed %i', (seed) => {
  const compiled = compileModel(indexModel(carLineModel({ variables: 20, rules: 120, dates: 14 }, seed)))
  const { circuit, classes, model } = compiled
  const chance = chanceFrom(seed)
  const even = evenWeighing(compiled)
  const weighing: Weighing = { ...even, values: even.values.map((row) => row.map(() => 0.1 + chance.unit())) }
  /** Inputs by hand: the sum of the weights of a class, all labels 1. */
  const inputsOf = ({ values }: Weighing): Float64Array => {
    const inputs = new Float64Array(circuit.inputCount).fill(1)
    classes.forEach(({ members }, variable) => {
      members.forEach((own, at) => {
        inputs[(circuit.classAt[variable] as number) + at] = own.reduce(
          (sum, value) => sum + (values[variable]?.[value] as number),
          0,
        )
      })
    })
    return inputs
  }

  it('give the total of its definition, and as slope of an input what it adds by each unit, since totals are linear in it', () => {
    const passes = new Passes(compiled)
    const inputs = inputsOf(weighing)
    const total = passes.totalAndSlopes(weighing)
    expect(close(total, plainTotal(circuit, inputs), total)).toBe(true)
    for (let input = 0; input < circuit.inputCount; input++) {
      const without = inputs.slice()
      without[input] = 0
      const slope = (total - plainTotal(circuit, without)) / (inputs[input] as number)
      expect(close(passes.byInput[input] as number, slope, total)).toBe(true)
    }
  })

  it('give for one class of a variable what a whole pass with the others shut gives', () => {
    const passes = new Passes(compiled)
    const whole = new Passes(compiled)
    const date = model.variableAt.get('date') as number
    for (const variable of [date, model.variables.length - 1, date])
      classes[variable]?.members.forEach((members, own) => {
        const only = new Float64Array(weighing.values[variable]?.length ?? 0)
        for (const value of members) only[value] = weighing.values[variable]?.[value] as number
        const shut = { ...weighing, values: weighing.values.map((row, at) => (at === variable ? only : row)) }
        const total = whole.totalAndSlopes(shut)
        expect(close(passes.slopesOfClass(weighing, variable, own), total, total)).toBe(true)
        whole.byInput.forEach((slope, input) => {
          expect(close(passes.byInput[input] as number, slope, total)).toBe(true)
        })
      })
    // And nothing of one class is left over for the next question.
    expect(passes.slopesAsWell(weighing)).toBe(whole.totalAndSlopes(weighing))
  })
})
