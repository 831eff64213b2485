import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { stringify } from 'yaml'
import { resourcePath } from '../../../electron/places-on-disk.ts'
import { readSheet } from '../../../electron/sheets/reference/read-sheet.ts'
import { readSheetTables } from '../../../electron/sheets/reference/read-tables.ts'
import { problemText } from '../../../electron/sheets/reference/sheet-problem.ts'
import { writeSheetTables } from '../../../electron/sheets/reference/write-tables.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { anySheet } from './random-sheets.ts'
import { bytesOf, sheetFrom, smallSheetText } from './small-sheets.ts'

const asBytes = (tables: ReadonlyMap<string, string>) =>
  new Map([...tables].map(([name, text]) => [name, bytesOf(text)]))

function throughTables(sheet: ReferenceSheet): ReferenceSheet {
  const { sheet: read, problems } = readSheetTables(asBytes(writeSheetTables(sheet)))
  if (read === null) throw new Error(problems.map(problemText).join('\n'))
  return read
}

describe('the spreadsheet form', () => {
  test('carries any sheet there and back without loss', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        expect(throughTables(sheet)).toEqual(sheet)
      }),
      { numRuns: 200 },
    )
  })

  test('carries the demonstration sheet there and back without loss', () => {
    const { sheet, problems } = readSheet(readFileSync(resourcePath('reference-sheets', 'sedge.yaml')))
    if (sheet === null) throw new Error(problems.map(problemText).join('\n'))
    expect(throughTables(sheet)).toEqual(sheet)
  })

  test('no cell begins like a formula, but for numbers', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        for (const table of writeSheetTables(sheet).values())
          for (const [, start] of table.matchAll(/(?:^|[,\n])"([=+@-][^"]*)/g)) expect(start).toMatch(/^-[0-9]/)
      }),
      { numRuns: 50 },
    )
  })
})

test('YAML carries any sheet there and back without loss', () => {
  fc.assert(
    fc.property(anySheet, (sheet) => {
      expect(readSheet(bytesOf(stringify(sheet))).sheet).toEqual(sheet)
    }),
    { numRuns: 100 },
  )
})

describe('tables as a spreadsheet hands them back', () => {
  const written = writeSheetTables(sheetFrom(smallSheetText))
  const changed = (name: string, change: (text: string) => string) => {
    const tables = new Map(written)
    tables.set(name, change(written.get(name) ?? ''))
    return readSheetTables(asBytes(tables))
  }
  const words = (name: string, change: (text: string) => string) => changed(name, change).problems.map(problemText)

  test('semicolons, no quotes, line feeds, empty rows and a missing table of nothing are the same sheet', () => {
    const semicolons = changed(
      'values',
      (text) => `${text.replaceAll('"', '').replaceAll(',', ';').replaceAll('\r\n', '\n')};;;\n\n`,
    )
    expect(semicolons.problems).toEqual([])
    expect(semicolons.sheet).toEqual(sheetFrom(smallSheetText))
    const tables = new Map(written)
    tables.delete('interchange')
    expect(readSheetTables(asBytes(tables)).sheet).toEqual(sheetFrom(smallSheetText))
  })

  test('table, line and cure of what is wrong', () => {
    expect(words('values', (text) => text.replace('"plain"', '"Plain One"'))).toEqual([
      'values, line 5, variables[2].values[1].id: “Plain One” is not well formed. Small letters, figures and dashes, such as build-date.',
    ])
    expect(words('values', (text) => text.replace('"series"', '"serious"'))).toEqual([
      'values, line 5, variable: No entry of variables called “serious” takes such rows. Correct the name, or add it there.',
    ])
    expect(words('count-cells', (text) => text.replace('"300"', '"three hundred"'))).toEqual([
      'count-cells, line 2, counts[1].cells[1].built: “three hundred” is no number. Write figures alone.',
    ])
    expect(words('rules', (text) => text.replace('series: plain', 'series plain'))[0]).toContain('has no “:”')
    expect(words('rules', (text) => text.replace('"kind"', '"kinds"'))[0]).toContain('no use for the column “kinds”')
  })

  test('a row that spans lines does not shift the lines of those after it', () => {
    const found = words('sources', (text) => text.replace('"Ledger"', '"Led\r\nger"').replace('"returns"', '"Returns"'))
    expect(found).toEqual([expect.stringContaining('sources, line 4, sources[2].id')])
  })

  test('a content under the wrong kind, a table of no name, a table cut off, other letters', () => {
    const needs = words('rules', (text) =>
      text.replace('"100",,,"gearbox","four"', '"100",,"series: fine","gearbox","four"'),
    )
    expect(needs).toEqual(['rules, line 3, needs: “standard” has no use for a needs. Empty the cell.'])
    expect(words('surprise', () => 'a,b\r\n')[0]).toContain('There is no table of this name.')
    expect(words('values', (text) => text.replace('"Plain"', '"Plain'))[0]).toContain('cannot be read')
    const tables = new Map(asBytes(written)).set('values', Uint8Array.of(0xff, 0x41))
    expect(readSheetTables(tables).problems.map(problemText)[0]).toContain('UTF-8')
  })

  test('50 MB of cells and a newer form are refused', () => {
    const tables = new Map(asBytes(written)).set('values', new Uint8Array(50_000_000))
    expect(readSheetTables(tables).problems[0]?.what).toContain('MB long')
    expect(words('sheet', (text) => text.replace('"1"', '"2"'))[0]).toContain('this program reads form 1')
  })

  test('a formula in a cell stays what it is: text', () => {
    const { sheet } = changed('sources', (text) => text.replace('"Ledger"', '"=HYPERLINK(1)"'))
    expect(sheet?.sources[0]?.where).toBe('=HYPERLINK(1)')
  })
})
