import { type RegisterName, registerKeys } from '../../shared-types/record.ts'
import { canonical } from './canonical.ts'
import type { Cell, Connection, Row, Step } from './connection.ts'
import { type Lying, registers, THE_ROW } from './registers.ts'

/** A row of any register; its exact shape is the contract's affair. */
export type AnyRow = Readonly<Record<string, unknown>>

const snake = (property: string) => property.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)
/** Column of a property, quoted, since some are words of SQL. */
export const column = (property: string) => `"${snake(property)}"`

const columnsOf = (register: RegisterName) => Object.entries<Lying>(registers[register].columns)
const keyColumn = (register: RegisterName) => column(registerKeys[register] ?? THE_ROW)

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

function decode(register: RegisterName, row: Row): AnyRow {
  return Object.fromEntries(
    columnsOf(register).map(([property, lying]) => [property, fromCell(row[snake(property)], lying)]),
  )
}

/** The row exactly as it will be read back: every property of the register, in its order, and no other. */
export function asStored(register: RegisterName, row: AnyRow): AnyRow {
  return JSON.parse(
    JSON.stringify(Object.fromEntries(columnsOf(register).map(([property]) => [property, row[property]]))),
  )
}

const upsertTexts = new Map<RegisterName, string>()
function upsertText(register: RegisterName): string {
  const kept = upsertTexts.get(register)
  if (kept) return kept
  const key = keyColumn(register)
  const names = columnsOf(register).map(([property]) => column(property))
  const all = registerKeys[register] === null ? [key, ...names] : names
  const updates = names.filter((name) => name !== key).map((name) => `${name} = excluded.${name}`)
  const text =
    `INSERT INTO ${registers[register].table} (${all.join(', ')}) VALUES (${all.map(() => '?').join(', ')}) ` +
    `ON CONFLICT (${key}) DO UPDATE SET ${updates.join(', ')}`
  upsertTexts.set(register, text)
  return text
}

/** The step that makes the table agree with one change; `after` null takes the row away. */
export function changeStep(register: RegisterName, key: string, after: AnyRow | null): Step {
  if (after === null) {
    return [`DELETE FROM ${registers[register].table} WHERE ${keyColumn(register)} = ?`, keyCell(register, key)]
  }
  const cells = columnsOf(register).map(([property, lying]) => toCell(after[property], lying))
  return [upsertText(register), ...(registerKeys[register] === null ? [1] : []), ...cells]
}

/** Every row of a register in key order. */
export async function readRegister(connection: Connection, register: RegisterName): Promise<readonly AnyRow[]> {
  const rows = await connection.all(`SELECT * FROM ${registers[register].table} ORDER BY ${keyColumn(register)}`)
  return rows.map((row) => decode(register, row))
}
