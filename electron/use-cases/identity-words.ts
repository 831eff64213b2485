import type { IdentityAnswer } from '../../shared-types/identity-answer.ts'
import type { ChainStep } from '../../shared-types/identity-view.ts'
import type { Observation } from '../../shared-types/observation.ts'
import { shownMeasure } from '../../shared-types/shown-measure.ts'
import type { ShownUnits } from '../../shared-types/units.ts'
import { figure, NARROW } from '../report/wording/numbers.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import { ruleWords } from '../sheets/reference/fact-words.ts'
import { sourceText } from '../sheets/reference/model-draft.ts'
import type { Noted } from './identity-evidence.ts'
import { numberWords, placesSaid } from './identity-number-words.ts'
import type { SheetsOfRecord } from './sheets-of-record.ts'

type Contributions = NonNullable<IdentityAnswer['statements'][number]['contributions']>

/** Sources a thing of the model rests on, as printed. */
export const sourceOf = (compiled: CompiledSheets, id: string): string => {
  const cites = compiled.cites.get(id) ?? []
  return [...new Set(cites.map(({ source }) => sourceText(source)))].join('; ') || 'no source'
}

/** What was noted under an id of the evidence, in words. */
export function seenWords(key: string, compiled: CompiledSheets, { observations, numbers, shownIn }: Noted): string {
  const number = numbers.find(({ id }) => id === key)
  if (number !== undefined) return numberWords(number)
  for (const each of numbers) {
    const place = placesSaid(each, compiled).find(({ id }) => id === key)
    if (place !== undefined) return `${numberWords(each)}: ${place.words}`
  }
  const tell = compiled.tells.find((each) => each.key === key)
  const row = observations.find((each) => each.tell === key)
  const value = tell?.values.find(({ id }) => id === row?.value)?.name
  const measured = row?.measured ? measuredWords(row.measured, tell?.tell.unit ?? '', shownIn) : ''
  return `${tell?.tell.name ?? key}: ${value ?? (measured || row?.state) ?? ''}`
}

/** What was measured of a tell, with its expanded uncertainty; what stays in the unit of the sheet, as it was noted. */
function measuredWords(
  { value, standardUncertainty }: NonNullable<Observation['measured']>,
  kept: string,
  units: ShownUnits,
): string {
  const shown = shownMeasure({ value, uncertainty: 2 * standardUncertainty, unit: kept }, units)
  const { decimals } = shown
  const said =
    decimals === null
      ? `${value} ± ${2 * standardUncertainty} ${kept}`
      : `${figure(shown.value, decimals)} ± ${figure(shown.uncertainty ?? 0, decimals)}${NARROW}${shown.unit}`
  return `${said} (k = 2)`
}

/** Steps of a chain, the weightiest first. */
export function chainOf(
  contributions: Contributions | null | undefined,
  compiled: CompiledSheets,
  noted: Noted,
): readonly ChainStep[] {
  const after = contributions == null ? null : oddsDecibans(contributions.after)
  const weight = ({ decibans }: ChainStep) => (decibans === null ? Number.POSITIVE_INFINITY : Math.abs(decibans))
  return (contributions?.leaveOneOut ?? [])
    .map(({ id, decibans, decisive }) => ({
      id,
      words: seenWords(id, compiled, noted),
      source: sourceOf(compiled, noted.numbers.find((number) => number.id === id)?.of.key ?? id),
      decibans,
      decisive,
      exhibits: exhibitsOf(id, noted),
      overturns: decibans !== null && after !== null && after > 0 !== after - decibans > 0,
    }))
    .toSorted((one, other) => weight(other) - weight(one))
}

/** Exhibits an observation, or the rows of a number, rest on. */
const exhibitsOf = (id: string, { observations, numbers }: Noted): readonly number[] => [
  ...new Set([
    ...observations.filter(({ tell }) => tell === id).flatMap(({ exhibits }) => exhibits),
    ...numbers.filter((number) => number.id === id).flatMap(({ rows }) => rows.flatMap(({ exhibits }) => exhibits)),
  ]),
]

/** Odds of a probability in decibans; null at 0 and 1. */
export const oddsDecibans = (probability: number): number | null =>
  probability > 0 && probability < 1 ? 10 * Math.log10(probability / (1 - probability)) : null

/** The source of an account of what was built, as printed. */
export const accountName = ({ model }: CompiledSheets, id: string): string =>
  [...new Set(model?.accounts.find((each) => each.id === id)?.tables.map(({ source }) => source))].join('; ') || id

/** Name of a value of a variable of the sheets. */
export const valueName = (compiled: CompiledSheets, variable: string, value: string): string =>
  compiled.variables.find(({ key }) => key === variable)?.definition.values.find(({ id }) => id === value)?.name ??
  value

/** A fact of the sheets that a rule or doubt of the model stands for, in a sentence; null when it is not one of their rules. */
export function factInWords({ sheets, compiled }: SheetsOfRecord, id: string): string | null {
  const [cite] = compiled?.cites.get(id) ?? []
  const sheet = sheets.find(({ sheetId }) => sheetId === cite?.sheetId)
  const rule = sheet?.rules.find((each) => each.id === cite?.factId)
  return sheet === undefined || rule === undefined ? null : ruleWords(sheet, rule)
}
