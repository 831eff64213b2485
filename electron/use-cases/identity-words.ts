import type { Claim } from '../../shared-types/claim.ts'
import type { IdentityAnswer } from '../../shared-types/identity-answer.ts'
import type {
  ChainStep,
  ClaimView,
  IdentityView,
  SourceWeights,
  TellView,
  VariableView,
} from '../../shared-types/identity-view.ts'
import type { Observation } from '../../shared-types/observation.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import type { CompiledTell } from '../sheets/reference/compile-tells.ts'
import { ruleWords } from '../sheets/reference/fact-words.ts'
import { sourceText } from '../sheets/reference/model-draft.ts'
import type { KnownVariable } from '../sheets/reference/sheet-names.ts'
import type { Noted } from './identity-evidence.ts'
import { misfits, numberWords, placesSaid } from './identity-number-words.ts'
import { rowMark, shortened } from './row-marks.ts'
import type { SheetsOfRecord } from './sheets-of-record.ts'

type Contributions = NonNullable<IdentityAnswer['statements'][number]['contributions']>

/** Weight of findings, in decibans, from which a claim is called supported or contradicted: "moderate" of the scale. */
const SETTLED_DECIBANS = 10

/** Sources a thing of the model rests on, as printed. */
export const sourceOf = (compiled: CompiledSheets, id: string): string => {
  const cites = compiled.cites.get(id) ?? []
  return [...new Set(cites.map(({ source }) => sourceText(source)))].join('; ') || 'no source'
}

/** What was noted under an id of the evidence, in words. */
export function seenWords(key: string, compiled: CompiledSheets, { observations, numbers }: Noted): string {
  const number = numbers.find(({ id }) => id === key)
  if (number !== undefined) return numberWords(number)
  for (const each of numbers) {
    const place = placesSaid(each, compiled).find(({ id }) => id === key)
    if (place !== undefined) return `${numberWords(each)}: ${place.words}`
  }
  const tell = compiled.tells.find((each) => each.key === key)
  const row = observations.find((each) => each.tell === key)
  const value = tell?.values.find(({ id }) => id === row?.value)?.name
  const measured = row?.measured
    ? `${row.measured.value} ± ${row.measured.standardUncertainty} ${tell?.tell.unit ?? ''}`
    : ''
  return `${tell?.tell.name ?? key}: ${value ?? (measured || row?.state) ?? ''}`
}

/** Steps of a chain, the weightiest first. */
function chainOf(
  contributions: Contributions | null | undefined,
  compiled: CompiledSheets,
  noted: Noted,
): readonly ChainStep[] {
  const weight = ({ decibans }: ChainStep) => (decibans === null ? Number.POSITIVE_INFINITY : Math.abs(decibans))
  return (contributions?.leaveOneOut ?? [])
    .map(({ id, decibans, decisive }) => ({
      id,
      words: seenWords(id, compiled, noted),
      source: sourceOf(compiled, noted.numbers.find((number) => number.id === id)?.of.key ?? id),
      decibans,
      decisive,
    }))
    .toSorted((one, other) => weight(other) - weight(one))
}

/** First and last day of the values that hold nine tenths of the weight, a twentieth left out at either end. */
function spanOf(variable: KnownVariable, shares: Readonly<Record<string, number>>): VariableView['span'] {
  if (variable.definition.kind !== 'dates') return null
  const { values } = variable.definition
  let below = 0
  let from: string | null = null
  let to: string | null = null
  for (const value of values) {
    below += shares[value.id] ?? 0
    if (from === null && below > 0.05) from = value.from
    if (to === null && below >= 0.95) to = value.to
  }
  return from === null || to === null ? null : { from, to }
}

export function variableViews(compiled: CompiledSheets, answer: IdentityAnswer, noted: Noted): readonly VariableView[] {
  return compiled.variables.map((variable) => {
    const { key, definition } = variable
    const before = answer.prior.variables[key] ?? {}
    const now = answer.posterior?.variables[key] ?? {}
    const own = answer.statements.find(({ id }) => id === key)?.contributions
    return {
      key,
      name: compiled.nameOf(key),
      kind: definition.kind,
      values: definition.values.map(({ id, name }) => ({ id, name, before: before[id] ?? 0, now: now[id] ?? 0 })),
      span: spanOf(variable, now),
      because: chainOf(own, compiled, noted),
      startDecibans: own == null ? null : oddsDecibans(own.before),
      bySource: sourceWeights(compiled, answer, variable, now),
    }
  })
}

/** Sources that move a weight by less than this are said to agree. */
const LEAST_DISAGREEMENT = 0.005

/** Weights under each source alone, where they are not those of all together. */
function sourceWeights(
  compiled: CompiledSheets,
  answer: IdentityAnswer,
  { key, definition }: KnownVariable,
  now: Readonly<Record<string, number>>,
): readonly SourceWeights[] {
  const accounts = answer.posterior?.accounts ?? []
  const disagrees = accounts.some(({ variables }) =>
    definition.values.some(({ id }) => {
      const own = variables?.[key]?.[id]
      return own === undefined || Math.abs(own - (now[id] ?? 0)) >= LEAST_DISAGREEMENT
    }),
  )
  if (accounts.length < 2 || !disagrees) return []
  return accounts.map(({ id, share, variables }) => ({
    source: accountName(compiled, id),
    belief: share,
    shares: variables === null ? null : definition.values.map((value) => variables[key]?.[value.id] ?? 0),
  }))
}

