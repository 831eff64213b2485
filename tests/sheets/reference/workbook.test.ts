import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { strToU8, zipSync } from 'fflate'
import { readXlsx, writeXlsx } from 'hucre'
import { describe, expect, it } from 'vitest'
import { resourcePath } from '../../../electron/places-on-disk.ts'
import { readDraft, tablesDraft } from '../../../electron/sheets/reference/draft-sheet.ts'
import { readSheet } from '../../../electron/sheets/reference/read-sheet.ts'
import { headingsOf } from '../../../electron/sheets/reference/sheet-tables.ts'
import { rowsOfWorkbook, workbookOf } from '../../../electron/sheets/reference/sheet-workbook.ts'
import { dayOfSerial } from '../../../electron/sheets/reference/workbook/cell-values.ts'
import { readWorkbook } from '../../../electron/sheets/reference/workbook/read-workbook.ts'
import { workbookParts } from '../../../electron/sheets/reference/workbook/workbook-parts.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { anySheet } from './random-sheets.ts'

type Faults = { table: string; line: number | null; what: string; cure: string }[]

function brought(bytes: Uint8Array): { draft: ReturnType<typeof tablesDraft>; faults: Faults } {
  const faults: Faults = []
  const rows = rowsOfWorkbook(bytes, (table, line, what, cure) => faults.push({ table, line, what, cure }))
  const tables = Object.fromEntries(
    [...rows].map(([name, own]) => [
      name,
      own.map(({ cells }) => headingsOf(name).map((heading) => cells.get(heading) ?? '')),
    ]),
  )
  return { draft: { written: 'as tables', tables }, faults }
}

function throughWorkbook(sheet: ReferenceSheet): unknown {
  const { draft, faults } = brought(workbookOf(tablesDraft(sheet)))
  return faults.length > 0 ? faults : readDraft(draft).sheet
}

const shipped = (name: string): ReferenceSheet => {
  const { sheet } = readSheet(readFileSync(resourcePath('reference-sheets', name)))
  if (sheet === null) throw new Error(`${name} cannot be read.`)
  return sheet
}
/** Characters XML 1.0 has no place for; no spreadsheet can hold them. */
const inXml = (sheet: ReferenceSheet) =>
  !/\\u00(?!0[9ad])[01][0-9a-f]|\\ud[89a-f]|[\ufffe\uffff]/i.test(JSON.stringify(sheet))

describe('a reference sheet as a workbook', () => {
  it('carries any sheet there and back without loss', () => {
    fc.assert(
      fc.property(anySheet.filter(inXml), (sheet) => {
        expect(throughWorkbook(sheet)).toEqual(sheet)
      }),
      { numRuns: 60 },
    )
  })

  it.each(['sedge.yaml', 'worked-example/osier.yaml'])('carries %s there and back without loss', (name) => {
    const sheet = shipped(name)
    expect(throughWorkbook(sheet)).toEqual(sheet)
  })

  // Outside judge: hucre 1.0.0, a library that reads and writes such workbooks (MIT).
  it('says the same to another reader of workbooks', async () => {
    const draft = tablesDraft(shipped('sedge.yaml'))
    const book = await readXlsx(workbookOf(draft))
    expect(book.sheets.map(({ name }) => name)).toContain('number-places')
    for (const name of ['values', 'rules', 'tells', 'number-places']) {
      const own = book.sheets.find((sheet) => sheet.name === name)
      const found = (own?.rows ?? []).map((row) => headingsOf(name).map((_, at) => String(row[at] ?? '')))
      expect(found, name).toEqual([headingsOf(name), ...(draft.tables[name] ?? [])])
    }
  })

  it('reads what another writer of workbooks wrote: days, figures, yes and no, nothing', async () => {
    const rows = [
      ['id', 'day', 'share', 'optional', 'none', 'text'],
      ['a', new Date(Date.UTC(1958, 2, 1)), 0.1 + 0.2, true, null, ' <&> “ü” \u{1f600}\nnext'],
      ['b', new Date(Date.UTC(1900, 0, 15)), -2641, false, null, "'quoted"],
    ]
    const [table] = readWorkbook(await writeXlsx({ sheets: [{ name: 'any', rows }] }))
    expect(table?.rows.get(2)?.map((cell) => cell ?? '')).toEqual([
      'a',
      '1958-03-01',
      '0.3',
      'yes',
      '',
      ' <&> “ü” \u{1f600}\nnext',
    ])
    expect(table?.rows.get(3)?.map((cell) => cell ?? '')).toEqual(['b', '1900-01-15', '-2641', 'no', '', "'quoted"])
  })

  it('counts days as both kinds of workbook do', () => {
    // ECMA-376 part 1, 18.17.4.1: serial 1 is 1 January 1900, 61 is 1 March 1900; from 1904, serial 0 is 1 January 1904.
    expect(dayOfSerial(1, 'from1900')).toBe('1900-01-01')
    expect(dayOfSerial(61, 'from1900')).toBe('1900-03-01')
    expect(dayOfSerial(38_718, 'from1900')).toBe('2006-01-01')
    expect(dayOfSerial(37_256, 'from1904')).toBe('2006-01-01')
  })

  it('has an example in every empty table, which is passed over', () => {
    const { sheet } = readSheet(
      strToU8(
        'form: 1\nsheetId: new\ntitle: New\nedition: "1"\nvariables: [{id: a, name: A, values: [{id: b, name: B}]}]\n',
      ),
    )
    if (sheet === null) throw new Error('The sheet cannot be read.')
    const bytes = workbookOf(tablesDraft(sheet))
    const tells = readWorkbook(bytes).find(({ name }) => name === 'tells')
    expect(tells?.rows.get(2)?.[0]).toBe('# bulkhead-bracket')
    expect(brought(bytes).draft.tables.tells).toEqual([])
    expect(throughWorkbook(sheet)).toEqual(sheet)
  })
})

