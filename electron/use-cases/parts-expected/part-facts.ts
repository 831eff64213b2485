import type { IdentityEvidence, IdentityLiteral } from '../../../shared-types/identity-model.ts'
import { partBase } from '../../../shared-types/part.ts'
import type { SheetNumber } from '../../../shared-types/reference-fact.ts'
import type { ReferenceSheet, SheetSource } from '../../../shared-types/reference-sheet.ts'
import type { CompiledTell } from '../../sheets/reference/compile-tells.ts'
import { dateVariableOf, daysAsLiteral } from '../../sheets/reference/date-literals.ts'
import { sourceText } from '../../sheets/reference/model-draft.ts'
import { type Complain, SheetNames } from '../../sheets/reference/sheet-names.ts'
import type { SheetsOfRecord } from '../sheets-of-record.ts'

/** Compiled sheets have been checked: names in them are known. */
export const noComplaint: Complain = () => undefined

/** A tell of the sheets that is looked at on a part. */
export interface TellOnPart {
  readonly kind: 'tell'
  readonly id: string
  readonly part: string
  readonly tell: CompiledTell
  readonly sheet: ReferenceSheet
  readonly source: string
  readonly datesOnly: boolean
  /** Weight of each value under what was noted; null when it was not looked at, or says nothing. */
  readonly seen: Readonly<Record<string, number>> | null
}

/** One value a number may have: the marks or stretch, and the builds it belongs to. */
export interface NumberValue {
  readonly id: string
  readonly name: string
  readonly says: readonly IdentityLiteral[]
}

/** One place of a number of the sheets that is written on a part: marks, or figures issued in stretches. */
export interface NumberOnPart {
  readonly kind: 'number'
  /** `sheet/number place` */
  readonly id: string
  readonly name: string
  readonly place: number
  readonly part: string
  readonly number: SheetNumber
  readonly sheet: ReferenceSheet
  readonly source: string
  readonly values: readonly NumberValue[]
}

export type FactOnPart = TellOnPart | NumberOnPart

export const citedSource = (sheet: ReferenceSheet, id: string | null): string => {
  const source: SheetSource | null = sheet.sources.find((each) => each.id === id) ?? null
  return sourceText(source)
}

/** True when what a tell shows follows from the day of building and nothing else. */
function followsDays({ tell }: CompiledTell, sheet: ReferenceSheet, names: SheetNames): boolean {
  const dates = dateVariableOf(names, sheet)
  if (tell.follows.kind === 'as built') {
    const variable = names.variable(sheet, tell.follows.variable, [], noComplaint)
    return variable !== null && variable.definition.kind === 'dates'
  }
  return (
    dates !== null &&
    tell.follows.cases.some(
      ({ when, from, until }) => Object.keys(when).length > 0 || from !== null || until !== null,
    ) &&
    tell.follows.cases.every(({ when }) =>
      Object.keys(when).every((reference) => names.variable(sheet, reference, [], noComplaint)?.key === dates.key),
    )
  )
}

/** Values at one place of a number as statements about the build; empty where the place says nothing of it. */
function valuesAt(
  place: SheetNumber['places'][number],
  sheet: ReferenceSheet,
  names: SheetNames,
): readonly NumberValue[] {
  if (place.kind === 'marks')
    return place.rows.map(({ text, means, words }, row) => ({
      id: String(row),
      name: words === '' ? text : `${text}, ${words}`,
      says: names.literals(sheet, means, [], noComplaint) ?? [],
    }))
  if (place.kind === 'fixed') return []
  return place.stretches.map((stretch, row) => {
    const means = names.literals(sheet, stretch.means, [], noComplaint) ?? []
    const days = daysAsLiteral(names, sheet, stretch)
    return {
      id: String(row),
      name: `${stretch.first} to ${stretch.last}`,
      says: days === null ? means : [...means, days],
    }
  })
}

/** Everything the sheets say of parts: each tell once for every part it is looked at on, each place of each number. */
export function factsOnParts(
  { sheets, compiled }: SheetsOfRecord,
  { readings }: Pick<IdentityEvidence, 'readings'>,
): { readonly facts: readonly FactOnPart[]; readonly names: SheetNames } {
  const names = new SheetNames(sheets)
  const seen = new Map(readings.map((reading) => [reading.tell, reading.seen]))
  const bySheet = new Map(sheets.map((sheet) => [sheet.sheetId, sheet]))
  const tells = (compiled?.tells ?? []).flatMap((tell): TellOnPart[] => {
    const sheet = bySheet.get(tell.sheetId)
    if (sheet === undefined) return []
    return tell.tell.where.parts.map((part) => ({
      kind: 'tell',
      id: tell.key,
      part: partBase(part),
      tell,
      sheet,
      source: citedSource(sheet, tell.tell.source),
      datesOnly: followsDays(tell, sheet, names),
      seen: seen.get(tell.key) ?? null,
    }))
  })
  const numbers = sheets.flatMap((sheet) =>
    sheet.numbers.flatMap((number): NumberOnPart[] => {
      if (number.part === null) return []
      const part = partBase(number.part)
      const source = citedSource(sheet, number.source)
      return number.places.flatMap((place, at): NumberOnPart[] => {
        const values = valuesAt(place, sheet, names)
        if (place.kind === 'fixed' || values.length === 0) return []
        const id = `${sheet.sheetId}/${number.id} ${at}`
        const name = `${number.name}, ${place.name}`
        return [{ kind: 'number', id, name, place: at, part, number, sheet, source, values }]
      })
    }),
  )
  return { facts: [...tells, ...numbers], names }
}
