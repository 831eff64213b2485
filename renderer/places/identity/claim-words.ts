import type { Claim } from '../../../shared-types/claim.ts'
import type { SheetTerms, TermVariable } from '../../../shared-types/sheet-terms.ts'

export type Assertion = Claim['asserts'][number]

/** What a variable of a claim is in the sheets of the record; undefined where no sheet knows it any more. */
export const termOf = (terms: readonly SheetTerms[], { sheetId, variable }: Omit<Assertion, 'values'>) =>
  terms.find((sheet) => sheet.sheetId === sheetId)?.variables.find((each) => each.variable === variable)

/** True when the values are neighbours in the order of the sheet. */
const areNeighbours = (places: readonly number[]): boolean =>
  places.every((place, at) => at === 0 || place === (places[at - 1] ?? Number.NaN) + 1)

/** Values as printed: names joined by "or"; neighbouring days from the first to the last. */
export function valueWords(term: TermVariable, values: readonly string[]): string {
  const places = term.values.flatMap(({ id }, at) => (values.includes(id) ? [at] : []))
  const names = places.map((at) => term.values[at]?.name ?? '')
  const [first, last] = [names.at(0) ?? '', names.at(-1) ?? '']
  if (term.kind === 'dates' && names.length > 1 && areNeighbours(places)) return `${first} to ${last}`
  return names.join(' or ')
}

/** What a claim says in the terms of the sheets, as one line; empty when it says nothing in them. */
export function saysWords(asserts: readonly Assertion[], terms: readonly SheetTerms[]): string {
  return asserts
    .map((assertion) => {
      const term = termOf(terms, assertion)
      const name = term?.name ?? `${assertion.sheetId}/${assertion.variable}`
      return `${name}: ${term === undefined ? assertion.values.join(' or ') : valueWords(term, assertion.values)}`
    })
    .join('; ')
}

/** Factor by which a statement of this reliability changes the odds of what it says. */
export const oddsFactor = (percent: number): number => percent / (100 - percent)

/** What a reliability does, in plain words. A likelihood ratio of p to 100 - p; ten times its logarithm in decibans. */
export function reliabilityWords({
  reliability,
  repeats,
  asserts,
}: Pick<Claim, 'reliability' | 'repeats' | 'asserts'>) {
  if (reliability === null) return 'Not stated: the claim is put to the test and is no evidence itself.'
  if (repeats !== null) return `It repeats C\u202f${repeats}: no second witness, so it moves nothing of its own.`
  if (asserts.length === 0) return 'It says nothing in the terms of a sheet yet, so it moves nothing.'
  if (reliability === 50) return 'As often wrong as right: it moves nothing.'
  const factor = oddsFactor(reliability)
  const size = Number((factor > 1 ? factor : 1 / factor).toPrecision(2))
  const decibans = `${Math.abs(10 * Math.log10(factor)).toFixed(1)} decibans`
  return factor > 1
    ? `Of a hundred such statements ${reliability} hold: the odds of what it says rise ${size} times, ${decibans}.`
    : `Of a hundred such statements only ${reliability} hold: the odds of what it says fall ${size} times, ${decibans}.`
}