describe('what no workbook may bring', () => {
  it('a formula is refused by its cell, with the cure', async () => {
    const cells = new Map([['2,2', { formula: '1+1', formulaResult: 2 }]])
    const rows = [
      ['variable', 'id', 'name'],
      ['body', 'open', 'open'],
      ['body', 'closed', 'x'],
    ]
    const { faults } = brought(await writeXlsx({ sheets: [{ name: 'values', rows, cells }] }))
    expect(faults).toEqual([
      {
        table: 'values',
        line: 3,
        what: 'Cell C3 holds a formula.',
        cure: 'Put its value in its place: copy, paste the value.',
      },
    ])
  })

  it('a tab that is no table, and a column nothing asks for, are told with what there is', async () => {
    const other = await writeXlsx({
      sheets: [
        { name: 'tels', rows: [['id'], ['a']] },
        { name: 'Sheet2', rows: [] },
      ],
    })
    expect(brought(other).faults).toMatchObject([{ table: 'tels', what: 'There is no table of this name.' }])
    const column = await writeXlsx({
      sheets: [
        {
          name: 'rules',
          rows: [
            ['id', 'sort'],
            ['a', 'b'],
          ],
        },
      ],
    })
    expect(brought(column).faults).toMatchObject([
      { table: 'rules', line: 1, what: 'It has no use for the column “sort”.' },
    ])
  })

  it('fifty megabytes, a bomb, a lying bomb, a damaged file and another zip are refused before they are expanded', () => {
    const bomb = zipSync({ 'xl/workbook.xml': new Uint8Array(100 * 1024 * 1024) }, { level: 9 })
    expect(bomb.byteLength).toBeLessThan(200_000)
    const lying = bomb.slice()
    const view = new DataView(lying.buffer)
    // Uncompressed size in the local header (offset 22) and in the central directory (APPNOTE 4.3.7, 4.3.12).
    view.setUint32(22, 1000, true)
    const central = view.getUint32(lying.byteLength - 6, true)
    view.setUint32(central + 24, 1000, true)
    const before = process.memoryUsage().arrayBuffers
    for (const [bytes, what] of [
      [new Uint8Array(50_000_000).fill(0x50), /50 MB long/],
      [bomb, /more than 64 MiB/],
      [lying, /damaged|no workbook/],
      [bomb.subarray(0, 5000), /damaged/],
      [zipSync({ 'a.txt': strToU8('a') }), /no workbook/],
      [zipSync({ 'xl/workbook.xml': strToU8('<workbook><sheets>') }), /damaged/],
    ] as const)
      expect(() => readWorkbook(bytes)).toThrow(what)
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(120 * 1024 * 1024)
    expect(workbookParts(zipSync({ 'xl/media/big.png': new Uint8Array(90 * 1024 * 1024) })).size).toBe(0)
  })

  it('entities a part declares are not expanded', () => {
    const part =
      '<?xml version="1.0"?><!DOCTYPE w [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;">]><workbook>&b;</workbook>'
    expect(() => readWorkbook(zipSync({ 'xl/workbook.xml': strToU8(part) }))).toThrow(/damaged/)
  })
})
