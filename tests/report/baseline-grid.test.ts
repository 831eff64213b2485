import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { page } from '../../shared-types/tokens.ts'
import { demonstrationReport } from './demonstration-report.ts'
import { type Told, toldPages } from './told-pages.ts'

const MM_PER_POINT = 25.4 / 72
const A4_HEIGHT_MM = 297
/** Baseline of the first line of the text field, from the top of the sheet. */
const FIRST_BASELINE_MM = page.marginTopMm + 2.9
const MOST_OFF_MM = 0.05
/** Titles stand by their own measure, lettering of figures where the drawing needs it. */
const LARGEST_BODY_PT = 9.5

const isBody = ({ role, size }: Told): boolean => role !== 'Figure' && size < LARGEST_BODY_PT

const offGrid = ({ y }: Told): number => {
  const lines = (A4_HEIGHT_MM - y * MM_PER_POINT - FIRST_BASELINE_MM) / page.baselineMm
  return (lines - Math.round(lines)) * page.baselineMm
}

/** Lines of text, tables, captions and side heads that stand off the grid, with how far. */
const strays = (told: readonly Told[]): string[] =>
  told
    .filter((line) => isBody(line) && Math.abs(offGrid(line)) > MOST_OFF_MM)
    .map((line) => `${line.role} ${offGrid(line).toFixed(2)} mm: ${line.text.slice(0, 40)}`)

let scratch: string
let pages: Told[][]

beforeAll(async () => {
  scratch = await mkdtemp(join(tmpdir(), 'baseline-grid-'))
  pages = await toldPages(await demonstrationReport(scratch))
}, 240_000)

afterAll(() => rm(scratch, { recursive: true, force: true }))

test('text stands on the baseline grid on every page, whatever it follows', () => {
  expect(pages.length).toBeGreaterThan(30)
  for (const [index, told] of pages.entries()) {
    expect(told.filter(isBody).length, `page ${index + 1}`).toBeGreaterThan(0)
    expect(strays(told), `page ${index + 1}`).toEqual([])
  }
})

test('a line a tenth of a millimetre off the grid is noticed', () => {
  for (const told of pages) {
    const at = told.findIndex(isBody)
    const shifted = told.map((line, index) => (index === at ? { ...line, y: line.y + 0.1 / MM_PER_POINT } : line))
    expect(strays(shifted)).toHaveLength(1)
  }
})
