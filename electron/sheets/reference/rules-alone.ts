import type { IdentityLiteral, IdentityModel } from '../../../shared-types/identity-model.ts'
import { ConflictFinder, type ConflictItem } from '../../analysis/identity/conflicts.ts'
import { certainFacts } from '../../analysis/identity/hard-facts.ts'
import type { IndexedModel } from '../../analysis/identity/identity-model.ts'
import { indexModel } from '../../analysis/identity/index-model.ts'
import type { FactCite } from './model-draft.ts'

/** Asks what the rules of some sheets rule out by themselves, doubtful ones taken to hold. */
export class RulesAlone {
  readonly #model: IndexedModel
  readonly #cites: ReadonlyMap<string, readonly FactCite[]>

  constructor(
    readonly source: IdentityModel,
    cites: ReadonlyMap<string, readonly FactCite[]>,
  ) {
    this.#model = indexModel(source)
    this.#cites = cites
  }

  /** Facts that together forbid a car of which all this is true; null when it could be built. */
  conflictOf(says: readonly IdentityLiteral[]): readonly string[] | null {
    return this.conflictsOf([says], () => [])[0] ?? null
  }

  /** The same for many statements at once. @param spared ids of rules left out when the statement of that position is asked. */
  conflictsOf(
    statements: readonly (readonly IdentityLiteral[])[],
    spared: (position: number) => readonly string[],
  ): readonly (readonly string[] | null)[] {
    const certain = statements.map((says, at) => ({ id: `statement ${at}`, says: [...says] }))
    const finder = new ConflictFinder(this.#model, certainFacts(this.#model, certain))
    const rules = finder.items.flatMap(({ kind }, item) => (kind === 'rule' ? [item] : []))
    const idOf = (item: number) => (finder.items[item] as ConflictItem).id
    return statements.map((_, at) => {
      const out = new Set(spared(at))
      const found = finder.one([...rules.filter((item) => !out.has(idOf(item))), rules.length + at])
      return found === null ? null : this.factsNamed(found.filter((item) => item < rules.length).map(idOf))
    })
  }

  /** Names of the facts behind rules of the model, each once. */
  factsNamed(rules: readonly string[]): readonly string[] {
    return [...new Set(rules.flatMap((id) => (this.#cites.get(id) ?? []).map(({ factId }) => factId)))]
  }

  /** Rules of the model that rest on a fact. */
  rulesOf(sheetId: string, factId: string): readonly IdentityModel['rules'][number][] {
    return this.source.rules.filter(({ id }) =>
      (this.#cites.get(id) ?? []).some((cite) => cite.sheetId === sheetId && cite.factId === factId),
    )
  }

  /** Every value of a variable but these. */
  othersOf([name, values]: IdentityLiteral): readonly string[] {
    const variable = this.source.variables.find((each) => each.name === name)
    return (variable?.values ?? []).filter((value) => !values.includes(value))
  }
}
