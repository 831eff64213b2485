import { execFileSync, spawnSync } from 'node:child_process'
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { asKept, changedSquares } from '../pages/picture-comparison.ts'
import { overlaps, wordBoxes } from './composing.ts'
import { demonstrationReport } from './demonstration-report.ts'

/**
 * Every page of the report on the demonstration car, looked at before it was kept. The record, the clock and the ids are
 * the same each time, so that the pages are; WITNESSMARK_RENEW_PICTURES=1 keeps them anew. Another poppler than the one
 * they were made with may shade letters otherwise: there the number of pages and their sizes are compared.
 */
const DOTS_PER_INCH = 64
const folder = join(import.meta.dirname, 'reference')
const renews = process.env.WITNESSMARK_RENEW_PICTURES === '1'
const about = spawnSync('pdftoppm', ['-v'], { encoding: 'utf8' })
const there = about.error === undefined
const version = there ? (about.stderr.split('\n')[0] ?? '') : ''
const versionFile = 'poppler.json'

let scratch: string
let pages: Buffer[]
let path: string

async function pagesOf(path: string): Promise<Buffer[]> {
  execFileSync('pdftoppm', ['-r', String(DOTS_PER_INCH), '-png', path, join(scratch, 'page')])
  const files = (await readdir(scratch)).filter((name) => /^page-\d+\.png$/.test(name)).sort()
  return Promise.all(files.map((name) => readFile(join(scratch, name))))
}

describe.skipIf(!there)('pages of the report on the demonstration car', () => {
  beforeAll(async () => {
    scratch = await mkdtemp(join(tmpdir(), 'page-pictures-'))
    path = join(scratch, 'report.pdf')
    await writeFile(path, await demonstrationReport(scratch))
    pages = await pagesOf(path)
  }, 240_000)

  afterAll(async () => {
    await rm(scratch, { recursive: true, force: true })
  })

  it('have no two words on one another', () => {
    expect(wordBoxes(path).flatMap(overlaps)).toEqual([])
  })

  it('are as they were reviewed', async () => {
    if (renews) {
      await rm(folder, { recursive: true, force: true })
      await mkdir(folder, { recursive: true })
      await writeFile(join(folder, versionFile), `${JSON.stringify({ version }, null, 2)}\n`)
      await Promise.all(
        pages.map(async (page, index) => writeFile(join(folder, nameOf(index)), await asKept(page, false))),
      )
    }
    const kept = (await readdir(folder)).filter((name) => name !== versionFile).sort()
    expect(kept).toEqual(pages.map((_, index) => nameOf(index)))
    const made: unknown = JSON.parse(await readFile(join(folder, versionFile), 'utf8'))
    const same = JSON.stringify(made) === JSON.stringify({ version })
    const changed = await Promise.all(
      pages.map(async (page, index) => {
        const squares = await changedSquares(await readFile(join(folder, nameOf(index))), page)
        // A page of another size is one square that differs wholly.
        return squares.filter(({ share }) => same || share === 1).map(({ x, y }) => `page ${index + 1} at ${x}, ${y}`)
      }),
    )
    expect(changed.flat()).toEqual([])
  }, 120_000)

  it('a line of text that is not there is noticed', async () => {
    const [first] = pages
    if (first === undefined) throw new Error('no page')
    const { width = 0 } = await sharp(first).metadata()
    const blank = await sharp({ create: { width: width - 80, height: 14, channels: 3, background: 'white' } })
      .png()
      .toBuffer()
    const without = await sharp(first)
      .composite([{ input: blank, left: 40, top: 104 }])
      .png()
      .toBuffer()
    const kept = await readFile(join(folder, nameOf(0)))
    expect((await changedSquares(kept, without)).length).toBeGreaterThan(0)
  })
})

const nameOf = (index: number): string => `page-${String(index + 1).padStart(2, '0')}.png`
