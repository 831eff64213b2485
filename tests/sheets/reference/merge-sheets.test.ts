import { describe, expect, test } from 'vitest'
import { compileSheets } from '../../../electron/sheets/reference/compile-sheets.ts'
import { mergeSheets } from '../../../electron/sheets/reference/merge-sheets.ts'
import { problemText } from '../../../electron/sheets/reference/sheet-problem.ts'
import { sheetFrom, smallSheetText } from './small-sheets.ts'

const line = sheetFrom(smallSheetText)
const era = sheetFrom(`form: 1
sheetId: rules-of-the-road
title: Rules of the road
edition: "7"
variables:
  - id: year
    name: Build date
    kind: dates
    basis: manufacture
    values: [{id: y1957, name: "1957", to: 1957-12-31}, {id: y1958, name: "1958", from: 1958-01-01, to: 1958-12-31}]
  - {id: market, name: First market, values: [{id: home, name: Home}, {id: abroad, name: Abroad}]}
rules: []
tells:
  - id: lamp
    name: Second rear lamp
    lookAt: The rear panel.
    where: {words: rear}
    effort: 1
    access: from outside
    follows:
      kind: by cases
      values: [{id: one, name: One}, {id: two, name: Two}]
      cases: [{when: {market: [home]}, from: {earliest: 1958-01-01, latest: 1958-12-31}, shows: two}]
      otherwise: one
`)
const importing = { ...line, imports: [{ sheetId: 'rules-of-the-road', edition: '' }] }
const known = new Map([line, era].map((sheet) => [sheet.sheetId, sheet]))

describe('sheets for one car', () => {
  test('imported sheets come first, each once', () => {
    const { sheets, problems } = mergeSheets(
      ['teasel', 'rules-of-the-road'],
      new Map([...known, ['teasel', importing]]),
    )
    expect(problems).toEqual([])
    expect(sheets.map(({ sheetId }) => sheetId)).toEqual(['rules-of-the-road', 'teasel'])
  })

  test('a ring of imports is refused and named', () => {
    const ring = { ...era, imports: [{ sheetId: 'teasel', edition: '' }] }
    const { problems } = mergeSheets(['teasel'], new Map([importing, ring].map((sheet) => [sheet.sheetId, sheet])))
    expect(problems.map(problemText)).toEqual([
      'rules-of-the-road, imports: The sheets import each other in a ring: teasel → rules-of-the-road → teasel. Take one of these imports out.',
    ])
  })

  test('a sheet that is not here, and one of another edition', () => {
    const missing = mergeSheets(['teasel'], new Map([['teasel', importing]]))
    expect(missing.problems.map(problemText)).toEqual([
      'teasel, imports: The sheet “rules-of-the-road” is not here. Take it in first, or take its name out of the imports.',
    ])
    const older = { ...importing, imports: [{ sheetId: 'rules-of-the-road', edition: '6' }] }
    const { problems } = mergeSheets(['teasel'], new Map([...known, ['teasel', older]]))
    expect(problems.map(({ severity }) => severity)).toEqual(['warning'])
  })

  test('names that clash are told apart, days of both speak of one day', () => {
    const compiled = compileSheets([era, importing])
    expect(compiled.problems).toEqual([])
    expect(compiled.nameOf('teasel/built')).toBe('Build date (Teasel 1958)')
    expect(compiled.nameOf('teasel/series')).toBe('Series')
    const ties = compiled.model?.rules.filter(({ id }) => id.startsWith('teasel/built is rules-of-the-road/year'))
    expect(ties?.map(({ ifs, thenAny }) => [ifs[0]?.[1], thenAny[0]?.[1]])).toEqual([
      [['q1'], ['y1958']],
      [['q2'], ['y1958']],
      [['q3'], ['y1958']],
    ])
  })

  test('a name of the imported sheet is known, a name of two imports must be told apart', () => {
    const rule = {
      ...line.rules[0],
      id: 'abroad',
      when: { market: ['abroad'], series: ['plain'] },
    } as (typeof line.rules)[number]
    expect(compileSheets([era, { ...importing, rules: [rule] }]).problems).toEqual([])
    const other = { ...era, sheetId: 'other' }
    const both = { ...importing, rules: [rule], imports: [...importing.imports, { sheetId: 'other', edition: '' }] }
    expect(compileSheets([era, other, both]).problems.map(problemText)).toEqual([
      'teasel, rules[1].when.market: “market” is a variable of several sheets. Write rules-of-the-road/market or other/market.',
    ])
  })
})
