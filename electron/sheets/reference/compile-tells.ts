import type { TellValueView } from '../../../shared-types/identity-view.ts'
import type { SheetTell } from '../../../shared-types/reference-fact.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { decisionPaths, type WeighedCondition } from './decision-paths.ts'
import { type FactCite, type ModelDraft, weighedCondition } from './model-draft.ts'
import type { Complain } from './sheet-names.ts'
import { type Shares, shareRow, sharesFault, tellReading } from './tell-readings.ts'

/** A tell as the model knows it. */
export interface CompiledTell {
  /** `sheet/tell` */
  readonly key: string
  readonly sheetId: string
  readonly tell: SheetTell
  /** Variable of the model it reads: the one it shows, or `tell sheet/tell` with the tell's own values. */
  readonly variable: string
  /** Values one can read, in order, as the sheet has them. */
  readonly values: readonly TellValueView[]
  /** Further values of the variable, where the build leaves several open: shares of `values`, in their order. */
  readonly mixtures: ReadonlyMap<string, Shares>
}

/** Adds a sheet's tells: what each shows on which cars as clauses, how it is read as shares. */
export function compileTells(draft: ModelDraft, sheet: ReferenceSheet): readonly CompiledTell[] {
  return sheet.tells.flatMap((tell, at) => {
    const complain = draft.complaining(sheet, ['tells', at])
    const compiled = tell.follows.kind === 'as built' ? asBuilt(draft, sheet, tell, complain) : null
    const own = compiled ?? (tell.follows.kind === 'by cases' ? byCases(draft, sheet, tell, complain) : null)
    return own === null ? [] : [own]
  })
}

function asBuilt(draft: ModelDraft, sheet: ReferenceSheet, tell: SheetTell, complain: Complain): CompiledTell | null {
  if (tell.follows.kind !== 'as built') return null
  const variable = draft.names.variable(sheet, tell.follows.variable, ['follows', 'variable'], complain)
  if (variable === null) return null
  const reads = tellReading(draft, sheet, tell, variable.values, new Map(), complain)
  if (reads === null) return null
  const key = `${sheet.sheetId}/${tell.id}`
  draft.tells.push({ id: key, variable: variable.key, effort: tell.effort, reads })
  draft.cites.set(key, [draft.cite(sheet, tell)])
  const values = variable.definition.values.map(({ id, name, sketch }) => ({
    id,
    name,
    looks: '',
    measure: null,
    sketch,
  }))
  return { key, sheetId: sheet.sheetId, tell, variable: variable.key, values, mixtures: new Map() }
}

/**
 * A tell with values of its own becomes a variable that follows from the build. Where the build leaves several values
 * open, it gets one more value for each such mixture, which is read as the values it is made of: so the build alone
 * settles the variable, and the number of legal builds stays what it is.
 */
function byCases(draft: ModelDraft, sheet: ReferenceSheet, tell: SheetTell, complain: Complain): CompiledTell | null {
  if (tell.follows.kind !== 'by cases') return null
  const { values, cases, otherwise } = tell.follows
  const ids = values.map(({ id }) => id)
  const known: { condition: WeighedCondition; shows: Shares; cite: FactCite }[] = []
  for (const [at, each] of cases.entries()) {
    const path = ['follows', 'cases', at]
    const own: Complain = (below, what, cure) => complain([...path, ...below], what, cure)
    const when = draft.names.literals(sheet, each.when, ['when'], own)
    const dates = draft.datesFor(sheet, each, own)
    const fault = sharesFault(each.shows, ids)
    if (fault !== null) own(['shows'], fault.what, fault.cure)
    if (when === null || dates === null || fault !== null) return null
    const cite = draft.cite(sheet, { id: tell.id, source: each.source ?? tell.source })
    known.push({ condition: weighedCondition(draft, when, dates, each), shows: shareRow(each.shows, ids), cite })
  }
  const fault = otherwise === null ? null : sharesFault(otherwise, ids)
  if (fault !== null) {
    complain(['follows', 'otherwise'], fault.what, fault.cure)
    return null
  }
  const rest = otherwise === null ? ids.map(() => 1 / ids.length) : shareRow(otherwise, ids)
  const paths = decisionPaths(
    known.map(({ condition }) => condition),
    (met) => shownWhere(known, rest, met),
  )
  if (paths === null) {
    complain(
      ['follows', 'cases'],
      'Too many combinations hang together here.',
      'Name fewer variables, or make two tells of it.',
    )
    return null
  }
  const mixtures = new Map<string, Shares>()
  const clauses = paths.map(({ ifs, cell }) => {
    const { shares, from } = JSON.parse(cell) as { shares: number[]; from: number[] }
    const certain = ids[shares.findIndex((share) => share > 1 - 1e-12)]
    const value = certain ?? nameOfMixture(shares, ids)
    if (certain === undefined) mixtures.set(value, shares)
    return { ifs, value, cites: from.map((at) => known[at]?.cite ?? draft.cite(sheet, tell)) }
  })
  const used = new Set(paths.flatMap(({ cell }) => (JSON.parse(cell) as { from: number[] }).from))
  const at = sheet.tells.indexOf(tell)
  cases.forEach((_, position) => {
    if (used.has(position)) return
    const warn = draft.complaining(sheet, ['tells', at, 'follows', 'cases', position], 'warning')
    warn(
      [],
      'It never applies: cases before it, or the days of the sheet, leave it no car.',
      'Take it out, or put it first.',
    )
  })
  const key = `${sheet.sheetId}/${tell.id}`
  const reads = tellReading(draft, sheet, tell, ids, mixtures, complain)
  if (reads === null) return null
  const variable = `tell ${key}`
  draft.variables.push({ name: variable, values: [...ids, ...mixtures.keys()] })
  clauses.forEach(({ ifs, value, cites }, at) => {
    const id = clauses.length === 1 ? `${variable} shows` : `${variable} shows #${at + 1}`
    draft.addRules(id, [{ ifs, thenAny: [[variable, [value]]] }], [...new Set(cites)])
  })
  draft.tells.push({ id: key, variable, effort: tell.effort, reads })
  draft.cites.set(key, [draft.cite(sheet, tell)])
  return { key, sheetId: sheet.sheetId, tell, variable, values, mixtures }
}

/** What shows where, first case first, each as far as the combination meets it; with the cases that have a part in it. */
function shownWhere(cases: readonly { readonly shows: Shares }[], rest: Shares, met: readonly number[]): string {
  let left = 1
  const shares = rest.map(() => 0)
  const from: number[] = []
  const add = (shows: Shares, part: number) =>
    shows.forEach((share, value) => {
      shares[value] = (shares[value] as number) + part * share
    })
  cases.forEach(({ shows }, at) => {
    const part = left * (met[at] ?? 0)
    if (part <= 0) return
    add(shows, part)
    from.push(at)
    left -= part
  })
  if (left > 1e-12) {
    add(rest, left)
    from.push(-1)
  }
  // Shares that differ by rounding alone are one class.
  return JSON.stringify({ shares: shares.map((share) => (share < 1e-15 ? 0 : Number(share.toPrecision(14)))), from })
}

/** Longest name the engine takes, with room to spare. */
const LONGEST_NAME = 160
function nameOfMixture(shares: readonly number[], ids: readonly string[]): string {
  const parts = shares.flatMap((share, at) =>
    share > 0 ? [`${ids[at]} ${Number((100 * share).toPrecision(12))} %`] : [],
  )
  const name = parts.join(' or ')
  return name.length <= LONGEST_NAME ? name : `mixture ${shares.join(' ').slice(0, LONGEST_NAME)}`
}
