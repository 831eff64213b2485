import { describe, expect, test } from 'vitest'
import { composed, has, outsideMargins, overlaps, printed, wordBoxes } from './composing.ts'
import { contentFixture, exhibitFixture, findingFixture, recordFixture } from './content-fixture.ts'

const hostile = [
  '<script>alert(1)</script> & <b>bold</b>',
  ') Tj ET Q endstream endobj BT (injected) Tj',
  '=HYPERLINK("x") \\n /Type /Catalog %%EOF',
  'שלום עולם',
  'مرحبا',
  'turned \u202Eround',
  'smile \u{1F600} and \u{1F3CE}\uFE0F',
  'tab\there, bell \u0007, null \u0000',
  'line\r\nbreak\u2028and paragraph\u2029end',
  'lone \uD800 half',
].join('\n')
const unbroken = 'W'.repeat(400)

function hostileRecord() {
  const record = recordFixture()
  const line = hostile.replaceAll('\n', ' ').slice(0, 380)
  return recordFixture({
    particulars: { ...record.particulars, title: unbroken, history: hostile, colourNow: line },
    commission: {
      ...record.commission,
      recordNumber: 'N'.repeat(300),
      examiner: line,
      assumptions: unbroken,
      client: unbroken,
    },
    findings: [
      findingFixture(1, 'front-side.L', { note: hostile, suspectedCause: unbroken }),
      findingFixture(2, 'front-door.L', {
        note: 'long words follow one another here. '.repeat(2800).slice(0, 100_000),
      }),
    ],
    exhibits: [
      exhibitFixture(1, { caption: hostile, place: unbroken }),
      exhibitFixture(2, { caption: unbroken.repeat(20), madeBy: unbroken }),
    ],
    claims: record.claims.map((claim) => ({ ...claim, words: unbroken, who: unbroken, reasons: hostile })),
    carNumbers: record.carNumbers.map((row) => ({ ...row, asRead: unbroken, note: hostile })),
    parts: record.parts.map((row) => ({ ...row, numberAsRead: unbroken, note: hostile.repeat(5) })),
    corrections: record.corrections.map((row) => ({ ...row, what: unbroken })),
    consents: record.consents.map((row) => ({ ...row, done: hostile, by: unbroken })),
  })
}

describe.runIf(has('pdftotext'))('hostile words', async () => {
  const { path, pages } = await composed(contentFixture(hostileRecord()))

  test('come through readable and inert', () => {
    const text = printed('pdftotext', path, '-').replace(/\s+/g, ' ')
    expect(text).toContain('<script>alert(1)</script> & <b>bold</b>')
    expect(text).toContain(') Tj ET Q endstream endobj BT (injected) Tj')
    expect(text).toContain('[U+1F600]')
    expect(text).toContain('turned [U+202E]round')
    expect(text).toContain('bell [U+0007], null [U+0000]')
    expect(text).toContain('lone [U+D800] half')
    expect(text.match(/W/g)?.length).toBeGreaterThan(400 * 8)
  })

  test('all 100 000 characters of a note are printed', () => {
    const text = printed('pdftotext', path, '-')
    expect(text.match(/words\s+follow/g)?.length).toBeGreaterThanOrEqual(2776)
    expect(pages).toBeGreaterThan(25)
  })

  test('stay inside the margins and lie on nothing', () => {
    const pagesOfWords = wordBoxes(path)
    expect(pagesOfWords.flatMap(outsideMargins)).toEqual([])
    expect(pagesOfWords.flatMap(overlaps)).toEqual([])
  })

  test.runIf(has('qpdf'))('leave the file sound', () => {
    expect(printed('qpdf', '--check', path)).toContain('No syntax or stream encoding errors found')
  })
})