/** The source of an account of what was built, as printed. */
export const accountName = ({ model }: CompiledSheets, id: string): string =>
  [...new Set(model?.accounts.find((each) => each.id === id)?.tables.map(({ source }) => source))].join('; ') || id

/** Name of a value of a variable of the sheets. */
export const valueName = (compiled: CompiledSheets, variable: string, value: string): string =>
  compiled.variables.find(({ key }) => key === variable)?.definition.values.find(({ id }) => id === value)?.name ??
  value

/** Odds of a probability in decibans; null at 0 and 1. */
const oddsDecibans = (probability: number): number | null =>
  probability > 0 && probability < 1 ? 10 * Math.log10(probability / (1 - probability)) : null

/** What getting there adds to a tell's effort of 1 (a glance) to 5 (a workshop and hours). The program's own scale, no source. */
const ACCESS_COST: { readonly [A in CompiledTell['tell']['access']]: number } = {
  'from outside': 0,
  'doors and lids open': 0,
  'from below': 1,
  'trim or a cover lifted': 1,
  'taken apart': 3,
}

/** One tell of the record's sheets, with what was noted of it. */
export function tellView(
  { key, tell, values }: CompiledTell,
  compiled: CompiledSheets,
  observations: readonly Observation[],
  bits: number | null,
  toldBy: string | null = null,
): TellView {
  const cost = tell.effort + ACCESS_COST[tell.access]
  return {
    key,
    name: tell.name,
    lookAt: tell.lookAt,
    how: tell.how,
    where: tell.where.words,
    panels: tell.where.panels,
    effort: tell.effort,
    access: tell.access,
    caution: tell.caution,
    source: sourceOf(compiled, key),
    unit: tell.unit,
    values,
    sketch: tell.sketch,
    bits,
    worth: bits === null ? null : bits / cost,
    toldBy,
    observation: observations.find((row) => row.tell === key) ?? null,
  }
}

/** Tells with what each is worth; of one whose marks were read as part of a number nothing is left to look at. */
export function tellViews(compiled: CompiledSheets, answer: IdentityAnswer, noted: Noted): readonly TellView[] {
  const worth = new Map(answer.worths?.tells.map(({ tell, bits }) => [tell, bits]))
  const told = new Map(
    noted.numbers.flatMap((number) =>
      number.likelihood === null ? [] : number.standsFor.map((tell) => [tell, numberWords(number)] as const),
    ),
  )
  return compiled.tells
    .map((tell) => {
      const toldBy = told.get(tell.key) ?? null
      return tellView(
        tell,
        compiled,
        noted.observations,
        toldBy === null ? (worth.get(tell.key) ?? null) : null,
        toldBy,
      )
    })
    .toSorted((one, other) => (other.bits ?? -1) - (one.bits ?? -1))
}

export function claimViews(
  claims: readonly Claim[],
  compiled: CompiledSheets,
  answer: IdentityAnswer,
  noted: Noted,
): readonly ClaimView[] {
  return answer.statements.flatMap(({ id, contributions, support }) => {
    const claim = claims.find(({ number }) => rowMark('claims', number) === id)
    if (claim === undefined || contributions === null) return []
    const decibans = support?.decibans ?? null
    const speaks =
      support === null || support.supports === 'neither' ? 'neither' : support.supports === 'first' ? 'for' : 'against'
    const settled = support?.decisive === true || Math.abs(decibans ?? 0) >= SETTLED_DECIBANS
    return [
      {
        claim: claim.number,
        before: contributions.before,
        after: contributions.after,
        likelihoodRatio: support?.likelihoodRatio ?? null,
        decibans,
        words: support?.words ?? 'no support',
        speaks,
        verdict: !settled || speaks === 'neither' ? 'not settled' : speaks === 'for' ? 'supported' : 'contradicted',
        because: chainOf(contributions, compiled, noted),
      },
    ]
  })
}

/** A fact of the sheets that a rule or doubt of the model stands for, in a sentence; null when it is not one of their rules. */
export function factInWords({ sheets, compiled }: SheetsOfRecord, id: string): string | null {
  const [cite] = compiled?.cites.get(id) ?? []
  const sheet = sheets.find(({ sheetId }) => sheetId === cite?.sheetId)
  const rule = sheet?.rules.find((each) => each.id === cite?.factId)
  return sheet === undefined || rule === undefined ? null : ruleWords(sheet, rule)
}

/** Minimal conflicts as short arguments, and what would have to be wrong. */
export function conflictViews(
  own: SheetsOfRecord,
  answer: IdentityAnswer,
  noted: Noted,
): Pick<IdentityView, 'conflicts' | 'repairs'> {
  const { compiled } = own
  if (compiled === null) return { conflicts: [], repairs: [] }
  const found = answer.impossible ?? answer.conflicts
  const wordsOf = (id: string): string => factInWords(own, id) ?? shortened(seenWords(id, compiled, noted), 120)
  const basis = (id: string): string =>
    noted.numbers.find((number) => id === number.id || id.startsWith(`${number.id} place `))?.of.key ?? id
  const ofForm = misfits(noted, compiled)
  return {
    conflicts: [
      ...ofForm.conflicts,
      ...found.conflicts.map((items) => ({
        cannotAllBe: items.map(({ id }) => ({ words: wordsOf(id), source: sourceOf(compiled, basis(id)) })),
      })),
    ],
    repairs: [...ofForm.repairs, ...found.repairs.map((items) => items.map(({ id }) => wordsOf(id)))],
  }
}
