import type { CarNumber } from '../../shared-types/car.ts'
import { numberLikelihood } from '../analysis/identity/number-likelihood.ts'
import { type NumberReading, plainNumber, readSheetNumber } from '../analysis/identity/read-sheet-number.ts'
import type { CompiledNumber } from '../sheets/reference/compile-numbers.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import { rowMark } from './row-marks.ts'

/** A number of the record that a sheet can read: what it bears on, and how strongly. */
export interface NumberRead {
  /** `number sheet/number N 2`: its id in the evidence. */
  readonly id: string
  readonly of: CompiledNumber
  /** Rows of the record that read alike: a plate and a stamp that agree are one number. */
  readonly rows: readonly CarNumber[]
  readonly asRead: string
  readonly reading: NumberReading
  /** Tells read off the same marks that this number stands for: their readings are not counted beside it. */
  readonly standsFor: readonly string[]
  /** By value of the number's variable; null where no number of the sheet's form has this length. */
  readonly likelihood: Readonly<Record<string, number>> | null
}

/** What stands on the car, read by an eye or a lens; paper and hearsay are claims, not readings of the car. */
const readOnCar: ReadonlySet<CarNumber['howRead']> = new Set(['read character by character', 'from a photograph'])

/** Characters are misread so many times more often from a photograph than on the car. The program's own scale, no source. */
const PHOTOGRAPH_MISREAD = 3

const sameWords = (one: string, other: string): boolean => one.trim().toLowerCase() === other.trim().toLowerCase()

/** The number of the sheets a row is: the one whose name it bears, else the only one whose form it has. */
function numberOf(row: CarNumber, numbers: readonly CompiledNumber[]): CompiledNumber | null {
  const named = numbers.filter(({ number }) => sameWords(number.name, row.kind))
  const fitting = named.length > 0 ? named : numbers.filter(({ number }) => fits(row, number))
  const [only, another] = fitting
  return only !== undefined && another === undefined ? only : null
}

const fits = ({ asRead }: CarNumber, number: CompiledNumber['number']): boolean =>
  // A few marks between many that could not be read fit anything.
  /[^\s?]/.test(asRead) && readSheetNumber(asRead, number).ways.length > 0

/**
 * Every number of a record that some sheet can read, those that read alike once.
 * @param noted tells with a reading. One that travels with a donor says more than the number: it stands, and its marks are
 * passed over in the number; the number stands for the others, so that the same marks count once.
 */
export function numbersRead(
  rows: readonly CarNumber[],
  noted: ReadonlySet<string>,
  { numbers, model }: CompiledSheets,
): readonly NumberRead[] {
  const offDonors = new Set(
    (model?.tells ?? []).flatMap(({ id, reads }) => (reads.kind === 'part' && reads.donor !== null ? [id] : [])),
  )
  const found = new Map<string, { of: CompiledNumber; rows: CarNumber[] }>()
  for (const row of rows) {
    const of = row.asRead.trim() === '' || !readOnCar.has(row.howRead) ? null : numberOf(row, numbers)
    if (of === null) continue
    const key = `${of.key} ${plainNumber(row.asRead, of.number)}`
    const known = found.get(key)
    if (known === undefined) found.set(key, { of, rows: [row] })
    else known.rows.push(row)
  }
  return [...found.values()].map(({ of, rows: own }): NumberRead => {
    const [first] = own as [CarNumber]
    const careful = own.some(({ howRead }) => howRead === 'read character by character')
    const stands = (tell: string | null): boolean => tell !== null && noted.has(tell) && offDonors.has(tell)
    const likelihoods = numberLikelihood(
      first.asRead,
      of.number,
      of.classes.map(({ shares }) => shares.map((share, place) => (stands(of.readBy[place] ?? null) ? null : share))),
      careful ? 1 : PHOTOGRAPH_MISREAD,
    )
    return {
      id: `${of.key} ${rowMark('carNumbers', first.number)}`,
      of,
      rows: own,
      asRead: first.asRead.trim(),
      reading: readSheetNumber(first.asRead, of.number),
      standsFor: of.readBy.flatMap((tell) => (tell === null || stands(tell) ? [] : [tell])),
      likelihood: likelihoods.every((each) => each === 0)
        ? null
        : Object.fromEntries(of.classes.map(({ value }, at) => [value, likelihoods[at] ?? 0])),
    }
  })
}
