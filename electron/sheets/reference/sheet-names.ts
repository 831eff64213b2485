import type { SheetCondition } from '../../../shared-types/reference-fact.ts'
import type { ReferenceSheet, SheetVariable } from '../../../shared-types/reference-sheet.ts'
import { type DaySpan, spanOf } from './date-spans.ts'
import type { SheetPath } from './sheet-problem.ts'

/** A variable with its name in the model, `sheet/variable`. */
export interface KnownVariable {
  readonly key: string
  readonly sheet: ReferenceSheet
  readonly definition: SheetVariable
  readonly values: readonly string[]
  /** Values and groups of values by name. */
  readonly sets: ReadonlyMap<string, readonly string[]>
  /** Days of each value; empty for a variable that is no date. */
  readonly spans: readonly DaySpan[]
}

/** Takes note of a fault in the sheet at hand. */
export type Complain = (path: SheetPath, what: string, cure: string) => void

/** One literal of a condition, in names of the model. */
export type Literal = readonly [string, readonly string[]]

const begins = (name: string, other: string) => other.slice(0, 2) === name.slice(0, 2)

/** “Did you mean”, where something begins alike. */
export function cureForName(name: string, known: Iterable<string>): string {
  const alike = [...known].filter((other) => begins(name, other)).slice(0, 3)
  return alike.length > 0 ? `Did you mean ${alike.join(' or ')}?` : 'Correct the name, or add it to the sheet.'
}

/** Names of several sheets used together. Own names come first, then those of imports; `sheet/name` is always plain. */
export class SheetNames {
  readonly variables: ReadonlyMap<string, KnownVariable>
  readonly #visible = new Map<string, readonly ReferenceSheet[]>()

  /** @param sheets imported ones before those that import them. */
  constructor(readonly sheets: readonly ReferenceSheet[]) {
    const byId = new Map(sheets.map((sheet) => [sheet.sheetId, sheet]))
    const variables = new Map<string, KnownVariable>()
    for (const sheet of sheets) {
      const seen = new Set<ReferenceSheet>()
      const reach = (from: ReferenceSheet): void => {
        for (const { sheetId } of from.imports) {
          const imported = byId.get(sheetId)
          if (imported === undefined || seen.has(imported) || imported === sheet) continue
          seen.add(imported)
          reach(imported)
        }
      }
      reach(sheet)
      this.#visible.set(sheet.sheetId, [sheet, ...seen])
      for (const definition of sheet.variables) {
        const key = `${sheet.sheetId}/${definition.id}`
        variables.set(key, {
          key,
          sheet,
          definition,
          values: definition.values.map(({ id }) => id),
          sets: new Map<string, readonly string[]>([
            ...definition.groups.map(({ id, values }) => [id, values] as const),
            ...definition.values.map(({ id }) => [id, [id]] as const),
          ]),
          spans: definition.kind === 'dates' ? definition.values.map(({ from, to }) => spanOf(from, to)) : [],
        })
      }
    }
    this.variables = variables
  }

  /** Sheet and name a reference means; null, with a complaint, when nothing or more than one thing answers to it. */
  resolve(
    sheet: ReferenceSheet,
    reference: string,
    kind: 'variable' | 'tell' | 'donor',
    path: SheetPath,
    complain: Complain,
  ): { readonly key: string; readonly sheet: ReferenceSheet; readonly id: string } | null {
    const [whole, name] = reference.includes('/') ? reference.split('/') : [null, reference]
    const visible = this.#visible.get(sheet.sheetId) ?? [sheet]
    const idsOf = (one: ReferenceSheet) =>
      (kind === 'variable' ? one.variables : kind === 'tell' ? one.tells : one.donors).map(({ id }) => id)
    const has = (one: ReferenceSheet) => (whole === null || one.sheetId === whole) && idsOf(one).includes(name ?? '')
    const found = visible.filter(has)
    const [first, second] = found
    if (first === undefined) {
      const known = visible.flatMap((one) => idsOf(one).map((id) => (one === sheet ? id : `${one.sheetId}/${id}`)))
      complain(path, `There is no ${kind} “${reference}”.`, cureForName(reference, known))
      return null
    }
    if (first !== sheet && second !== undefined) {
      const ways = found.map(({ sheetId }) => `${sheetId}/${name}`)
      complain(path, `“${reference}” is a ${kind} of several sheets.`, `Write ${ways.join(' or ')}.`)
      return null
    }
    return { key: `${first.sheetId}/${name}`, sheet: first, id: name ?? '' }
  }

  variable(sheet: ReferenceSheet, reference: string, path: SheetPath, complain: Complain): KnownVariable | null {
    const found = this.resolve(sheet, reference, 'variable', path, complain)
    return found === null ? null : (this.variables.get(found.key) ?? null)
  }

  /** Values meant by values and groups of values, in the variable's order; null with a complaint when one is not known. */
  values(variable: KnownVariable, named: readonly string[], path: SheetPath, complain: Complain) {
    const meant = new Set<string>()
    for (const [at, name] of named.entries()) {
      const set = variable.sets.get(name)
      if (set === undefined) {
        const cure = cureForName(name, variable.sets.keys())
        complain([...path, at], `“${name}” is no value of ${variable.definition.id}.`, cure)
        return null
      }
      for (const value of set) meant.add(value)
    }
    return variable.values.filter((value) => meant.has(value))
  }

  /** A condition as literals; null when something in it is not known. */
  literals(
    sheet: ReferenceSheet,
    when: SheetCondition,
    path: SheetPath,
    complain: Complain,
  ): readonly Literal[] | null {
    const literals: Literal[] = []
    for (const [reference, named] of Object.entries(when)) {
      const variable = this.variable(sheet, reference, [...path, reference], complain)
      const values = variable === null ? null : this.values(variable, named, [...path, reference], complain)
      if (variable === null || values === null) return null
      if (literals.some(([key]) => key === variable.key)) {
        complain([...path, reference], `${reference} is named twice.`, 'Put its values on one line.')
        return null
      }
      literals.push([variable.key, values])
    }
    return literals
  }

  /** The date variable a sheet's days are read against: its own, else that of its imports, else the only one there is. */
  dates(sheet: ReferenceSheet, complain: Complain): KnownVariable | null {
    if (sheet.datesAgainst !== null) {
      const named = this.variable(sheet, sheet.datesAgainst, ['datesAgainst'], complain)
      if (named === null || named.definition.kind === 'dates') return named
      complain(['datesAgainst'], `${sheet.datesAgainst} is no variable of kind dates.`, 'Name one that is.')
      return null
    }
    const all = [...this.variables.values()].filter(({ definition }) => definition.kind === 'dates')
    const imported = this.#visible.get(sheet.sheetId) ?? [sheet]
    const nearest = [[sheet], imported, this.sheets]
      .map((sheets) => all.filter((variable) => sheets.includes(variable.sheet)))
      .find((some) => some.length > 0)
    if (nearest?.length === 1) return nearest[0] ?? null
    if (nearest === undefined)
      complain([], 'It speaks of days, but nothing says when a car was built.', 'Add a variable of kind dates.')
    else
      complain(
        ['datesAgainst'],
        `Days could be read against ${nearest.map(({ key }) => key).join(' or ')}.`,
        'Name one under datesAgainst.',
      )
    return null
  }
}
