import { edgeCount, nodeCount } from './circuit.ts'
import { downPass, possiblePass, upPass } from './circuit-passes.ts'
import type { CompiledModel } from './compile-circuit.ts'

/** A weight for every value of every variable and for every cell label of every table. */
export interface Weighing {
  readonly values: readonly Float64Array[]
  readonly labels: readonly Float64Array[]
}

/** All weights 1. */
export function evenWeighing({ model, tables }: CompiledModel): Weighing {
  return {
    values: model.variables.map((variable) => new Float64Array(variable.values.length).fill(1)),
    labels: tables.map(({ labelCount }) => new Float64Array(labelCount).fill(1)),
  }
}

const times = (ones: readonly Float64Array[], others: readonly Float64Array[]): readonly Float64Array[] =>
  ones.map((one, at) => {
    const other = others[at]
    return other === undefined ? one : one.map((weight, own) => weight * (other[own] as number))
  })

/** Product of two weighings. */
export const product = (one: Weighing, other: Weighing): Weighing => ({
  values: times(one.values, other.values),
  labels: times(one.labels, other.labels),
})

/** Room for passes over one circuit; what a pass answers is overwritten by the next. */
export class Passes {
  readonly compiled: CompiledModel
  readonly inputs: Float64Array
  readonly byInput: Float64Array
  readonly #values: Float64Array
  readonly #slopes: Float64Array

  constructor(compiled: CompiledModel) {
    this.compiled = compiled
    this.inputs = new Float64Array(compiled.circuit.inputCount)
    this.byInput = new Float64Array(compiled.circuit.inputCount)
    this.#values = new Float64Array(nodeCount(compiled.circuit))
    this.#slopes = new Float64Array(nodeCount(compiled.circuit))
  }

  get edges(): number {
    return edgeCount(this.compiled.circuit)
  }

  /** Total weight of all builds. */
  total(weighing: Weighing): number {
    this.#enter(weighing)
    return upPass(this.compiled.circuit, this.inputs, this.#values)
  }

  /** Whether any build has a weight above 0, however small. */
  possible(weighing: Weighing): boolean {
    this.#enter(weighing)
    return possiblePass(this.compiled.circuit, this.inputs)
  }

  /** Total weight of all builds, and in `byInput` its derivative by every class and label. */
  totalAndSlopes(weighing: Weighing): number {
    const total = this.total(weighing)
    downPass(this.compiled.circuit, this.#values, this.#slopes, this.byInput)
    return total
  }

  /** Weight of all builds with a value, from the derivatives of the last pass. */
  ofValue(weighing: Weighing, variable: number, value: number): number {
    const { classes, circuit } = this.compiled
    const own = classes[variable]?.classOf[value] as number
    const slope = this.byInput[(circuit.classAt[variable] as number) + own] as number
    return (weighing.values[variable]?.[value] as number) * slope
  }

  /** Weight of all builds with a table label, from the derivatives of the last pass. */
  ofLabel(weighing: Weighing, table: number, label: number): number {
    const slope = this.byInput[(this.compiled.circuit.labelAt[table] as number) + label] as number
    return (weighing.labels[table]?.[label] as number) * slope
  }

  #enter({ values, labels }: Weighing): void {
    const { classes, circuit } = this.compiled
    this.inputs.fill(0)
    classes.forEach(({ classOf }, variable) => {
      const first = circuit.classAt[variable] as number
      const own = values[variable] as Float64Array
      for (let value = 0; value < own.length; value++) {
        const at = first + (classOf[value] as number)
        this.inputs[at] = (this.inputs[at] as number) + (own[value] as number)
      }
    })
    labels.forEach((own, table) => {
      this.inputs.set(own, circuit.labelAt[table] as number)
    })
  }
}
