import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { beforeAll, describe, expect, test } from 'vitest'
import { embeddingLevels, visualOrder } from '../../electron/report/document/bidirectional.ts'
import { type Composed, composed, has, outsideMargins, overlaps, printed, wordBoxes } from './composing.ts'
import { contentFixture, findingFixture, recordFixture } from './content-fixture.ts'

// Invented persons; ordinary words of the two languages.
const owner = 'נועה בת־אל'
const note = 'الباب الأيسر (الأمامي) مصبوغ، السماكة ٣١٢ ميكرون، مُرمَّم.'
const mixed = 'לוח 12 (שמאל) replaced, see 7'
const turned = 'Marie \u202Eeiram'
const persian = 'می\u200Cشود'

let report: Composed
beforeAll(async () => {
  const record = recordFixture()
  report = await composed(
    contentFixture(
      recordFixture({
        particulars: { ...record.particulars, title: `Sedge ${owner}` },
        commission: { ...record.commission, client: owner, otherUsers: turned, question: `${owner} \u2067?` },
        findings: [
          findingFixture(1, 'front-side.L', { note, suspectedCause: persian }),
          findingFixture(2, 'front-door.L', { note: mixed }),
        ],
        exhibits: record.exhibits.map((exhibit) => ({ ...exhibit, madeBy: owner })),
      }),
    ),
  )
})

/** Letters and figures alone, in the order a reader gives them; marks and signs are placed differently by each. */
const words = (text: string): string => (text.normalize('NFKC').match(/[\p{L}\p{N}]+/gu) ?? []).join(' ')

interface PlacedWord {
  readonly page: number
  readonly text: string
  readonly x: number
  readonly y: number
}

async function placedWords(bytes: Buffer): Promise<PlacedWord[]> {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise
  const found: PlacedWord[] = []
  for (let page = 1; page <= document.numPages; page++) {
    for (const item of (await (await document.getPage(page)).getTextContent()).items) {
      if ('str' in item) found.push({ page, text: item.str, x: item.transform[4], y: item.transform[5] })
    }
  }
  await document.destroy()
  return found
}

describe.runIf(has('pdftotext'))('text from right to left, as poppler reads it', () => {
  test('comes back as it was typed', () => {
    const text = words(printed('pdftotext', '-raw', report.path, '-'))
    expect(text).toContain(words(owner))
    expect(text).toContain(words('الباب الأيسر (الأمامي)'))
    expect(text).toContain(words('السماكة ٣١٢ ميكرون'))
    expect(text).toContain(words(mixed))
    expect(text).toContain('شود')
  })

  test('what was typed to turn the line round is spelled and turns nothing', () => {
    const text = printed('pdftotext', report.path, '-').replace(/\s+/g, ' ')
    expect(text).toContain('Marie [U+202E]eiram')
    expect(text).toContain('[U+2067]')
    expect(text).not.toMatch(/\[U\+0[56]/)
  })

  test('stays inside the margins and lies on nothing', () => {
    const pages = wordBoxes(report.path)
    expect(pages.flatMap(outsideMargins)).toEqual([])
    expect(pages.flatMap(overlaps)).toEqual([])
  })

  test('its faces are embedded as subsets', () => {
    const fonts = printed('pdffonts', report.path)
    expect(fonts).toMatch(/WMARK\w\+NotoSansHebrew-Regular +CID TrueType +Identity-H +yes yes yes/)
    expect(fonts).toMatch(/WMARK\w\+\S*Arabic\S* +CID TrueType +Identity-H +yes yes yes/)
  })
})

test('stands on the page from right to left, and the words around it from left to right', async () => {
  const found = await placedWords(report.bytes)
  const at = (text: string, from = 0): PlacedWord => {
    const word = found.slice(from).find((candidate) => candidate.text.includes(text))
    if (word === undefined) throw new Error(`${text} stands nowhere`)
    return word
  }
  const inOrder = (left: PlacedWord, right: PlacedWord) => {
    expect([left.page, left.y]).toEqual([right.page, right.y])
    expect(left.x).toBeLessThan(right.x)
  }
  inOrder(at('בת־אל'), at('נועה'))
  inOrder(at('ميكرون'), at('٣١٢'))
  inOrder(at('٣١٢'), at('السماكة'))
  inOrder(at('السماكة'), at('الباب'))
  // A sentence that begins in Hebrew is read from the right throughout, its English word too.
  inOrder(at('שמאל'), at('לוח'))
  inOrder(at('replaced'), at('שמאל'))
})

test.runIf(has('qpdf'))('leaves the file sound', () => {
  expect(printed('qpdf', '--check', report.path)).toContain('No syntax or stream encoding errors found')
})

test.runIf(has('gs'))('is drawn by ghostscript without a warning', () => {
  printed('gs', '-q', '-dNOPAUSE', '-dBATCH', '-dPDFSTOPONWARNING', '-sDEVICE=nullpage', report.path)
})

test('a report without such text carries no face for it', async () => {
  const { bytes } = await composed(contentFixture(recordFixture()))
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise
  await document.destroy()
  expect(bytes.toString('latin1')).not.toMatch(/Hebrew|Arabic/)
})

describe('the order of a line', () => {
  // UAX #9, revision 48, example of rule L2: levels 0 for "he said", 1 for the quotation, 2 for "car" within it.
  test('is the one of the standard', () => {
    expect(visualOrder([0, 1, 2, 1, 0])).toEqual([0, 3, 2, 1, 4])
    expect(visualOrder([1, 2, 2, 1])).toEqual([3, 1, 2, 0])
    expect(visualOrder([0, 0])).toEqual([0, 1])
  })

  test('figures after a right-to-left word keep their own direction', () => {
    expect([...embeddingLevels('אב 12')]).toEqual([1, 1, 1, 2, 2])
  })
})
