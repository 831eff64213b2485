import { ProblemError } from '../../../shared-types/problem-error.ts'
import { type Circuit, CircuitBuilder, PRODUCT, SUM, SUM_OF_INPUTS } from './circuit.ts'
import { ComponentKeys } from './component-keys.ts'
import { type Component, ComponentFinder } from './components.ts'
import { flatClauses } from './flat-clauses.ts'
import type { IndexedModel } from './identity-model.ts'
import { liveClasses } from './live-classes.ts'
import { OpenClasses } from './open-classes.ts'
import { TableStates } from './table-states.ts'
import { type SlicedTable, type ValueClasses, valueClasses } from './value-classes.ts'
import { type EliminationOrder, eliminationOrder, variableGraph } from './variable-order.ts'

export interface CompiledModel {
  readonly model: IndexedModel
  readonly classes: readonly ValueClasses[]
  readonly tables: readonly SlicedTable[]
  readonly circuit: Circuit
}

/** When to give up: edges of the finished circuit, and decisions made on the way. */
export interface CompileLimits {
  readonly edges: number
  readonly decisions: number
}
const usualLimits: CompileLimits = { edges: 4_000_000, decisions: 3_000_000 }

/**
 * Compiles a model to a smooth decision circuit: decide a variable, class by class; draw consequences; split what is left
 * into components; compile each once (component caching after Sang, Bacchus, Beame, Kautz and Pitassi, SAT 2004).
 * @throws ProblemError when the rules forbid everything, or when the circuit would be too large; names the densest part.
 */
export function compileModel(model: IndexedModel, limits: CompileLimits = usualLimits): CompiledModel {
  const { classes, tables } = valueClasses(model)
  const scopes = [
    ...model.clauses.map(({ literals }) => literals.map(({ variable }) => variable)),
    ...tables.map(({ scope }) => scope),
  ]
  const order = eliminationOrder(
    variableGraph(
      classes.map(({ members }) => members.length),
      scopes,
    ),
  )
  const compiler = new Compiler(model, classes, tables, order, limits)
  return { model, classes, tables, circuit: compiler.compile() }
}

class Compiler {
  readonly #model: IndexedModel
  readonly #classes: readonly ValueClasses[]
  readonly #sliced: readonly SlicedTable[]
  readonly #state: OpenClasses
  readonly #tables: TableStates
  readonly #finder: ComponentFinder
  readonly #keys: ComponentKeys
  readonly #builder = new CircuitBuilder()
  readonly #known = new Map<string, number>()
  readonly #order: EliminationOrder
  readonly #limits: CompileLimits
  #decisions = 0

