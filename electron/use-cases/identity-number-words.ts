import type { IdentityCertainty, IdentityLiteral } from '../../shared-types/identity-model.ts'
import type { ConflictView, IdentityView, NumberReadView } from '../../shared-types/identity-view.ts'
import type { ChangeDay } from '../../shared-types/reference-fact.ts'
import { fitsButFor } from '../analysis/identity/read-sheet-number.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import { daysAsLiteral } from '../sheets/reference/date-literals.ts'
import { changeDayWords, conditionWords } from '../sheets/reference/fact-words.ts'
import { sourceText } from '../sheets/reference/model-draft.ts'
import type { NumberRead } from './identity-numbers.ts'
import { listOfMarks } from './row-marks.ts'

type Numbers = { readonly numbers: readonly NumberRead[] }

const marksOf = ({ rows }: NumberRead): string => listOfMarks(rows.map(({ mark }) => mark))

/** A number as printed in a chain: "Chassis number SC 11387 (N 1)". */
export const numberWords = (read: NumberRead): string => `${read.of.number.name} ${read.asRead} (${marksOf(read)})`

/** What one place of a number says, whichever way it is read. */
export interface PlaceSaid {
  readonly id: string
  readonly words: string
  /** Statements about the build; empty where the place says nothing of it. */
  readonly says: readonly IdentityLiteral[]
}

const saidKept = new WeakMap<NumberRead, readonly PlaceSaid[]>()

/**
 * What each place of a number says taken at its word; a place that may be read several ways says what they share. Every
 * line of every chain asks it of the same few numbers, so it is worked out once for each.
 */
export function placesSaid(read: NumberRead, compiled: CompiledSheets): readonly PlaceSaid[] {
  const known = saidKept.get(read)
  if (known !== undefined) return known
  const made = placesWorkedOut(read, compiled)
  saidKept.set(read, made)
  return made
}

function placesWorkedOut({ id, of, reading }: NumberRead, { names }: CompiledSheets): readonly PlaceSaid[] {
  const { number, sheet } = of
  return number.places.flatMap((place, at): PlaceSaid[] => {
    if (place.kind === 'fixed') return []
    const chosen = new Set(
      reading.ways.flatMap(({ marks, sequences }) => [
        ...marks.flatMap((each) => (each.place === at ? [each.row] : [])),
        ...sequences.flatMap((each) => (each.place === at && each.stretch !== null ? [each.stretch] : [])),
      ]),
    )
    if (chosen.size === 0) return []
    const rows = [...chosen].flatMap((row): { words: string; says: readonly IdentityLiteral[] }[] => {
      const own = place.kind === 'marks' ? place.rows[row] : place.stretches[row]
      if (own === undefined) return []
      const means = (names.literals(sheet, own.means, [], () => undefined) ?? []).map(
        ([name, values]): IdentityLiteral => [name, [...values]],
      )
      const meant = conditionWords(sheet, own.means)
      if ('text' in own)
        return [{ words: [own.text, own.words || meant].filter((each) => each !== '').join(', '), says: means }]
      const days = daysAsLiteral(names, sheet, own)
      const words = [`${own.first} to ${own.last}`, meant, givenOut(own)].filter((each) => each !== '').join(', ')
      return [{ words, says: days === null ? means : [...means, days] }]
    })
    const words = `${place.name} ${rows.map((row) => row.words).join(', or ')}`
    return [{ id: `${id} place ${at + 1}`, words, says: sharedBy(rows.map(({ says }) => says)) }]
  })
}

/** Days in which a stretch of figures was given out; empty where none are known. */
function givenOut({ from, until }: { readonly from: ChangeDay | null; readonly until: ChangeDay | null }): string {
  if (from === null && until === null) return ''
  if (until === null) return `given out from ${changeDayWords(from ?? '')} on`
  return from === null
    ? `given out up to ${changeDayWords(until)}`
    : `given out ${changeDayWords(from)} to ${changeDayWords(until)}`
}

/** What holds whichever of some statements does: variables all of them speak of, with the values of any. */
function sharedBy(statements: readonly (readonly IdentityLiteral[])[]): readonly IdentityLiteral[] {
  const [first = [], ...others] = statements
  return first.flatMap(([variable, values]): IdentityLiteral[] => {
    const same = others.map((says) => says.find(([name]) => name === variable)?.[1])
    if (same.includes(undefined)) return []
    return [[variable, [...new Set([...values, ...same.flatMap((each) => each ?? [])])]]]
  })
}

/** Numbers at their word, for the question of what cannot all be so. */
export const numbersAtTheirWord = (numbers: readonly NumberRead[], compiled: CompiledSheets): IdentityCertainty[] =>
  numbers.flatMap((number) =>
    placesSaid(number, compiled).flatMap(({ id, says }) => (says.length === 0 ? [] : [{ id, says: [...says] }])),
  )

const sourcesOf = ({ of }: NumberRead, { cites }: CompiledSheets): string =>
  (cites.get(of.key) ?? []).map(({ source }) => sourceText(source)).join('; ')

/** What would let a number that does not fit have the form after all. */
function wouldFit({ asRead, of }: NumberRead): readonly string[] {
  const places = fitsButFor(asRead, of.number)
  return places.length === 0 ? [] : [`character ${places.join(' or ')} of it misread`]
}

/** Numbers no car of the sheet can bear as they were read, each as an argument; who wrote them so is not in it. */
export function misfits({ numbers }: Numbers, compiled: CompiledSheets): Pick<IdentityView, 'conflicts' | 'repairs'> {
  const wrong = numbers.filter(({ reading }) => reading.why !== null)
  return {
    conflicts: wrong.map((number): ConflictView => {
      const how = [...new Set(number.rows.map(({ howRead }) => howRead))].join(' and ')
      return {
        cannotAllBe: [
          { words: `${numberWords(number)}, ${how}`, source: 'this record' },
          { words: `${number.of.number.name} as written: ${number.reading.why}`, source: sourcesOf(number, compiled) },
        ],
      }
    }),
    repairs: wrong.flatMap((number) => [
      ...wouldFit(number).map((words) => [`${numberWords(number)}: ${words}`]),
      [`${number.of.number.name} written otherwise than the sheet knows`],
      [`${numberWords(number)} is not the number this car left with`],
    ]),
  }
}

/** Every number a sheet could read: what it says, whether it counts, and for which tells it stands. */
export const numberViews = ({ numbers }: Numbers, compiled: CompiledSheets): readonly NumberReadView[] =>
  numbers.map((number) => ({
    rows: number.rows.flatMap(({ carNumber }) => carNumber ?? []),
    parts: number.rows.flatMap(({ partId }) => partId ?? []),
    name: number.of.number.name,
    asRead: number.asRead,
    says: placesSaid(number, compiled).map(({ words }) => words),
    why: number.reading.why,
    wouldFit: number.reading.why === null ? [] : wouldFit(number),
    counts: number.likelihood !== null,
    standsFor: number.standsFor.map((tell) => compiled.tells.find(({ key }) => key === tell)?.tell.name ?? tell),
    source: sourcesOf(number, compiled),
  }))
