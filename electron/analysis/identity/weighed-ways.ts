import { bestWays } from './best-lists.ts'
import type { CompiledModel } from './compile-circuit.ts'
import type { Weighing } from './weighing.ts'

/** One way of everything, hidden variables included: by variable, the position of its value. */
export interface WeighedWay {
  readonly weight: number
  readonly values: readonly number[]
}

/** The heaviest complete assignments under a weighing, greatest first. */
export function heaviestWays(compiled: CompiledModel, weighing: Weighing, wanted: number): readonly WeighedWay[] {
  const { model, classes, circuit } = compiled
  const ofInput: { readonly variable: number; readonly values: readonly number[] }[] = []
  const members: number[][] = []
  classes.forEach((own, variable) => {
    own.members.forEach((values, at) => {
      const weights = weighing.values[variable] as Float64Array
      const sorted = [...values].sort((one, other) => (weights[other] as number) - (weights[one] as number))
      const input = (circuit.classAt[variable] as number) + at
      ofInput[input] = { variable, values: sorted }
      members[input] = sorted.map((value) => weights[value] as number)
    })
  })
  weighing.labels.forEach((labels, table) => {
    labels.forEach((weight, label) => {
      members[(circuit.labelAt[table] as number) + label] = [weight]
    })
  })
  return bestWays(circuit, members, wanted).map(({ weight, choices }) => {
    const values = model.variables.map(() => 0)
    for (const [input, member] of choices) {
      const chosen = ofInput[input]
      if (chosen !== undefined) values[chosen.variable] = chosen.values[member] as number
    }
    return { weight, values }
  })
}

/** The built part of a way, by name. */
export const buildOf = ({ model }: CompiledModel, { values }: WeighedWay): Readonly<Record<string, string>> =>
  Object.fromEntries(
    model.variables.flatMap(({ name, kind, values: names }, variable) =>
      kind === 'built' ? [[name, names[values[variable] as number] as string]] : [],
    ),
  )
