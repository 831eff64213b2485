import type { CarNumber } from '../../shared-types/car.ts'
import type { SetAside } from '../../shared-types/identity-asking.ts'
import { type PartEntry, partBase } from '../../shared-types/part.ts'
import type { RecordView } from '../../shared-types/record.ts'
import type { ShownUnits } from '../../shared-types/units.ts'
import type { NameChoice } from '../../shared-types/words.ts'
import { numberLikelihood } from '../analysis/identity/number-likelihood.ts'
import { type NumberReading, plainNumber, readSheetNumber } from '../analysis/identity/read-sheet-number.ts'
import { partDefinition } from '../sheets/parts-list.ts'
import type { CompiledNumber } from '../sheets/reference/compile-numbers.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import { rowMark } from './row-marks.ts'

/** Where a number of the record was read: a row of the list of numbers, or a part of the register. */
interface NumberRow {
  readonly asRead: string
  readonly howRead: CarNumber['howRead'] | 'read on the part'
  /** As printed: "N 2", "Back axle". */
  readonly mark: string
  readonly carNumber: number | null
  readonly partId: string | null
  readonly exhibits: readonly number[]
}

/** A number of the record that a sheet can read: what it bears on, and how strongly. */
export interface NumberRead {
  /** `number sheet/number N 2`: its id in the evidence. */
  readonly id: string
  readonly of: CompiledNumber
  /** Rows of the record that read alike: a plate and a stamp that agree are one number. */
  readonly rows: readonly NumberRow[]
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

/** A number on a part is a reading of the car where somebody saw or felt it. */
const learnedOnCar: ReadonlySet<PartEntry['learned']> = new Set(['seen', 'felt', 'measured'])

const sameWords = (one: string, other: string): boolean => one.trim().toLowerCase() === other.trim().toLowerCase()

/** The number of the sheets a row is: the one whose name it bears, else the only one whose form it has. */
function numberOf(row: CarNumber, numbers: readonly CompiledNumber[]): CompiledNumber | null {
  const named = numbers.filter(({ number }) => sameWords(number.name, row.kind))
  const fitting = named.length > 0 ? named : numbers.filter(({ number }) => fits(row, number))
  const [only, another] = fitting
  return only !== undefined && another === undefined ? only : null
}

const fits = ({ asRead }: { readonly asRead: string }, number: CompiledNumber['number']): boolean =>
  // A few marks between many that could not be read fit anything.
  /[^\s?]/.test(asRead) && readSheetNumber(asRead, number).ways.length > 0

/** The number of the sheets that stands on a part: the only one there, else the only one whose form it has. */
function numberOnPart(entry: PartEntry, numbers: readonly CompiledNumber[]): CompiledNumber | null {
  const there = numbers.filter(({ number }) => number.part !== null && partBase(number.part) === partBase(entry.partId))
  const fitting =
    there.length === 1 ? there : there.filter(({ number }) => fits({ asRead: entry.numberAsRead }, number))
  const [only, another] = fitting
  return only !== undefined && another === undefined ? only : null
}

/** Numbers of a record: its list of them, and what was read on parts. */
export type RowsWithNumbers = Pick<RecordView, 'carNumbers'> &
  Partial<Pick<RecordView, 'parts'>> & {
    readonly commission?: { readonly names: NameChoice } & Partial<ShownUnits>
    /** Numbers left out of an answer; one of the list is then left out also where it stands on a part. */
    readonly aside?: Pick<SetAside, 'numbers' | 'parts'>
  }

interface Found {
  readonly of: CompiledNumber
  readonly rows: NumberRow[]
}

/**
 * Numbers with the sheets' word for what they are. One read on a part and one of the list that are the same number of the
 * car count once: where the list has it, what was read on the part adds nothing, alike or not, since the same marks were read.
 */
function foundIn(
  { carNumbers, parts = [], commission, aside = { numbers: [], parts: [] } }: RowsWithNumbers,
  numbers: readonly CompiledNumber[],
): Found[] {
  const found = new Map<string, Found>()
  const take = (of: CompiledNumber, row: NumberRow) => {
    const key = `${of.key} ${plainNumber(row.asRead, of.number)}`
    const known = found.get(key)
    if (known === undefined) found.set(key, { of, rows: [row] })
    else known.rows.push(row)
  }
  const listed = new Set<CompiledNumber>()
  for (const row of carNumbers) {
    const of = row.asRead.trim() === '' || !readOnCar.has(row.howRead) ? null : numberOf(row, numbers)
    if (of === null) continue
    listed.add(of)
    const { asRead, howRead, number, exhibits } = row
    const mark = rowMark('carNumbers', number)
    if (!aside.numbers.includes(number)) take(of, { asRead, howRead, mark, carNumber: number, partId: null, exhibits })
  }
  for (const entry of parts) {
    const { partId, numberAsRead: asRead, exhibits } = entry
    const of = asRead.trim() === '' || !learnedOnCar.has(entry.learned) ? null : numberOnPart(entry, numbers)
    if (of === null || listed.has(of) || aside.parts.includes(partId)) continue
    const mark = partDefinition(partId)?.[commission?.names ?? 'uk'] ?? partId
    take(of, { asRead, howRead: 'read on the part', mark, carNumber: null, partId, exhibits })
  }
  return [...found.values()]
}

/**
 * Every number of a record that some sheet can read, those that read alike once.
 * @param noted tells with a reading. One that travels with a donor says more than the number: it stands, and its marks are
 * passed over in the number; the number stands for the others, so that the same marks count once.
 */
export function numbersRead(
  rows: RowsWithNumbers,
  noted: ReadonlySet<string>,
  { numbers, model }: CompiledSheets,
): readonly NumberRead[] {
  const offDonors = new Set(
    (model?.tells ?? []).flatMap(({ id, reads }) => (reads.kind === 'part' && reads.donor !== null ? [id] : [])),
  )
  return foundIn(rows, numbers).map(({ of, rows: own }): NumberRead => {
    const [first] = own as [NumberRow]
    const careful = own.some(({ howRead }) => howRead !== 'from a photograph')
    const stands = (tell: string | null): boolean => tell !== null && noted.has(tell) && offDonors.has(tell)
    const likelihoods = numberLikelihood(
      first.asRead,
      of.number,
      of.classes.map(({ shares }) => shares.map((share, place) => (stands(of.readBy[place] ?? null) ? null : share))),
      careful ? 1 : PHOTOGRAPH_MISREAD,
    )
    return {
      id: `${of.key} ${first.mark}`,
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
