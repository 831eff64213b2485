import type { IdentityLiteral, IdentityModel } from '../../../shared-types/identity-model.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import type { RulesAlone } from './rules-alone.ts'
import { noPlaces, problemAt, type SheetProblem } from './sheet-problem.ts'

const problem = problemAt(noPlaces)

/** Rules that never bite: without them not one car more could be built. */
export function checkRules(sheet: ReferenceSheet, alone: RulesAlone): readonly SheetProblem[] {
  const asked = sheet.rules.flatMap((rule, at) => {
    // What an option allows is not what it forbids; it is in vain only when no such car exists.
    if (rule.kind === 'option') return []
    const clauses = alone
      .rulesOf(sheet.sheetId, rule.id)
      .filter(({ id }) => id.startsWith(`${sheet.sheetId}/${rule.id}`))
    return [{ rule, at, clauses }]
  })
  const statements = asked.flatMap(({ clauses, at }) =>
    clauses.map((clause) => ({ at, clause, against: broken(clause, alone) })),
  )
  // Others of the same fact are left out as well: the fact is judged as a whole.
  const found = alone.conflictsOf(
    statements.map(({ against }) => against ?? []),
    (position) => {
      const own = asked.find(({ at }) => at === statements[position]?.at)
      return own?.clauses.map(({ id }) => id) ?? []
    },
  )
  const bites = new Set<number>()
  const because = new Map<number, Set<string>>()
  statements.forEach(({ at, against }, position) => {
    const facts = found[position]
    if (against === null) return
    if (facts === null) bites.add(at)
    else because.set(at, new Set([...(because.get(at) ?? []), ...(facts ?? [])]))
  })
  return asked.flatMap(({ rule, at, clauses }) => {
    if (bites.has(at) || (clauses.length === 0 && rule.kind === 'standard')) return []
    const facts = [...(because.get(at) ?? [])]
    const what =
      facts.length === 0
        ? 'It never bites: no car the sheet knows of meets it.'
        : `It never bites: it follows from ${facts.join(', ')}.`
    return [problem(['rules', at], what, 'Take it out, or correct its condition or its days.', 'warning')]
  })
}

/** What a car breaking the clause would be; null when none can. */
function broken(
  { ifs, thenAny }: IdentityModel['rules'][number],
  alone: RulesAlone,
): readonly IdentityLiteral[] | null {
  const literals: IdentityLiteral[] = [...ifs]
  for (const literal of thenAny) {
    const others = alone.othersOf(literal)
    if (others.length === 0) return null
    literals.push([literal[0], [...others]])
  }
  return literals.length === 0 ? null : literals
}