  constructor(
    model: IndexedModel,
    classes: readonly ValueClasses[],
    tables: readonly SlicedTable[],
    order: EliminationOrder,
    limits: CompileLimits,
  ) {
    this.#model = model
    this.#classes = classes
    this.#sliced = tables
    this.#state = new OpenClasses(flatClauses(model.clauses, classes))
    this.#tables = new TableStates(this.#state, tables)
    this.#finder = new ComponentFinder(this.#state, this.#tables)
    this.#keys = new ComponentKeys(this.#state, this.#tables, this.#finder)
    this.#order = order
    this.#limits = limits
    let inputs = 0
    this.#classAt = Int32Array.from(classes, ({ members }) => {
      inputs += members.length
      return inputs - members.length
    })
    this.#labelAt = Int32Array.from(tables, ({ labelCount }) => {
      inputs += labelCount
      return inputs - labelCount
    })
    this.#inputCount = inputs
  }
  readonly #classAt: Int32Array
  readonly #labelAt: Int32Array
  readonly #inputCount: number

  compile(): Circuit {
    const { items } = this.#state.clauses
    const possible = items.every((_, clause) => this.#state.consider(clause)) && this.#state.propagate()
    const all = this.#classes.map((_, variable) => variable)
    const parts = possible
      ? this.#parts({ variables: all, clauses: [], tables: this.#sliced.map((_, table) => table) })
      : null
    if (parts === null)
      throw new ProblemError(
        'input-refused',
        'The rules forbid every build. Check the sheet for rules that contradict.',
        {
          field: 'rules',
        },
      )
    return this.#builder.finish(this.#builder.node(PRODUCT, parts), this.#classAt, this.#labelAt, this.#inputCount)
  }

  /** Nodes whose product is everything the component still can be; null when that is nothing. */
  #parts(component: Component): number[] | null {
    const parts: number[] = []
    for (const table of component.tables) {
      const label = this.#tables.settled(table)
      if (label >= 0) parts.push(this.#builder.node(SUM_OF_INPUTS, [(this.#labelAt[table] as number) + label]))
    }
    for (const part of this.#finder.find(component.variables)) {
      const [only] = part.variables
      if (only !== undefined && part.clauses.length === 0 && part.tables.length === 0) parts.push(this.#leaf(only))
      else {
        const node = this.#compiled(part)
        if (node < 0) return null
        parts.push(node)
      }
    }
    return parts.sort((one, other) => one - other)
  }

  /** The node of all classes of a variable still open. */
  #leaf(variable: number): number {
    return this.#builder.node(SUM_OF_INPUTS, this.#openInputs(variable))
  }

  #openInputs(variable: number): number[] {
    const first = this.#state.clauses.wordAt[variable] as number
    const inputs: number[] = []
    const count = (this.#classes[variable] as ValueClasses).members.length
    for (let own = 0; own < count; own++)
      if ((((this.#state.open[first + (own >> 5)] as number) >>> (own & 31)) & 1) === 1)
        inputs.push((this.#classAt[variable] as number) + own)
    return inputs
  }

  /** The node of a component; -1 when nothing of it is possible. */
  #compiled(component: Component): number {
    component.variables.sort((one, other) => one - other)
    component.tables.sort((one, other) => one - other)
    const key = this.#keys.keyOf(component)
    const known = this.#known.get(key)
    if (known !== undefined) return known
    this.#decisions += 1
    if (this.#decisions > this.#limits.decisions || this.#builder.edges > this.#limits.edges) this.#giveUp()
    const decided = this.#choose(component)
    // Branches that leave the same rest are one branch over the classes of both.
    const branches = new Map<string, { readonly rest: readonly number[]; readonly inputs: number[] }>()
    for (const mask of liveClasses(decided, component, this.#state, this.#tables)) {
      const mark = this.#state.mark
      if (this.#state.keep(decided, mask, 0) && this.#state.propagate()) {
        const others = component.variables.filter((variable) => variable !== decided)
        const rest = this.#parts({ variables: others, clauses: [], tables: component.tables })
        if (rest !== null) {
          const same = branches.get(rest.join())
          const inputs = this.#openInputs(decided)
          if (same === undefined) branches.set(rest.join(), { rest, inputs })
          else same.inputs.push(...inputs)
        }
      }
      this.#state.undo(mark)
    }
    const nodes = [...branches.values()].map(({ rest, inputs }) => {
      const own = this.#builder.node(
        SUM_OF_INPUTS,
        inputs.sort((one, other) => one - other),
      )
      return this.#builder.node(PRODUCT, [own, ...rest])
    })
    const node = nodes.length === 0 ? -1 : this.#builder.node(SUM, nodes)
    this.#known.set(key, node)
    return node
  }

  /** The variable nearest to the middle of the tree of bags; among equals the one in most clauses still open. */
  #choose({ variables, clauses }: Component): number {
    const { distance } = this.#order
    const nearest = variables.reduce((least, variable) => Math.min(least, distance[variable] as number), Infinity)
    const near = variables.filter((variable) => distance[variable] === nearest)
    const live = new Set(clauses)
    let [chosen, most] = [near[0] as number, -1]
    for (const variable of near) {
      let count = this.#tables.of[variable]?.length ?? 0
      if (near.length > 1)
        for (const clause of this.#state.clauses.clausesOf[variable] as Int32Array) if (live.has(clause)) count += 1
      if (count > most) [chosen, most] = [variable, count]
    }
    return chosen
  }

  #giveUp(): never {
    const names = this.#order.densest
      .toSorted((one, other) => this.#classCount(other) - this.#classCount(one))
      .slice(0, 6)
      .map((variable) => `${this.#model.variables[variable]?.name} (${this.#classCount(variable)})`)
    throw new ProblemError(
      'input-refused',
      `This sheet is too entangled to be worked out exactly. The densest part joins ${this.#order.densest.length} variables, ` +
        `among them, with the classes the rules tell apart: ${names.join(', ')}. ` +
        'Join values the rules treat alike, or split a variable that stands in most rules.',
      { field: 'rules' },
    )
  }

  #classCount(variable: number): number {
    return this.#classes[variable]?.members.length ?? 0
  }
}
