import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkDraft, readDraft, tablesDraft } from '../../../electron/sheets/reference/draft-sheet.ts'
import { sheetText } from '../../../electron/sheets/reference/sheet-text.ts'
import { shippedSheets } from '../../../electron/sheets/reference/shipped-sheets.ts'
import type { SheetMessage, TablesDraft } from '../../../shared-types/sheet-desk.ts'
import { anySheet } from './random-sheets.ts'
import { sheetFrom, smallSheetText } from './small-sheets.ts'

const small = tablesDraft(sheetFrom(smallSheetText))

/** The small sheet with rows of one table as the change leaves them. */
const withRows = (table: string, change: (rows: string[][]) => string[][]): TablesDraft => ({
  ...small,
  tables: { ...small.tables, [table]: change((small.tables[table] ?? []).map((row) => [...row])) },
})

const places = (messages: readonly SheetMessage[]) =>
  messages.map(({ table, row, column, what }) => ({ table, row, column, what }))

describe('a sheet as it is being written', () => {
  test('its tables and its text carry any sheet there and back without loss', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        expect(readDraft(tablesDraft(sheet)).sheet).toEqual(sheet)
        expect(readDraft({ written: 'as text', text: sheetText(sheet) }).sheet).toEqual(sheet)
      }),
      { numRuns: 100 },
    )
  })

  test('the shipped sheets stand as tables and as text without loss, one entry a line where it is short', () => {
    for (const { sheet } of shippedSheets()) {
      expect(readDraft(tablesDraft(sheet)).sheet).toEqual(sheet)
      const text = sheetText(sheet)
      const again = readDraft({ written: 'as text', text }).sheet
      expect(again).toEqual(sheet)
      expect(again === null ? '' : sheetText(again)).toBe(text)
      if (sheet.sheetId === 'sedge') expect(text).toContain('- { id: saloon2, name: two-door saloon }')
    }
  })

  test('a sound sheet has no error and says how much it holds', () => {
    const { usable, messages, summary } = checkDraft(small, new Map())
    expect(messages.filter(({ severity }) => severity === 'error')).toEqual([])
    expect(usable).toBe(true)
    expect(summary).toMatchObject({ sheetId: 'teasel', edition: '1', variables: 3, rules: 3, tells: 2 })
  })

  test('each message names the cell it is about', () => {
    const unknown = withRows('rules', (rows) => rows.map((row) => row.map((cell) => cell.replace('fine', 'fien'))))
    expect(places(checkDraft(unknown, new Map()).messages).slice(0, 2)).toMatchObject([
      { table: 'rules', row: 1, column: 'on', what: '“fien” is no value of series.' },
      { table: 'rules', row: 2, column: 'on' },
    ])
    const day = withRows('values', (rows) => rows.map((row, at) => (at === 1 ? row.with(3, '1958-13-01') : row)))
    expect(places(checkDraft(day, new Map()).messages)).toMatchObject([{ table: 'values', row: 1, column: 'from' }])
    const owner = withRows('values', (rows) => rows.map((row, at) => (at === 4 ? row.with(0, 'serious') : row)))
    expect(places(checkDraft(owner, new Map()).messages)).toMatchObject([
      { table: 'values', row: 4, column: 'variable' },
    ])
    const number = withRows('count-cells', (rows) => rows.map((row, at) => (at === 0 ? row.with(2, 'many') : row)))
    expect(places(checkDraft(number, new Map()).messages)).toMatchObject([
      { table: 'count-cells', row: 0, column: 'built', what: '“many” is no number.' },
    ])
    const title = withRows('sheet', (rows) => rows.map((row) => row.with(2, '')))
    expect(places(checkDraft(title, new Map()).messages)).toMatchObject([{ table: 'sheet', row: 0, column: 'title' }])
  })

  test('faults of cells and of the form are told in one round, a cell once, and an unknown kind with the kinds there are', () => {
    const both = {
      ...withRows('rules', (rows) => rows.map((row, at) => (at === 0 ? row.with(1, 'never built') : row))),
    }
    const counts = withRows('count-cells', (rows) => rows.map((row, at) => (at === 0 ? row.with(2, 'many') : row)))
    const { messages } = checkDraft(
      { ...both, tables: { ...both.tables, 'count-cells': counts.tables['count-cells'] ?? [] } },
      new Map(),
    )
    expect(places(messages)).toEqual([
      { table: 'count-cells', row: 0, column: 'built', what: '“many” is no number.' },
      { table: 'rules', row: 0, column: 'kind', what: '“never built” is no kind known here.' },
    ])
    expect(messages[1]?.cure).toMatch(/^Write one of: not built together, requires,/)
  })

  test('empty rows between others are passed over and do not shift the places', () => {
    const gap = withRows('values', (rows) => [...rows.slice(0, 1), rows[0]?.map(() => '') ?? [], ...rows.slice(1)])
    expect(readDraft(gap).sheet).toEqual(sheetFrom(smallSheetText))
    const wrong = {
      ...gap,
      tables: { ...gap.tables, values: gap.tables.values?.map((row, at) => (at === 2 ? row.with(3, 'x') : row)) ?? [] },
    }
    expect(places(checkDraft(wrong, new Map()).messages)).toMatchObject([{ table: 'values', row: 2, column: 'from' }])
  })

  test('a message of a text names its line', () => {
    const text = smallSheetText.replace('gearbox: [four]', 'gearbox: [fuor]')
    expect(checkDraft({ written: 'as text', text }, new Map()).messages).toMatchObject([
      { line: 26, table: null, what: '“fuor” is no value of gearbox.' },
    ])
  })
})
