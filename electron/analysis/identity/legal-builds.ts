import { countPass } from './circuit-passes.ts'
import type { CompiledModel } from './compile-circuit.ts'
import type { EvidenceItem } from './evidence.ts'
import type { VariableKind } from './identity-model.ts'

/** The one value in which a hidden variable is counted: the fact holds, there was no donor. Claims follow from the build. */
const counted: { readonly [K in VariableKind]: number | null } = { built: null, doubt: 1, donor: 0, claim: null }

/**
 * Exact number of builds every rule allows, doubtful ones in force; weights and counts play no part.
 * @param allowed by variable and value, 0 where a value is ruled out; null when all are open.
 */
export function countLegalBuilds(compiled: CompiledModel, allowed: readonly Uint8Array[] | null = null): bigint {
  const { model, classes, circuit } = compiled
  const inputs: bigint[] = new Array(circuit.inputCount).fill(1n)
  classes.forEach(({ members }, variable) => {
    const only = counted[model.variables[variable]?.kind ?? 'built']
    const open = allowed?.[variable]
    members.forEach((values, own) => {
      const builds = values.filter((value) => (only === null || value === only) && open?.[value] !== 0).length
      inputs[(circuit.classAt[variable] as number) + own] = BigInt(builds)
    })
  })
  return countPass(circuit, inputs)
}

/** Builds every rule allows that also could have shown all of the evidence (no likelihood of 0). */
export function countBuildsLeft(compiled: CompiledModel, items: readonly EvidenceItem[]): bigint {
  const { model } = compiled
  const allowed = model.variables.map(({ values }) => new Uint8Array(values.length).fill(1))
  for (const { variable, likelihood, table } of items) {
    const own = allowed[variable] as Uint8Array
    // Over the cells of a donor's table the rows of no donor come first.
    for (let value = 0; value < own.length; value++) {
      const possible = (likelihood[value] as number) > 0
      if (!possible && (table === null || allZero(likelihood, value, own.length))) own[value] = 0
    }
  }
  return countLegalBuilds(compiled, allowed)
}

/** Whether a value is impossible under every kind of donor. */
function allZero(likelihood: Float64Array, value: number, stride: number): boolean {
  for (let cell = value; cell < likelihood.length; cell += stride) if ((likelihood[cell] as number) > 0) return false
  return true
}
