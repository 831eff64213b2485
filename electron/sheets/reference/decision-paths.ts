import type { IdentityLiteral } from '../../../shared-types/identity-model.ts'
import type { KnownVariable } from './sheet-names.ts'

/** How far each value of a few variables meets a condition: 0 not, 1 wholly. Variables left out are met by any value. */
export type WeighedCondition = ReadonlyMap<KnownVariable, readonly number[]>

/** Cells whose values no condition tells apart are one; more of them than this are refused. */
const MOST_CELLS = 50_000

/** A few literals that together single out cells of one class. */
export interface DecisionPath {
  readonly ifs: readonly IdentityLiteral[]
  readonly cell: string
}

/**
 * Divides all combinations of the variables that some conditions name into classes, and says by which values one comes to
 * each. Every combination is on exactly one path; variables that make no difference are left out.
 * @param classOf class of a combination, from how far it meets each condition.
 * @returns null when there are too many combinations to go through.
 */
export function decisionPaths(
  conditions: readonly WeighedCondition[],
  classOf: (met: readonly number[]) => string,
): readonly DecisionPath[] | null {
  const variables = [...new Set(conditions.flatMap((condition) => [...condition.keys()]))]
  const alike = variables.map((variable) => valuesAlike(variable, conditions))
  if (alike.reduce((product, groups) => product * groups.length, 1) > MOST_CELLS) return null

  const below = (at: number, met: readonly number[]): readonly DecisionPath[] => {
    const variable = variables[at]
    if (variable === undefined) return [{ ifs: [], cell: classOf(met) }]
    const outcomes = new Map<string, { values: string[]; paths: readonly DecisionPath[] }>()
    for (const group of alike[at] ?? []) {
      const paths = below(
        at + 1,
        met.map((share, condition) => share * (conditions[condition]?.get(variable)?.[group.position] ?? 1)),
      )
      const key = JSON.stringify(paths)
      const same = outcomes.get(key)
      if (same === undefined) outcomes.set(key, { values: [...group.values], paths })
      else same.values.push(...group.values)
    }
    const [only] = outcomes.values()
    if (outcomes.size === 1 && only !== undefined) return only.paths
    return [...outcomes.values()].flatMap(({ values, paths }) =>
      paths.map(({ ifs, cell }) => ({ ifs: [[variable.key, values] satisfies IdentityLiteral, ...ifs], cell })),
    )
  }
  return below(
    0,
    conditions.map(() => 1),
  )
}

/** Values of a variable that meet every condition alike, with the position of one of them. */
function valuesAlike(variable: KnownVariable, conditions: readonly WeighedCondition[]) {
  const groups = new Map<string, { position: number; values: string[] }>()
  variable.values.forEach((value, position) => {
    const key = conditions.map((condition) => condition.get(variable)?.[position] ?? 1).join()
    const same = groups.get(key)
    if (same === undefined) groups.set(key, { position, values: [value] })
    else same.values.push(value)
  })
  return [...groups.values()]
}
