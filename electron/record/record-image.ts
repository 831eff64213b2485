import { type RecordView, type RegisterName, registerKeys, type UndoState } from '../../shared-types/record.ts'
import type { Connection } from './connection.ts'
import type { JournalledChange } from './journal.ts'
import { type AnyRow, asStored, readRegister } from './register-table.ts'
import { registerNames, THE_ROW } from './registers.ts'

type Rows = { readonly [R in RegisterName]: readonly AnyRow[] }

/** What a view carries beside its rows. */
export interface ViewFrame {
  readonly path: string
  readonly readOnly: boolean
  readonly journalNumber: number
  readonly journalHash: string
  readonly undoState: UndoState
}

/** Place of a key in a register kept in key order: where it is, or where it belongs. */
function placeOf(register: RegisterName, rows: readonly AnyRow[], key: string): { at: number; found: boolean } {
  const property = registerKeys[register]
  if (property === null) return { at: 0, found: rows.length > 0 && key === THE_ROW }
  const wanted = property === 'number' ? Number(key) : key
  let low = 0
  let high = rows.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((rows[middle]?.[property] as number | string) < wanted) low = middle + 1
    else high = middle
  }
  return { at: low, found: rows[low]?.[property] === wanted }
}

/** The registers in memory: immutable, kept in step with the tables one command at a time. */
export class RecordImage {
  readonly #rows: Rows

  private constructor(rows: Rows) {
    this.#rows = rows
  }

  static empty(): RecordImage {
    return new RecordImage(Object.fromEntries(registerNames.map((register) => [register, []])) as unknown as Rows)
  }

  static async read(connection: Connection): Promise<RecordImage> {
    const rows: [RegisterName, readonly AnyRow[]][] = []
    for (const register of registerNames) rows.push([register, await readRegister(connection, register)])
    return new RecordImage(Object.fromEntries(rows) as Rows)
  }

  row(register: RegisterName, key: string): AnyRow | null {
    const { at, found } = placeOf(register, this.#rows[register], key)
    return found ? (this.#rows[register][at] ?? null) : null
  }

  with(changes: readonly Pick<JournalledChange, 'register' | 'key' | 'after'>[]): RecordImage {
    const rows: { [R in RegisterName]: readonly AnyRow[] } = { ...this.#rows }
    for (const { register, key, after } of changes) {
      const { at, found } = placeOf(register, rows[register], key)
      rows[register] = rows[register].toSpliced(at, found ? 1 : 0, ...(after ? [asStored(register, after)] : []))
    }
    return new RecordImage(rows)
  }

  /** The rows as the contract types them: `register-table.ts` reads and writes every property of each register. */
  view(frame: ViewFrame): RecordView {
    const { particulars, commission, ...lists } = this.#rows
    return { ...frame, ...lists, particulars: particulars[0], commission: commission[0] } as unknown as RecordView
  }
}
