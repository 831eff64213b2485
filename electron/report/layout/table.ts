import { printedRules } from '../../../shared-types/tokens.ts'
import type { ReportDocument } from '../document/report-document.ts'
import type { StructureElement } from '../document/structure-tree.ts'
import type { Piece } from './flow.ts'
import { breakLines, type Rich, type Span, type TextLine } from './line-breaking.ts'
import { BASELINE_MM, LINE_MM } from './page-geometry.ts'
import { type Align, drawLine, textPieces } from './text-block.ts'
import { inks, styles } from './text-style.ts'

export interface Column {
  readonly head: string
  readonly widthMm: number
  readonly align?: Align
}
export interface Row {
  readonly cells: readonly Rich[]
  /** Named places at this row. */
  readonly anchors?: readonly string[]
}
export interface TableContent {
  /** "Table 3." */
  readonly label: string
  readonly caption: Rich
  readonly columns: readonly Column[]
  readonly rows: readonly Row[]
  /** Runs on from a table of the same label: caption says so. */
  readonly continued?: boolean
}

const GUTTER_MM = 2
/** Rows up to this height are never split. */
const MOST_LINES_KEPT = 14
/** Rows that stand together at least, before and after a break: three of the tallest kept whole fit on either paper. */
export const ROWS_TOGETHER = 3

/** A side head and its note, and a line free, before a table over the whole field begins. */
export const LINES_BESIDE_HEAD = 3

/** Text that stays with the table below it. */
export const keptTogether = (pieces: readonly Piece[]): Piece[] => pieces.map((piece) => ({ ...piece, keep: true }))

interface Cell {
  readonly lines: readonly TextLine[]
  readonly leftMm: number
  readonly widthMm: number
  readonly align: Align
  readonly owner: StructureElement | 'artifact'
}

/** Lines of a table's caption and heads. */
export const tableHeadLines = ({ label, caption }: Pick<TableContent, 'label' | 'caption'>, widthMm: number): number =>
  breakLines([labelSpan(label), ...caption], widthMm).length + 1

const labelSpan = (label: string): Span => ({ text: `${label} `, style: styles.captionStrong })

/** Lines a row takes. */
export const rowLines = (columns: readonly Column[], { cells }: Pick<Row, 'cells'>): number =>
  Math.max(1, ...columns.map((_, index) => breakLines(cells[index] ?? [], ownWidth(columns, index)).length))

/** Width a cell may fill: the gutter stands to its right, but for the last. */
const ownWidth = (columns: readonly Column[], index: number): number =>
  (columns[index]?.widthMm ?? 0) - (index === columns.length - 1 ? 0 : GUTTER_MM)

/**
 * A table as pieces: caption above, heads with column scope, rows split only when taller than a fifth of a page; three
 * rows at least stand together on either side of a break, and a table of fewer than six is not broken. A table that
 * runs on repeats caption and heads with "continued"; the repetition is an artifact, not read twice.
 */
export function tablePieces(
  document: ReportDocument,
  parent: StructureElement,
  leftMm: number,
  table: TableContent,
): Piece[] {
  const element = parent.add('Table')
  const width = table.columns.reduce((sum, column) => sum + column.widthMm, 0)
  const rule = (weightMm: number, colour: string) => (page: Parameters<Piece['draw']>[0], y: number) => {
    page.belongTo('artifact')
    page.line(leftMm, y, leftMm + width, y, { weightMm, colour })
  }
  const heads = (owner: StructureElement | 'artifact', continued: boolean): Piece[] => {
    const end = continued ? [{ text: ' Continued.', style: styles.tableHead }] : []
    const caption = textPieces(document, [labelSpan(table.label), ...table.caption, ...end], {
      leftMm,
      widthMm: width,
      owner: owner === 'artifact' ? owner : owner.add('Caption'),
    }).map((piece) => ({ ...piece, keep: true }))
    if (table.columns.every(({ head }) => head === '')) return [...caption, foot()].map((p) => ({ ...p, keep: true }))
    const row = owner === 'artifact' ? owner : owner.add('TR')
    const cells = makeCells(
      table.columns.map(({ head }) => [{ text: head, style: styles.tableHead }]),
      row,
      'TH',
    )
    return [
      ...caption,
      ...rowPieces(cells, rule(printedRules.tableEnd, inks.ink), []).map((piece) => ({ ...piece, keep: true })),
    ]
  }
  const makeCells = (cells: readonly Rich[], row: StructureElement | 'artifact', kind: 'TH' | 'TD'): Cell[] => {
    let at = leftMm
    return table.columns.map((column, index) => {
      const own = ownWidth(table.columns, index)
      const cell = {
        lines: breakLines(cells[index] ?? [], own),
        leftMm: at,
        widthMm: own,
        align: column.align ?? 'left',
        owner: row === 'artifact' ? row : row.add(kind, kind === 'TH' ? { scope: 'Column' } : {}),
      }
      at += column.widthMm
      return cell
    })
  }
  const rowPieces = (
    cells: readonly Cell[],
    above: (page: Parameters<Piece['draw']>[0], y: number) => void,
    anchors: readonly string[],
  ): Piece[] => {
    const height = Math.max(1, ...cells.map((cell) => cell.lines.length))
    const slice = (from: number, to: number): Piece => ({
      lines: to - from,
      draw: (page, topMm) => {
        if (from === 0) {
          above(page, topMm)
          for (const anchor of anchors) document.anchor(anchor, page, topMm)
        }
        for (const cell of cells) {
          cell.lines.slice(from, to).forEach((line, index) => {
            const left = cell.align === 'right' ? cell.leftMm + cell.widthMm - line.width : cell.leftMm
            drawLine(document, page, line, left, topMm + index * LINE_MM + BASELINE_MM, cell.owner)
          })
        }
      },
    })
    if (height <= MOST_LINES_KEPT) return [slice(0, height)]
    return Array.from({ length: height }, (_, line) => ({
      ...slice(line, line + 1),
      keep: line === 0 || line === height - 2,
    }))
  }
  const foot = (): Piece => ({ lines: 0, draw: (page, topMm) => rule(printedRules.tableEnd, inks.ink)(page, topMm) })
  const again = () => heads('artifact', true)
  // Before the rows, so that caption and heads are also read before them.
  const opening = heads(element, table.continued === true)
  const rows = table.rows.map(({ cells, anchors }, index) => {
    const above = index === 0 ? rule(printedRules.tableHead, inks.ink) : rule(printedRules.tableRow, inks.hair)
    const pieces = rowPieces(makeCells(cells, element.add('TR'), 'TD'), above, anchors ?? [])
    return pieces.map((piece) => ({ ...piece, onBreak: again }))
  })
  return [...opening, ...rowsTogether(rows).flat(), foot()]
}

/** Holds the first rows together, and the last ones with the rule below them. A row taller than the limit may split. */
function rowsTogether(rows: readonly (readonly Piece[])[]): readonly (readonly Piece[])[] {
  const endsAt = rows.length - ROWS_TOGETHER
  return rows.map((row, index) => {
    const heldToNext = index < ROWS_TOGETHER - 1 || index >= endsAt
    return row.map((piece, at) => (at === row.length - 1 && heldToNext ? { ...piece, keep: true } : piece))
  })
}
