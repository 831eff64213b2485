import { describe, expect, test } from 'vitest'
import { MOST_SHEET_BYTES, readSheet } from '../../../electron/sheets/reference/read-sheet.ts'
import { problemText } from '../../../electron/sheets/reference/sheet-problem.ts'
import { bytesOf, sheetFrom, smallSheetText } from './small-sheets.ts'

const read = (text: string) => readSheet(bytesOf(text))
const words = (text: string) => read(text).problems.map(problemText)
const head = 'form: 1\nsheetId: teasel\ntitle: Teasel\nedition: "1"\n'

describe('a sheet as a file', () => {
  test('YAML and JSON of the same facts are the same sheet', () => {
    const sheet = sheetFrom(smallSheetText)
    expect(sheetFrom(JSON.stringify(sheet))).toEqual(sheet)
    expect(sheet.rules).toHaveLength(3)
  })

  test('lines of a problem are those of the text, in YAML and in JSON', () => {
    const text = `${head}variables:\n  - id: colour\n    name: Colour\n    values:\n      - {id: Red, name: Red}\n`
    expect(words(text)).toEqual([
      'line 9, variables[1].values[1].id: “Red” is not well formed. Small letters, figures and dashes, such as build-date.',
    ])
    const json = '{"form": 1,\n "sheetId": "teasel",\n "title": "Teasel",\n "edition": 3\n}'
    expect(words(json)).toEqual(['line 4, edition: 3 is read as a number. Put it in quotes: "3".'])
  })

  test('a key the form does not know is named with its line', () => {
    expect(words(`${head}varables: []\n`)).toEqual([
      'line 5, varables: The form knows no “varables” here. Correct the spelling, or take it out.',
    ])
  })

  test('what is missing is named', () => {
    expect(words('form: 1\nsheetId: teasel\ntitle: Teasel\n')).toEqual([
      'line 1, edition: It is missing. Add it; it is text.',
    ])
    const tell =
      '{id: roof, name: Roof, source: notes, lookAt: Look., effort: 1, follows: {kind: by cases, values: [], cases: []}}'
    const said = words(`${head}tells:\n  - ${tell}\n`).join(' ')
    expect(said).toMatch(/access: It is missing\. Write one of: from outside/)
    expect(said).toMatch(/Nothing is listed for it\. Give at least 2\./)
    expect(said).not.toMatch(/undefined|expected/)
  })
})

describe('files that are no sheet', () => {
  test('a newer form is refused as such, whatever else is new in it', () => {
    const newer = `form: 2\nsheetId: teasel\nsurprise: {a: [1]}\n`
    expect(words(newer)).toEqual([
      'line 1, form: It is written in form 2; this program reads form 1. Use a newer version of the program, or ask for the sheet in the older form.',
    ])
  })

  test('50 MB are refused before they are read', () => {
    const started = performance.now()
    const { sheet, problems } = readSheet(new Uint8Array(50_000_000).fill(32))
    expect(sheet).toBeNull()
    expect(problems[0]?.what).toContain('50 MB')
    expect(performance.now() - started).toBeLessThan(500)
    expect(MOST_SHEET_BYTES).toBeLessThan(50_000_000)
  })

  test('a variable with a million values is refused before it is taken apart', () => {
    const started = performance.now()
    const { sheet, problems } = read(`${head}variables: [{id: x, name: X, values: [${'a,'.repeat(1_000_000)}]}]`)
    expect(sheet).toBeNull()
    expect(problems[0]?.what).toContain('400000 entries')
    expect(performance.now() - started).toBeLessThan(1000)
  })

  test('a variable with six thousand values is refused with a cure', () => {
    const values = Array.from({ length: 6000 }, (_, at) => `      - {id: v${at}, name: V}`).join('\n')
    const [problem] = words(`${head}variables:\n  - id: x\n    name: X\n    values:\n${values}\n`)
    expect(problem).toContain('line 8, variables[1].values')
    expect(problem).toContain('group days into months')
  })

  test('anchors that multiply are refused', () => {
    const levels = Array.from({ length: 12 }, (_, at) => `b${at + 1}: &b${at + 1} [${`*b${at},`.repeat(9)}]`)
    const { sheet, problems } = read(`b0: &b0 [x]\n${levels.join('\n')}\n`)
    expect(sheet).toBeNull()
    expect(problems[0]?.what).toContain('anchors')
  })

  test('text that is not UTF-8, no YAML, a list, nothing at all', () => {
    expect(readSheet(Uint8Array.of(0xff, 0xfe, 0x41)).problems[0]?.what).toContain('UTF-8')
    expect(words('a: [1,\nb')[0]).toContain('line 2')
    expect(words('- 1')[0]).toContain('no reference sheet')
    expect(words('')[0]).toContain('no reference sheet')
    expect(words('a: 1\na: 2\n')[0]).toContain('line 2')
  })

  test('formulas, commands and tags stay text or are refused; nothing is carried out', () => {
    const formula = '=HYPERLINK("http://localhost/x";"y")'
    expect(sheetFrom(`${head}about: '${formula}'\n`).about).toBe(formula)
    expect(words(`${head}about: !!js/function 'x'\n`)[0]).toContain('line 5')
    expect(words(`${head}__proto__: {polluted: true}\n`)[0]).toContain('__proto__')
    expect(({} as Record<string, unknown>).polluted).toBeUndefined()
  })
})
