import type { SheetRule } from '../../../shared-types/reference-fact.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { changeInOrder, overlap } from './date-spans.ts'
import { type ModelDraft, valuesWithin } from './model-draft.ts'
import type { Complain, KnownVariable, Literal } from './sheet-names.ts'

/** Adds what a sheet's rules say by themselves; standard and optional fittings need each other and come apart. */
export function compileRules(draft: ModelDraft, sheet: ReferenceSheet): void {
  sheet.rules.forEach((rule, at) => {
    const complain = draft.complaining(sheet, ['rules', at])
    if (rule.kind === 'standard' || rule.kind === 'option') return
    const clause = clauseOf(draft, sheet, rule, complain)
    if (clause === null) return
    const key = `${sheet.sheetId}/${rule.id}`
    const cite = draft.cite(sheet, rule)
    draft.addRules(key, [clause], [cite], draft.doubtOf(key, rule.surePercent, cite))
  })
}

type PlainRule = Exclude<SheetRule, { kind: 'standard' | 'option' }>
interface Clause {
  readonly ifs: readonly Literal[]
  readonly thenAny: readonly Literal[]
}

function clauseOf(draft: ModelDraft, sheet: ReferenceSheet, rule: PlainRule, complain: Complain): Clause | null {
  const when = draft.names.literals(sheet, rule.when, ['when'], complain)
  if (when === null) return null
  if (rule.kind === 'only from' || rule.kind === 'only until') {
    if (!changeInOrder(rule.day)) {
      complain(['day'], 'Its earliest day is after its latest.', 'Exchange the two.')
      return null
    }
    const dates = draft.names.dates(sheet, complain)
    if (dates === null) return null
    const days = rule.kind === 'only from' ? { from: rule.day, until: null } : { from: null, until: rule.day }
    return { ifs: when, thenAny: [[dates.key, valuesWithin(dates, days, 'maybe')]] }
  }
  const dates = draft.datesFor(sheet, rule, complain)
  if (dates === null) return null
  const ifs = withDays(when, dates, dates === undefined ? [] : valuesWithin(dates, rule, 'surely'))
  if (rule.kind === 'not built together') {
    if (ifs.length > 0) return { ifs, thenAny: [] }
    complain(['when'], 'It forbids every car.', 'Say which values were not built together.')
    return null
  }
  const needs = draft.names.literals(sheet, rule.needs, ['needs'], complain)
  if (needs === null) return null
  if (needs.length > 0) return { ifs, thenAny: needs }
  complain(['needs'], 'It needs nothing.', 'Say what such a car must have.')
  return null
}

/** Literals with the days added to those of the date variable that are there already. */
export function withDays(
  literals: readonly Literal[],
  dates: KnownVariable | undefined,
  allowed: readonly string[],
): readonly Literal[] {
  if (dates === undefined) return literals
  const others = literals.filter(([key]) => key !== dates.key)
  const given = literals.find(([key]) => key === dates.key)?.[1]
  return [...others, [dates.key, given === undefined ? allowed : allowed.filter((value) => given.includes(value))]]
}

/** Ties date variables that speak of the same day: a car of this month is a car of this year. */
export function tieDates(draft: ModelDraft): void {
  const dates = [...draft.names.variables.values()].filter(
    ({ definition }) => definition.kind === 'dates' && definition.basis !== null,
  )
  dates.forEach((later, at) => {
    const earlier = dates.slice(0, at).find(({ definition }) => definition.basis === later.definition.basis)
    if (earlier === undefined) return
    const clauses = later.values.map((value, position) => {
      const span = later.spans[position]
      const same = earlier.values.filter((_, other) => {
        const otherSpan = earlier.spans[other]
        return span !== undefined && otherSpan !== undefined && overlap(span, otherSpan)
      })
      return { ifs: [[later.key, [value]] satisfies Literal], thenAny: [[earlier.key, same] satisfies Literal] }
    })
    const cite = draft.cite(later.sheet, { id: later.definition.id, source: null })
    draft.addRules(`${later.key} is ${earlier.key}`, clauses, [cite])
  })
}
