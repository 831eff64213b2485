import type { Problem } from '../../../../shared-types/problem.ts'
import { exactMetric, shownUnit } from '../../../../shared-types/shown-measure.ts'
import type { LengthUnit, ShownUnits } from '../../../../shared-types/units.ts'
import { typedNumber } from '../../../parts-of-page/figure-text.ts'
import type { TapeEntry, TapeFieldName } from './tape-entry.ts'
import { typedLengths } from './typed-lengths.ts'

/** Reads the fields of an entry and remembers the first that is missing, and the first that cannot be read. */
export class EntryReader {
  missing: Problem | null = null
  refused: Problem | null = null
  private readonly entry: TapeEntry
  private readonly units: ShownUnits

  constructor(entry: TapeEntry, units: ShownUnits) {
    this.entry = entry
    this.units = units
  }

  private get unit(): LengthUnit {
    return this.units.lengthUnit
  }

  /** The unit coatings are typed in. */
  get coatingUnit(): string {
    return this.units.coatingUnit
  }

  refuse(field: TapeFieldName, message: string): void {
    this.refused ??= { code: 'input-refused', message, field }
  }

  private wanted(field: TapeFieldName, what: string): void {
    this.missing ??= { code: 'input-refused', message: `Enter ${what}.`, field }
  }

  /** Lengths in a row, in millimetres; none where nothing is typed. */
  maybeLengths(field: TapeFieldName): readonly number[] {
    const read = typedLengths(this.entry[field], this.unit)
    if ('mm' in read) return read.mm
    this.refuse(field, read.refused)
    return []
  }

  /** Lengths in a row, at least so many. */
  lengths(field: TapeFieldName, what: string, least = 1): number[] {
    const read = this.maybeLengths(field)
    if (read.length < least) this.wanted(field, what)
    return [...read]
  }

  maybeLength(field: TapeFieldName): number | null {
    const read = this.maybeLengths(field)
    if (read.length > 1) this.refuse(field, 'Enter one length here.')
    return read[0] ?? null
  }

  length(field: TapeFieldName, what: string): number {
    const read = this.maybeLength(field)
    if (read === null) this.wanted(field, what)
    return read ?? 0
  }

  /** A length that must be more than nothing, such as what a tool is good to. */
  positiveLength(field: TapeFieldName, what: string): number {
    const read = this.length(field, what)
    if (this.entry[field].trim() !== '' && !(read > 0))
      this.refuse(field, `It must be greater than nothing: enter ${what}.`)
    return read
  }

  /** A plain number in the unit of its field. */
  number(field: TapeFieldName, what: string): number {
    const typed = this.entry[field]
    if (typed.trim() === '') this.wanted(field, what)
    const read = typedNumber(typed)
    if (read === null && typed.trim() !== '') this.refuse(field, `“${typed.trim()}” is no number: enter ${what}.`)
    return read ?? 0
  }

  /** A plain number that must not be below nothing. */
  amount(field: TapeFieldName, what: string): number {
    const read = this.number(field, what)
    if (read < 0) this.refuse(field, `It cannot be less than nothing: enter ${what}.`)
    return read
  }

  /** A thickness of coating that must not be below nothing, in µm. */
  coating(field: TapeFieldName, what: string): number {
    return exactMetric(this.amount(field, what) * shownUnit('µm', this.units).per)
  }

  /** Rows of a note that are not empty. */
  rows(field: TapeFieldName, what: string, least: number): readonly string[] {
    const rows = this.entry[field]
      .split(/[\n;]/)
      .map((row) => row.trim())
      .filter((row) => row !== '')
    if (rows.length < least) this.wanted(field, what)
    return rows
  }

  /** Name and lengths of a row such as `left eye 0 0 512`. */
  namedLengths(
    field: TapeFieldName,
    row: string,
    count: number,
    form: string,
  ): { name: string; mm: readonly number[] } {
    const words = row.split(/\s+/)
    const from = words.findIndex((_, at) => 'mm' in typedLengths(words.slice(at).join(' '), this.unit))
    const read = typedLengths(from < 0 ? '' : words.slice(from).join(' '), this.unit)
    const mm = 'mm' in read ? read.mm : []
    // The last numbers are the lengths: a name may end in a number of its own.
    const extra = mm.length - count
    if (extra >= 0) return { name: words.slice(0, from + extra).join(' '), mm: mm.slice(extra) }
    const mixed = typedLengths(row, this.unit)
    const clash = 'refused' in mixed && mixed.refused.includes('one unit')
    this.refuse(field, clash ? mixed.refused : `“${row}” cannot be read: write ${form}.`)
    return { name: '', mm: Array.from({ length: count }, () => 0) }
  }
}
