import type { ColumnMapping, ColumnRole } from '../../../shared-types/coating-import.ts'
import { coatingFigure } from '../../../shared-types/coating-measures.ts'
import type { ReadingValue } from '../../../shared-types/reading.ts'
import { type CoatingUnit, MM_PER_INCH, MOST_COATING_UM, UM_PER_MIL } from '../../../shared-types/units.ts'

/** A line read: values in their order and its place from the panel's left and upper edge, mm; or why it is refused. */
export type ReadLine =
  | {
      readonly values: readonly ReadingValue[]
      readonly where: string
      readonly fromEdgesMm: { x: number; y: number } | null
    }
  | { readonly refused: string }

const MOST_VALUES = 10
const MM_PER = { mm: 1, cm: 10, in: MM_PER_INCH } as const

/** How the text is most likely meant: what stands between its columns, which sign divides decimals, and what the columns hold. */
export function guessedMapping(lines: readonly string[]): ColumnMapping {
  const first = lines.slice(0, 20)
  const inEach = (sign: string) => first.length > 0 && first.every((line) => line.includes(sign))
  const separator = inEach('\t')
    ? 'tab'
    : inEach(';')
      ? 'semicolon'
      : spaced(first) || !inEach(',')
        ? 'spaces'
        : 'comma'
  const decimal = separator !== 'comma' && first.some((line) => /\d,\d/.test(line)) ? 'comma' : 'point'
  const cells = first.map((line) => roughCells(line, separator))
  const [heads = []] = cells
  const headed = heads.some((cell) => /\p{L}{2,}/u.test(cell) || /^[xyuv]\b/i.test(cell)) && !heads.some(isNumber)
  const columns = heads.map((head, at): ColumnRole => {
    const named = headed ? roleNamed(head) : null
    if (named !== null) return named
    return cells.slice(headed ? 1 : 0).some((row) => isNumber(row[at] ?? '')) ? 'reading' : 'left out'
  })
  const unit: CoatingUnit = heads.some((head) => /\bmils?\b/i.test(head)) ? 'mil' : 'µm'
  return {
    separator,
    decimal,
    headed,
    columns: columns.length === 0 ? ['reading'] : columns.slice(0, 40),
    unit,
    placeUnit: 'mm',
  }
}

/** Cells parted by spaces, in which a comma divides decimals. */
const spaced = (lines: readonly string[]): boolean =>
  lines.every(
    (line) => !line.includes(', ') && /\S\s+\S/.test(line.trim()) && roughCells(line, 'spaces').every(isNumber),
  )

const isNumber = (cell: string): boolean => /^[>+-]?\d+([.,]\d+)?$/.test(cell.trim())

function roughCells(line: string, separator: ColumnMapping['separator']): string[] {
  const sign = { tab: '\t', semicolon: ';', comma: ',', spaces: /\s+/ }[separator]
  return line
    .trim()
    .split(sign)
    .map((cell) => cell.trim())
}

function roleNamed(head: string): ColumnRole | null {
  if (/^(x|u|across)\b/i.test(head)) return 'across'
  if (/^(y|v|down)\b/i.test(head)) return 'down'
  if (/where|place|position|panel/i.test(head)) return 'where'
  if (/^(no|nr|number|spot|#|line|time|date|mean|average)/i.test(head)) return 'left out'
  return null
}

/** Reads the cells of one line by the mapping. Nothing is guessed: a cell that is no number refuses its line with what to do. */
export function readLine(cells: readonly string[], mapping: ColumnMapping): ReadLine {
  const { columns } = mapping
  if (cells.length !== columns.length)
    return {
      refused: `${cells.length} ${cells.length === 1 ? 'column' : 'columns'} where ${columns.length} were expected${mapping.separator === 'comma' ? '; a decimal comma is also taken for the sign between columns' : ''}`,
    }
  const values: ReadingValue[] = []
  const place: { across: number | null; down: number | null } = { across: null, down: null }
  let where = ''
  for (const [at, role] of columns.entries()) {
    const cell = (cells[at] ?? '').trim()
    if (role === 'where') where = cell.slice(0, 200)
    if (role === 'across' || role === 'down') {
      const number = numberOf(cell, mapping.decimal)
      if (number === null) return { refused: notANumber(cell, mapping.decimal) }
      place[role] = number * MM_PER[mapping.placeUnit]
    }
    if (role !== 'reading' || cell === '') continue
    const read = readingOf(cell, mapping)
    if ('refused' in read) return read
    values.push(read)
  }
  if (values.length === 0) return { refused: 'no reading in this line' }
  if (values.length > MOST_VALUES)
    return { refused: `${values.length} values, and a spot takes ${MOST_VALUES} at most: part it into spots` }
  const { across, down } = place
  return { values, where, fromEdgesMm: across === null || down === null ? null : { x: across, y: down } }
}

function readingOf(cell: string, { decimal, unit }: ColumnMapping): ReadingValue | { refused: string } {
  if (/^([-–—x]|no reading|n\/?a)$/iu.test(cell)) return { kind: 'no reading' }
  const match = /^(>?)\s*(.*?)\s*(µm|μm|um|mils?|mm)?$/iu.exec(cell)
  const own = match?.[3]?.toLowerCase()
  if (own !== undefined && own.startsWith('mil') !== (unit === 'mil'))
    return { refused: `“${cell}” names another unit than ${unit}, as the other lines are read: bring all to one unit` }
  if (own === 'mm') return { refused: `“${cell}” is in millimetres: readings are in ${unit}` }
  const number = numberOf(match?.[2] ?? '', decimal)
  if (number === null) return { refused: notANumber(cell, decimal) }
  if (number < 0) return { refused: `“${cell}” is less than nothing: a coating has no negative thickness` }
  const um = unit === 'mil' ? number * UM_PER_MIL : number
  if (um > MOST_COATING_UM)
    return {
      refused: `“${cell}” is more than any coating (${coatingFigure(MOST_COATING_UM, unit)} ${unit}): look at the unit`,
    }
  return { kind: match?.[1] === '>' ? 'more than' : 'value', um }
}

/** A plain decimal number in the sign chosen; null for anything else, the other sign included. */
function numberOf(text: string, decimal: ColumnMapping['decimal']): number | null {
  const shape = decimal === 'comma' ? /^[+-]?\d+(,\d+)?(e[+-]?\d+)?$/i : /^[+-]?\d+(\.\d+)?(e[+-]?\d+)?$/i
  return shape.test(text) ? Number(text.replace(',', '.')) : null
}

function notANumber(cell: string, decimal: ColumnMapping['decimal']): string {
  const other = decimal === 'comma' ? 'point' : 'comma'
  if (numberOf(cell.replace('>', ''), other) !== null)
    return `“${cell}” has a decimal ${other}, and a decimal ${decimal} is chosen`
  return cell === ''
    ? 'an empty cell where a number should stand'
    : `“${cell.slice(0, 40)}” is no number; a dash stands for no reading`
}
