import type { IdentityLiteral } from '../../../shared-types/identity-model.ts'
import { partBase } from '../../../shared-types/part.ts'
import type { PartCarrier } from '../../../shared-types/part-expectation.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { daysAsLiteral } from '../../sheets/reference/date-literals.ts'
import { conditionWords } from '../../sheets/reference/fact-words.ts'
import type { SheetNames } from '../../sheets/reference/sheet-names.ts'
import { citedSource, noComplaint } from './part-facts.ts'

/** A row of interchange with what it means for the builds of its sheet. */
export interface KnownInterchange {
  /** `sheet/row` */
  readonly id: string
  readonly part: string
  readonly row: ReferenceSheet['interchange'][number]
  readonly sheet: ReferenceSheet
  readonly source: string
  /** Builds of this line the part belongs to; empty for all. */
  readonly on: readonly IdentityLiteral[]
  readonly onWords: string
  readonly carriers: readonly KnownCarrier[]
}

export interface KnownCarrier {
  readonly id: string
  readonly carrier: PartCarrier
  /** Builds of this line that carried the same part in the same years: how such a part looks. */
  readonly alike: readonly IdentityLiteral[]
}

/** Joins a statement of days to a condition; a condition that names the days already stays as it is. */
const withDays = (on: readonly IdentityLiteral[], days: IdentityLiteral | null): readonly IdentityLiteral[] =>
  days === null || on.some(([variable]) => variable === days[0]) ? on : [...on, days]

/** All interchange of the sheets of a record. */
export const knownInterchange = (sheets: readonly ReferenceSheet[], names: SheetNames): readonly KnownInterchange[] =>
  sheets.flatMap((sheet) =>
    sheet.interchange.map((row) => {
      const on = names.literals(sheet, row.on, [], noComplaint) ?? []
      const id = `${sheet.sheetId}/${row.id}`
      return {
        id,
        part: partBase(row.part),
        row,
        sheet,
        source: citedSource(sheet, row.source),
        on,
        onWords: conditionWords(sheet, row.on) || 'every car of the sheet',
        carriers: row.carriers.map((carrier, at) => ({
          id: `${id} ${at}`,
          carrier,
          alike: withDays(on, daysAsLiteral(names, sheet, { from: carrier.from, until: carrier.until })),
        })),
      }
    }),
  )

/** A carrier in a line: which car, when, what is altered, and how it is told. */
export function carrierWords({ line, from, until, altered, toldBy }: PartCarrier): string {
  const years = [from?.slice(0, 4), until?.slice(0, 4)].filter((each) => each !== undefined)
  const when =
    years.length === 2
      ? `, ${years.join(' to ')}`
      : from !== null
        ? `, from ${years[0]}`
        : years.length === 1
          ? `, until ${years[0]}`
          : ''
  const told = toldBy === '' ? '' : ` Told by ${toldBy}.`
  return `${line}${when}.${altered === '' ? '' : ` ${altered}`}${told}`
}
