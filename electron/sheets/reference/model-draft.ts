import type { IdentityLiteral, IdentityModel } from '../../../shared-types/identity-model.ts'
import type { ReferenceSheet, SheetSource } from '../../../shared-types/reference-sheet.ts'
import { type FactDays, mayHold, shareHolding, surelyHolds } from './date-spans.ts'
import type { WeighedCondition } from './decision-paths.ts'
import type { Complain, KnownVariable, Literal, SheetNames } from './sheet-names.ts'
import type { SheetPath, SheetProblem } from './sheet-problem.ts'

/** What a piece of the model rests on. `source` null: the sheet gives none, and every because-chain says so. */
export interface FactCite {
  readonly sheetId: string
  readonly factId: string
  readonly source: SheetSource | null
}

/** A source as printed. */
export const sourceText = (source: SheetSource | null): string =>
  source === null
    ? 'no source'
    : `${[source.who, source.where, source.page].filter((each) => each !== '').join(', ')} (${source.learned})`

type Draft<Key extends keyof IdentityModel> = IdentityModel[Key][number][]

/** Anything in a sheet that has a name and may have a source. */
export interface CitedFact {
  readonly id: string
  readonly source: string | null
}

/** A model being made from sheets: its parts, what each rests on, and what is wrong. */
export class ModelDraft {
  readonly variables: Draft<'variables'> = []
  readonly rules: Draft<'rules'> = []
  readonly doubts: Draft<'doubts'> = []
  readonly tables: Draft<'tables'> = []
  readonly donors: Draft<'donors'> = []
  readonly tells: Draft<'tells'> = []
  readonly cites = new Map<string, readonly FactCite[]>()
  readonly problems: SheetProblem[] = []

  constructor(readonly names: SheetNames) {
    for (const { key, values } of names.variables.values()) this.variables.push({ name: key, values })
  }

  /** Complaints about one sheet, their paths beginning at `base`. */
  complaining(sheet: ReferenceSheet, base: SheetPath, severity: SheetProblem['severity'] = 'error'): Complain {
    return (path, what, cure) =>
      this.problems.push({
        severity,
        path: [...base, ...path],
        line: null,
        within: sheet.sheetId,
        what,
        cure,
      })
  }

  cite(sheet: ReferenceSheet, { id, source }: CitedFact): FactCite {
    return { sheetId: sheet.sheetId, factId: id, source: sheet.sources.find((each) => each.id === source) ?? null }
  }

  /** Adds clauses that stand for one thing: `id`, or `id #1`, `id #2`... when there are several. */
  addRules(
    id: string,
    clauses: readonly { readonly ifs: readonly Literal[]; readonly thenAny: readonly Literal[] }[],
    cites: readonly FactCite[],
    doubt: string | null = null,
  ): void {
    // A clause about no day the sheet knows of says nothing; nothing is met by a value from an empty list.
    const biting = clauses.filter(({ ifs }) => ifs.every(([, values]) => values.length > 0))
    biting.forEach(({ ifs, thenAny }, at) => {
      const own = biting.length === 1 ? id : `${id} #${at + 1}`
      const plain = (literals: readonly Literal[]) =>
        literals.filter(([, values]) => values.length > 0).map(([name, values]): IdentityLiteral => [name, [...values]])
      const source = cites.map((each) => sourceText(each.source)).join('; ')
      this.rules.push({ id: own, source, ifs: plain(ifs), thenAny: plain(thenAny), doubt })
      this.cites.set(own, cites)
    })
  }

  /** Name of the doubt of a fact that is not wholly sure, added to the model; null when it is. */
  doubtOf(key: string, surePercent: number, cite: FactCite): string | null {
    if (surePercent >= 100) return null
    if (!this.cites.has(`doubt ${key}`)) this.doubts.push({ id: `doubt ${key}`, holds: surePercent / 100 })
    this.cites.set(`doubt ${key}`, [cite])
    return `doubt ${key}`
  }

  /** Date variable of a sheet where a fact needs one; undefined when it needs none, null when there is none. */
  datesFor(sheet: ReferenceSheet, days: FactDays, complain: Complain): KnownVariable | null | undefined {
    if (days.from === null && days.until === null) return undefined
    return this.names.dates(sheet, complain)
  }
}

/** Values built on days on which the fact may hold, or surely holds. */
export function valuesWithin(variable: KnownVariable, days: FactDays, how: 'maybe' | 'surely'): readonly string[] {
  const holds = how === 'maybe' ? mayHold : surelyHolds
  return variable.values.filter((_, at) => {
    const span = variable.spans[at]
    return span !== undefined && holds(days, span)
  })
}

/** A condition and its days as shares by value, for dividing combinations into classes. */
export function weighedCondition(
  draft: ModelDraft,
  literals: readonly Literal[],
  dates: KnownVariable | undefined,
  days: FactDays,
): WeighedCondition {
  const weighed = new Map<KnownVariable, readonly number[]>()
  for (const [key, allowed] of literals) {
    const variable = draft.names.variables.get(key)
    if (variable !== undefined)
      weighed.set(
        variable,
        variable.values.map((value) => (allowed.includes(value) ? 1 : 0)),
      )
  }
  if (dates !== undefined) {
    const given = weighed.get(dates)
    weighed.set(
      dates,
      dates.spans.map((span, at) => shareHolding(days, span) * (given?.[at] ?? 1)),
    )
  }
  return weighed
}
