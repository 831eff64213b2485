import type { IdentityCertainty } from '../../../shared-types/identity-model.ts'
import type { HardFact } from './conflicts.ts'
import { unit } from './consistency.ts'
import type { EvidenceItem } from './evidence.ts'
import { type IndexedClause, type IndexedModel, indexLiteral } from './identity-model.ts'

/** Readings and claims taken as certain. @throws ProblemError for unknown names. */
export const certainFacts = (model: IndexedModel, certain: readonly IdentityCertainty[]): readonly HardFact[] =>
  certain.map(({ id, says }) => ({
    item: { id, kind: 'certain', source: '' },
    clauses: says.map((literal) => unit(indexLiteral(literal, model, `certain.${id}`))),
  }))

/** What evidence rules out altogether: likelihoods of 0. Evidence that rules nothing out is left away. */
export const ruledOut = (model: IndexedModel, items: readonly EvidenceItem[]): readonly HardFact[] =>
  items.flatMap((item) => {
    if (item.likelihood.every((each) => each > 0)) return []
    const clauses =
      item.table === null ? [allowedBy(item.variable, item.likelihood)] : withDonor(model, item, item.table)
    return [{ item: { id: item.id, kind: item.kind, source: '' }, clauses }]
  })

const possible = (likelihood: Float64Array) => Uint8Array.from(likelihood, (each) => (each > 0 ? 1 : 0))
const allowedBy = (variable: number, likelihood: Float64Array) => unit({ variable, allowed: possible(likelihood) })

/** For each kind of donor: it was not that kind, or the part was built as one that can show so. */
function withDonor(
  model: IndexedModel,
  { variable, likelihood }: EvidenceItem,
  table: number,
): readonly IndexedClause[] {
  const donor = model.tables[table]?.scope[0] ?? -1
  const kinds = model.variables[donor]?.values ?? []
  const size = model.variables[variable]?.values.length ?? 1
  return kinds.map((_, kind) => ({
    item: null,
    literals: [
      { variable: donor, allowed: Uint8Array.from(kinds, (_kind, other) => (other === kind ? 0 : 1)) },
      { variable, allowed: possible(likelihood.subarray(kind * size, (kind + 1) * size)) },
    ],
  }))
}
