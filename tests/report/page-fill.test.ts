import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Paper } from '../../shared-types/edition.ts'
import { composed } from './composing.ts'
import { contentFixture, exhibitFixture, recordFixture } from './content-fixture.ts'
import { demonstrationReport } from './demonstration-report.ts'
import { nearlyEmpty } from './nearly-empty.ts'
import { type Told, toldPages } from './told-pages.ts'

let scratch: string

beforeAll(async () => {
  scratch = await mkdtemp(join(tmpdir(), 'page-fill-'))
})
afterAll(() => rm(scratch, { recursive: true, force: true }))

const papers: readonly Paper[] = ['A4', 'Letter']

test.each(papers)(
  'the report on the demonstration car leaves no page nearly empty on %s',
  async (paper) => {
    const folder = await mkdtemp(join(scratch, 'record-'))
    const pages = await toldPages(await demonstrationReport(folder, paper))
    expect(pages.length).toBeGreaterThan(30)
    expect(nearlyEmpty(pages, paper)).toEqual([])
  },
  240_000,
)

test.each(papers)(
  'nor does that of a small record, of an empty one and of many exhibits on %s',
  async (paper) => {
    const empty = recordFixture({ findings: [], claims: [], corrections: [], exhibits: [], spots: [], parts: [] })
    const many = recordFixture({ exhibits: Array.from({ length: 60 }, (_, index) => exhibitFixture(index + 1)) })
    for (const [name, record] of Object.entries({ small: recordFixture(), empty, many })) {
      const pages = await toldPages((await composed(contentFixture(record, { paper }))).bytes)
      expect(pages.length, name).toBeGreaterThan(5)
      expect(nearlyEmpty(pages, paper), name).toEqual([])
    }
  },
  60_000,
)

test('a page with a few lines is noticed', () => {
  const line = (y: number): Told => ({ role: 'P', element: y, text: 'words', x: 60, y, size: 9 })
  const [full, few] = [[line(100)], [line(740), line(700)]]
  expect(nearlyEmpty([few, full, few, full, few], 'A4')).toEqual(['page 3: 0.10'])
})
