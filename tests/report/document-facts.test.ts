import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { beforeAll, describe, expect, test } from 'vitest'
import { type Composed, composed, has, outsideMargins, overlaps, printed, textOf, wordBoxes } from './composing.ts'
import { contentFixture, exhibitFixture, pictureFixture, recordFixture } from './content-fixture.ts'

let report: Composed
beforeAll(async () => {
  report = await composed(contentFixture(recordFixture()))
})

const poppler = has('pdftotext')

describe.runIf(poppler)('the file, as poppler reads it', () => {
  test('every font is embedded as a subset and can be copied from', () => {
    const rows = printed('pdffonts', report.path).trim().split('\n').slice(2)
    expect(rows.length).toBeGreaterThanOrEqual(4)
    for (const row of rows) expect(row).toMatch(/^WMARK[A-Z]\+Source\S+ +CID TrueType +Identity-H +yes yes yes/)
  })

  test('the structure has headings, tables with column heads, figures with alternatives', () => {
    const structure = printed('pdfinfo', '-struct', report.path)
    for (const type of ['Document', 'H1', 'H2', 'P', 'Table', 'TR', 'TH', 'TD', 'Figure', 'Caption', 'Link', 'LBody']) {
      expect(structure).toMatch(new RegExp(`^ *${type}\\b`, 'm'))
    }
    expect(structure).toContain('/Scope /Column')
  })

  test('every page carries title or number, and page n of N', () => {
    for (let page = 1; page <= report.pages; page++) {
      const text = printed('pdftotext', '-f', String(page), '-l', String(page), report.path, '-')
      expect(text).toContain('WM 26-0117-1, edition 1')
      expect(text).toContain(`page ${page} of ${report.pages}`)
      // Head, foot and something between them: no page is empty.
      expect(text.length).toBeGreaterThan(200)
    }
  })

  test('nothing stands outside the margins, on A4 and on Letter', async () => {
    const letter = await composed(contentFixture(recordFixture(), { paper: 'Letter' }))
    for (const path of [report.path, letter.path]) {
      expect(wordBoxes(path).flatMap(outsideMargins)).toEqual([])
    }
  })

  test('no two words lie on one another', () => {
    expect(wordBoxes(report.path).flatMap(overlaps)).toEqual([])
  })

  test('photographs are embedded byte for byte', async () => {
    printed('pdfimages', '-all', report.path, join(dirname(report.path), 'again'))
    const hash = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
    const handedIn = hash(await pictureFixture(1200, 800))
    const names = readdirSync(dirname(report.path)).filter((file) => file.startsWith('again'))
    expect(names.map((name) => hash(readFileSync(join(dirname(report.path), name))))).toEqual([
      handedIn,
      handedIn,
      handedIn,
    ])
  })

  test('the words are those of the screen: entries of the journal, their SHA-256, declared errors', () => {
    const text = textOf(report.path).replace(/\s+/g, ' ')
    expect(text).not.toMatch(/\bhash|journal row|row of its journal|as declared/i)
    expect(text).toContain('SHA-256 of entry 41 of the journal')
    expect(text).toMatch(/declared error 2\sµm \+ 3\s% of the reading/)
    expect(text).not.toContain('drawn to these')
  })

  test('dimensions of the record’s own car are listed', async () => {
    const record = recordFixture()
    const particulars = { ...record.particulars, dimensions: { lengthMm: 4254 } }
    const { path } = await composed(contentFixture({ ...record, particulars }))
    expect(textOf(path).replace(/\s+/g, ' ')).toMatch(
      /length 4\s254\smm; uncertainty not stated\. The plans are drawn to these/,
    )
  })

  test('a position is printed only where the client agreed', async () => {
    const record = recordFixture()
    expect(textOf(report.path)).not.toContain('51.12346')
    const agreed = await composed(
      contentFixture({ ...record, commission: { ...record.commission, positionsInReports: true } }),
    )
    expect(textOf(agreed.path).replace(/\s+/g, ' ')).toContain('51.12346')
  })
})

test.runIf(has('qpdf'))('qpdf finds no error', () => {
  expect(printed('qpdf', '--check', report.path)).toContain('No syntax or stream encoding errors found')
})

test.runIf(has('gs'))('ghostscript renders it without a warning', () => {
  printed(
    'gs',
    '-q',
    '-dNOPAUSE',
    '-dBATCH',
    '-dPDFSTOPONERROR',
    '-dPDFSTOPONWARNING',
    '-sDEVICE=nullpage',
    report.path,
  )
})

describe('the file, as pdf.js reads it', () => {
  test('bookmarks and links lead to pages that are there; labels count from 1', async () => {
    const document = await getDocument({ data: new Uint8Array(report.bytes), verbosity: 0 }).promise
    const outline = await document.getOutline()
    expect(outline.length).toBeGreaterThan(12)
    for (const item of outline.flatMap((entry) => [entry, ...entry.items])) {
      const [ref] = item.dest as [{ num: number; gen: number }]
      expect(await document.getPageIndex(ref)).toBeGreaterThanOrEqual(0)
    }
    expect((await document.getPageLabels())?.at(-1)).toBe(String(report.pages))
    const targets = new Map<string, Set<number>>()
    for (let number = 1; number <= document.numPages; number++) {
      const page = await document.getPage(number)
      for (const annotation of await page.getAnnotations()) {
        expect(annotation.contentsObj.str).not.toBe('')
        const to = (await document.getPageIndex(annotation.dest[0])) + 1
        const from = targets.get(annotation.contentsObj.str) ?? new Set()
        targets.set(annotation.contentsObj.str, from.add(to))
      }
    }
    // Plan to finding, finding to exhibit, exhibit back to finding, each to one place.
    for (const name of ['1 Left front wing', 'E\u202F1', 'F\u202F1', 'C\u202F1', 'K\u202F1']) {
      expect(targets.get(name)?.size, name).toBe(1)
    }
    await document.destroy()
  })

  test('every mark on a page belongs to the structure or is an artifact', async () => {
    const document = await getDocument({ data: new Uint8Array(report.bytes), verbosity: 0 }).promise
    for (let number = 1; number <= document.numPages; number++) {
      const page = await document.getPage(number)
      expect(await page.getStructTree(), `page ${number}`).not.toBeNull()
      const { items } = await page.getTextContent({ includeMarkedContent: true })
      let depth = 0
      for (const item of items) {
        if ('type' in item) depth += item.type.startsWith('begin') ? 1 : -1
        else if (item.str.trim() !== '') expect(depth, item.str).toBeGreaterThan(0)
      }
    }
    await document.destroy()
  })
})

test('a photograph without a rendering is named, not left out in silence', async () => {
  const record = recordFixture({ exhibits: [exhibitFixture(1)] })
  const { path } = await composed(contentFixture(record, { pictureSizes: async () => new Map() }))
  if (poppler) expect(textOf(path).replace(/\s+/g, ' ')).toMatch(/No report copy .*could be made of it/)
})
