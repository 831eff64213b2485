import { unit } from './consistency.ts'
import type { IndexedClause, IndexedModel } from './identity-model.ts'
import { valueClasses } from './value-classes.ts'

/** Weights of 0 of the sheet's tables as clauses that always stand. Counts of 0 say nothing. */
export function impossibleCells(model: IndexedModel): readonly IndexedClause[] {
  const single = model.weights.flatMap((weights, variable) =>
    weights.some((weight) => weight === 0) && model.variables[variable]?.kind === 'built'
      ? [unit({ variable, allowed: Uint8Array.from(weights, (weight) => (weight > 0 ? 1 : 0)) })]
      : [],
  )
  const { classes, tables } = valueClasses({ ...model, clauses: [] })
  const joint = tables.flatMap(({ scope, sliceOf, slices, labels, cellOfLabel }, table) => {
    const { kind, weights } = model.tables[table] ?? { kind: 'count', weights: new Float64Array() }
    if (kind !== 'given') return []
    const found: IndexedClause[] = []
    labels.forEach((label, at) => {
      if ((weights[cellOfLabel[label] as number] as number) > 0) return
      const literals = scope.map((variable, position) => {
        const stride = slices.slice(position + 1).reduce((product, size) => product * size, 1)
        const slice = Math.floor(at / stride) % (slices[position] as number)
        const { classOf } = classes[variable] ?? { classOf: new Int32Array() }
        const allowed = Uint8Array.from(classOf, (own) => (sliceOf[position]?.[own] === slice ? 0 : 1))
        return { variable, allowed }
      })
      found.push({ item: null, literals })
    })
    return found
  })
  return [...single, ...joint]
}
