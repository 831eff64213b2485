import { Writable } from 'node:stream'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ObjectWriter } from '../../electron/report/document/object-writer.ts'
import { ReportDocument } from '../../electron/report/document/report-document.ts'
import { Flow, gap, type Piece } from '../../electron/report/layout/flow.ts'
import { pageGeometry } from '../../electron/report/layout/page-geometry.ts'
import { tablePieces } from '../../electron/report/layout/table.ts'
import { styles } from '../../electron/report/layout/text-style.ts'
import type { Paper } from '../../shared-types/edition.ts'

/** The tallest row that is never split. */
const TALLEST_ROW = 14
const LEAST_ROWS = 3

const generated = fc.record({
  paper: fc.constantFrom<Paper>('A4', 'Letter'),
  above: fc.integer({ min: 0, max: 62 }),
  heights: fc.array(fc.oneof({ weight: 6, arbitrary: fc.integer({ min: 1, max: 4 }) }, fc.nat({ max: TALLEST_ROW })), {
    minLength: 1,
    maxLength: 90,
    size: 'max',
  }),
})

/** On which page each row of a table begins that stands so many lines below the top of one. */
function pagesOfRows(
  { paper, above, heights }: { paper: Paper; above: number; heights: readonly number[] },
  alter: (pieces: readonly Piece[]) => readonly Piece[] = (pieces) => pieces,
): number[] {
  const geometry = pageGeometry(paper)
  const sink = new Writable({ write: (_chunk, _encoding, done) => done() })
  const document = new ReportDocument(new ObjectWriter(sink), geometry.widthMm, geometry.heightMm, true)
  const flow = new Flow(document, geometry, () => undefined)
  flow.line = Math.min(above, geometry.lines)
  const pieces = tablePieces(document, document.root, geometry.leftMm, {
    label: 'Table 1.',
    caption: [{ text: 'Rows of many heights.', style: styles.caption }],
    columns: [{ head: 'what', widthMm: 60 }],
    rows: heights.map((height, index) => ({
      anchors: [`row ${index}`],
      cells: [[{ text: Array.from({ length: Math.max(1, height) }, () => 'line').join('\n'), style: styles.cell }]],
    })),
  })
  flow.place([gap(1), ...alter(pieces)])
  flow.draw()
  return heights.map((_, index) => document.anchors.get(`row ${index}`)?.page ?? -1)
}

/** How many rows stand on each page, in order. */
function rowsByPage(pages: readonly number[]): number[] {
  const counts = new Map<number, number>()
  for (const page of pages) counts.set(page, (counts.get(page) ?? 0) + 1)
  return [...counts.values()]
}

const leftAlone = (counts: readonly number[]): boolean =>
  counts.length > 1 && ((counts[0] ?? 0) < LEAST_ROWS || (counts.at(-1) ?? 0) < LEAST_ROWS)

test('no table leaves fewer than three rows alone before or after a break', () => {
  let broken = 0
  fc.assert(
    fc.property(generated, (table) => {
      const pages = pagesOfRows(table)
      expect(pages).not.toContain(-1)
      const counts = rowsByPage(pages)
      if (counts.length > 1) broken += 1
      expect(leftAlone(counts), counts.join(', ')).toBe(false)
    }),
    { numRuns: 400 },
  )
  expect(broken).toBeGreaterThan(100)
})

test('rows that nothing holds together are seen to be left alone', () => {
  const loose = (pieces: readonly Piece[]) => pieces.map((piece) => ({ ...piece, keep: false }))
  // Long enough that the table must be broken, wherever it begins.
  const counts = Array.from({ length: 12 }, (_, more) =>
    rowsByPage(pagesOfRows({ paper: 'A4', above: 10, heights: Array.from({ length: 48 + more }, () => 1) }, loose)),
  )
  expect(counts.filter(leftAlone).length).toBeGreaterThan(0)
})
