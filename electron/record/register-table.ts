import { type RegisterName, registerKeys } from '../../shared-types/record.ts'
import { canonical } from './canonical.ts'
import type { Cell, Connection, Step } from './connection.ts'
import type { Lying } from './register.ts'
import { registerNames, registers, THE_ROW } from './registers.ts'

/** A row of any register; its exact shape is the contract's affair. */
export type AnyRow = Readonly<Record<string, unknown>>

const snake = (property: string) => property.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)
/** Column of a property, quoted, since some are words of SQL. */
export const column = (property: string) => `"${snake(property)}"`

/** What is worked out once for each register, out of its description. */
interface Table {
  readonly columns: readonly { readonly property: string; readonly name: string; readonly lying: Lying }[]
  readonly select: string
  readonly remove: string
  readonly put: string
}

function tableOf(register: RegisterName): Table {
  const { table, columns } = registers[register]
  const key = column(registerKeys[register] ?? THE_ROW)
  const described = Object.entries<Lying>(columns)
  const names = described.map(([property]) => column(property))
  const all = names.includes(key) ? names : [key, ...names]
  const updates = names.filter((name) => name !== key).map((name) => `${name} = excluded.${name}`)
  return {
    columns: described.map(([property, lying]) => ({ property, name: snake(property), lying })),
    select: `SELECT * FROM ${table} ORDER BY ${key}`,
    remove: `DELETE FROM ${table} WHERE ${key} = ?`,
    put:
      `INSERT INTO ${table} (${all.join(', ')}) VALUES (${all.map(() => '?').join(', ')}) ` +
      `ON CONFLICT (${key}) DO UPDATE SET ${updates.join(', ')}`,
  }
}

const tables = Object.fromEntries(registerNames.map((register) => [register, tableOf(register)])) as {
  readonly [R in RegisterName]: Table
}

/** The key of a row, as the journal writes it. */
export function keyOf(register: RegisterName, row: AnyRow): string {
  const property = registerKeys[register]
  return property === null ? THE_ROW : String(row[property])
}

function keyCell(register: RegisterName, key: string): Cell {
  const property = registerKeys[register]
  if (property === null) return 1
  return property === 'number' ? Number(key) : key
}

function toCell(value: unknown, lying: Lying): Cell {
  if (value === null) return null
  if (lying === 'flag') return value ? 1 : 0
  return lying === 'list' ? canonical(value) : (value as Cell)
}

function fromCell(cell: Cell | undefined, lying: Lying): unknown {
  if (cell === null || cell === undefined) return null
  if (lying === 'flag') return cell === 1
  return lying === 'list' ? JSON.parse(String(cell)) : cell
}

/**
 * A row of the journal as it is read now: a property that was not kept yet when it was written says what
 * `registers.ts` gives for it. In the order of the canonical text, so that two readings can be compared.
 */
export function asRead(register: RegisterName, row: AnyRow): AnyRow {
  const readsAs: AnyRow = registers[register].readsAs ?? {}
  if (Object.keys(readsAs).every((property) => property in row)) return row
  const whole: AnyRow = { ...readsAs, ...row }
  return Object.fromEntries(
    Object.keys(whole)
      .sort()
      .map((property) => [property, whole[property]]),
  )
}

/** The row exactly as it will be read back: every property of the register, in its order, and no other. */
export function asStored(register: RegisterName, row: AnyRow): AnyRow {
  const properties = tables[register].columns.map(({ property }) => [property, row[property] ?? null])
  return JSON.parse(JSON.stringify(Object.fromEntries(properties)))
}

/** The step that makes the table agree with one change; `after` null takes the row away. */
export function changeStep(register: RegisterName, key: string, after: AnyRow | null): Step {
  const { columns, put, remove } = tables[register]
  if (after === null) return [remove, keyCell(register, key)]
  const cells = columns.map(({ property, lying }) => toCell(after[property], lying))
  return [put, ...(registerKeys[register] === null ? [1] : []), ...cells]
}

/** Every row of a register in key order. */
export async function readRegister(connection: Connection, register: RegisterName): Promise<readonly AnyRow[]> {
  const { columns, select } = tables[register]
  return (await connection.all(select)).map((row) => {
    const read: Record<string, unknown> = {}
    for (const { property, name, lying } of columns) read[property] = fromCell(row[name], lying)
    return read
  })
}
