import fc from 'fast-check'
import { expect, test } from 'vitest'
import { pageGeometry } from '../../electron/report/layout/page-geometry.ts'
import type { Paper } from '../../shared-types/edition.ts'
import { composed } from './composing.ts'
import { contentFixture, exhibitFixture, findingFixture, recordFixture } from './content-fixture.ts'
import { nearlyEmpty } from './nearly-empty.ts'
import { type Told, toldPages } from './told-pages.ts'

const POINTS_PER_MM = 72 / 25.4
const PANELS = ['front-side.L', 'front-door.L', 'roof-skin', 'front-side.R']

const isHeading = ({ role }: Told): boolean => /^H[1-3]$/.test(role)

/** Headings of a page that nothing of theirs follows on it; the note under a side head is not yet what it announces. */
function loneHeadings(told: readonly Told[], mainLeft: number): string[] {
  return told.flatMap((heading, index) => {
    if (!isHeading(heading) || told[index - 1]?.element === heading.element) return []
    const rest = told.slice(index + 1)
    const next =
      heading.role === 'H1'
        ? -1
        : rest.findIndex((other) => isHeading(other) && other.element !== heading.element && other.role <= heading.role)
    const own = (next < 0 ? rest : rest.slice(0, next)).filter(
      (other) => !isHeading(other) && (other.x > mainLeft - 1 || /^T[HD]$|Caption|Figure/.test(other.role)),
    )
    return own.some(({ y }) => y < heading.y + 2) ? [] : [`${heading.role} ${heading.text}`]
  })
}

/** Heads of tables that no row follows on their page. */
function loneTableHeads(told: readonly Told[]): string[] {
  const last = told.findLast(({ role }) => role === 'TH' || role === 'TD')
  return last?.role === 'TH' ? [last.text] : []
}

const note = fc.integer({ min: 0, max: 90 }).map((words) => 'rust along the flange, '.repeat(words))
const generated = fc.record({
  paper: fc.constantFrom<Paper>('A4', 'Letter'),
  findings: fc.array(fc.tuple(fc.constantFrom(...PANELS), note), { minLength: 1, maxLength: 18 }),
  claims: fc.array(note, { maxLength: 7 }),
  corrections: fc.array(note, { maxLength: 12 }),
  captions: fc.array(note, { maxLength: 9 }),
})

test('no heading stands alone at the foot of a page and no page is nearly empty, whatever the record holds', async () => {
  let headings = 0
  await fc.assert(
    fc.asyncProperty(generated, async ({ paper, findings, claims, corrections, captions }) => {
      const record = recordFixture()
      const content = contentFixture(
        recordFixture({
          findings: findings.map(([panelId, words], index) => findingFixture(index + 1, panelId, { note: words })),
          claims: claims.flatMap((reasons, index) =>
            record.claims.map((claim) => ({ ...claim, number: index + 1, reasons })),
          ),
          corrections: corrections.flatMap((what, index) =>
            record.corrections.slice(0, 1).map((row) => ({ ...row, number: index + 1, what: `Weld. ${what}` })),
          ),
          exhibits: captions.map((caption, index) => exhibitFixture(index + 1, { caption })),
        }),
        { paper },
      )
      const mainLeft = pageGeometry(paper).mainLeftMm * POINTS_PER_MM
      const pages = await toldPages((await composed(content)).bytes)
      expect(nearlyEmpty(pages, paper)).toEqual([])
      for (const [index, told] of pages.entries()) {
        headings += told.filter(isHeading).length
        expect(loneHeadings(told, mainLeft), `page ${index + 1}`).toEqual([])
        expect(loneTableHeads(told), `page ${index + 1}`).toEqual([])
      }
    }),
    { numRuns: 12 },
  )
  expect(headings).toBeGreaterThan(12 * 30)
}, 120_000)

test('a heading alone is seen', () => {
  const line = (role: string, x: number, y: number): Told => ({ role, element: y, text: role, x, y, size: 9 })
  expect(loneHeadings([line('P', 180, 200), line('H2', 60, 100), line('P', 60, 90)], 180)).toEqual(['H2 H2'])
  expect(loneHeadings([line('H2', 60, 100), line('P', 180, 100), line('H2', 60, 80)], 180)).toEqual(['H2 H2'])
  expect(loneHeadings([line('H2', 60, 100), line('P', 60, 90), line('P', 180, 100)], 180)).toEqual([])
  expect(loneTableHeads([line('TD', 60, 100), line('TH', 60, 80)])).toEqual(['TH'])
})
