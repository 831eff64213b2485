import { downPass, possiblePass, upPass, upPassOf } from './circuit-passes.ts'
import type { CompiledModel } from './compile-circuit.ts'
import { nodesAbove, type PassPlan, planPasses } from './pass-plan.ts'

/** A weight for every value of every variable and for every cell label of every table. */
export interface Weighing {
  readonly values: readonly Float64Array[]
  readonly labels: readonly Float64Array[]
}

const onesByLength: Float64Array[] = []

/** As many ones, shared by all who ask: never written to, and known again as what changes nothing in a product. */
function ones(length: number): Float64Array {
  const made = onesByLength[length] ?? new Float64Array(length).fill(1)
  onesByLength[length] = made
  return made
}

const isOnes = (weights: Float64Array): boolean => onesByLength[weights.length] === weights

/** All weights 1. Its rows are shared: replace them, never write into them. */
export function evenWeighing({ model, tables }: CompiledModel): Weighing {
  return {
    values: model.variables.map((variable) => ones(variable.values.length)),
    labels: tables.map(({ labelCount }) => ones(labelCount)),
  }
}

const times = (some: readonly Float64Array[], others: readonly Float64Array[]): readonly Float64Array[] =>
  some.map((one, at) => {
    const other = others[at]
    if (other === undefined || isOnes(other)) return one
    return isOnes(one) ? other : one.map((weight, own) => weight * (other[own] as number))
  })

/** Product of two weighings. */
export const product = (one: Weighing, other: Weighing): Weighing => ({
  values: times(one.values, other.values),
  labels: times(one.labels, other.labels),
})

/** Room for passes over one circuit; what a pass answers is overwritten by the next. */
export class Passes {
  readonly compiled: CompiledModel
  /** Derivative of the last total by every class and label. */
  readonly byInput: Float64Array
  readonly #plan: PassPlan
  readonly #values: Float64Array
  readonly #slopes: Float64Array
  readonly #above = new Map<number, Int32Array>()
  /** What the values stand for, but for the classes of one variable when a pass has gone through them one by one. */
  #entered: Weighing | null = null
  #classesOf: number | null = null

  constructor(compiled: CompiledModel) {
    this.compiled = compiled
    this.#plan = planPasses(compiled.circuit)
    this.#values = new Float64Array(this.#plan.slotCount)
    this.#slopes = new Float64Array(this.#plan.slotCount)
    this.byInput = this.#slopes.subarray(0, this.#plan.inputCount)
  }

  get edges(): number {
    return this.#plan.children.length
  }

  /** Total weight of all builds. */
  total(weighing: Weighing): number {
    this.#enter(weighing)
    return upPass(this.#plan, this.#values)
  }

  /** Whether any build has a weight above 0, however small. */
  possible(weighing: Weighing): boolean {
    this.#enter(weighing)
    this.#entered = null
    return possiblePass(this.compiled.circuit, this.#values)
  }

  /** Total weight of all builds, and in `byInput` its derivative by every class and label. */
  totalAndSlopes(weighing: Weighing): number {
    const total = this.total(weighing)
    downPass(this.#plan, this.#values, this.#slopes)
    return total
  }

  /** The same for a weighing nobody has written into since its total was asked: what stands of it is not computed again. */
  slopesAsWell(weighing: Weighing): number {
    if (this.#entered !== weighing || this.#classesOf !== null) return this.totalAndSlopes(weighing)
    downPass(this.#plan, this.#values, this.#slopes)
    return this.#values[this.#plan.root] as number
  }

  /** The same with one class of a variable alone let through; only what stands above that variable is added up anew. */
  slopesOfClass(weighing: Weighing, variable: number, own: number): number {
    if (this.#entered !== weighing || (this.#classesOf !== null && this.#classesOf !== variable)) this.total(weighing)
    this.#classesOf = variable
    const { classes, circuit } = this.compiled
    const { members } = classes[variable] as CompiledModel['classes'][number]
    const first = circuit.classAt[variable] as number
    this.#values.fill(0, first, first + members.length)
    const weights = weighing.values[variable] as Float64Array
    this.#values[first + own] = members[own]?.reduce((sum, value) => sum + (weights[value] as number), 0) ?? 0
    const above = this.#above.get(variable) ?? nodesAbove(this.#plan, first, first + members.length)
    this.#above.set(variable, above)
    const total = upPassOf(this.#plan, above, this.#values)
    downPass(this.#plan, this.#values, this.#slopes)
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

  #enter(weighing: Weighing): void {
    const { classes, circuit } = this.compiled
    this.#entered = weighing
    this.#classesOf = null
    this.#values.fill(0, 0, this.#plan.inputCount)
    classes.forEach(({ classOf }, variable) => {
      const first = circuit.classAt[variable] as number
      const own = weighing.values[variable] as Float64Array
      for (let value = 0; value < own.length; value++) {
        const at = first + (classOf[value] as number)
        this.#values[at] = (this.#values[at] as number) + (own[value] as number)
      }
    })
    weighing.labels.forEach((own, table) => {
      this.#values.set(own, circuit.labelAt[table] as number)
    })
  }
}
