import { type Circuit, SUM, SUM_OF_INPUTS } from './circuit.ts'
import type { CompiledModel } from './compile-circuit.ts'
import type { IndexedModel } from './identity-model.ts'
import { valueClasses } from './value-classes.ts'

/** A model with the circuit it was compiled to before; null when that cannot be a circuit of this model. */
export function withKnownCircuit(model: IndexedModel, circuit: Circuit): CompiledModel | null {
  const { classes, tables } = valueClasses(model)
  const sizes = [...classes.map(({ members }) => members.length), ...tables.map(({ labelCount }) => labelCount)]
  let inputs = 0
  const starts = sizes.map((size) => {
    inputs += size
    return inputs - size
  })
  const own = [...circuit.classAt, ...circuit.labelAt]
  const fits =
    circuit.inputCount === inputs &&
    circuit.classAt.length === classes.length &&
    own.length === starts.length &&
    starts.every((start, at) => start === own[at])
  return fits && isCircuit(circuit) ? { model, classes, tables, circuit } : null
}

/** Whether every node is of a known kind and has children that stand before it. */
function isCircuit({ kind, start, children, inputCount }: Circuit): boolean {
  if (kind.length === 0 || start.length !== kind.length + 1 || start[kind.length] !== children.length) return false
  return kind.every((own, node) => {
    const [from, end] = [start[node] as number, start[node + 1] as number]
    const below = own === SUM_OF_INPUTS ? inputCount : node
    return own <= SUM && from < end && children.subarray(from, end).every((child) => child >= 0 && child < below)
  })
}
