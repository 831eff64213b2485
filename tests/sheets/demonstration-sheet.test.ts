import { describe, expect, it } from 'vitest'
import { readDateCode } from '../../electron/analysis/dating/date-code.ts'
import { checkSheet } from '../../electron/sheets/reference/check-sheet.ts'
import { compileSheets } from '../../electron/sheets/reference/compile-sheets.ts'
import { shippedSheets } from '../../electron/sheets/reference/shipped-sheets.ts'
import type { ReferenceSheet } from '../../shared-types/reference-sheet.ts'

/*
 * The demonstration sheet is invented, so no outside source can say that it is right. What is checked is that it holds
 * together, that it is as rich as promised, and that its papers agree with each other.
 */
const sheet = shippedSheets().find(({ sheet: { sheetId } }) => sheetId === 'sedge')?.sheet as ReferenceSheet
const facts = [
  ...sheet.rules,
  ...sheet.tells,
  ...sheet.donors,
  ...sheet.counts,
  ...sheet.interchange,
  ...sheet.numbers,
  ...sheet.dateCodes,
]
const variable = (id: string) => sheet.variables.find((each) => each.id === id)

describe('the demonstration sheet', () => {
  it('has nothing wrong or doubtful in it that the checker finds', () => {
    expect(checkSheet(sheet)).toEqual([])
  }, 60_000)

  it('names for every fact an invented source that it lists, with a page or leaf', () => {
    const known = new Set(sheet.sources.map(({ id }) => id))
    for (const { id, source } of facts) expect(known, `${id} cites ${source}`).toContain(source)
    for (const { id, learned, page } of sheet.sources) {
      expect(learned, id).toBe('invented')
      expect(page, id).not.toBe('')
    }
  })

  it('is as rich as a demonstration needs', () => {
    expect(sheet.tells.length).toBeGreaterThanOrEqual(60)
    const changes = sheet.tells.filter(
      ({ follows }) =>
        follows.kind === 'by cases' &&
        follows.cases.some(({ when, from }) => from !== null && !Object.keys(when).includes('body')),
    )
    expect(changes.length).toBeGreaterThanOrEqual(12)
    expect(sheet.rules.filter(({ kind }) => kind === 'not built together').length).toBeGreaterThanOrEqual(4)
    const offered = sheet.rules.flatMap((rule) => (rule.kind === 'option' ? [rule.variable] : []))
    expect(new Set(offered).size).toBeGreaterThanOrEqual(8)
    for (const id of ['body', 'series', 'engine', 'gearbox', 'axle', 'plant', 'built', 'market'])
      expect(variable(id)?.values.length, id).toBeGreaterThanOrEqual(2)
  })

  it('says of every tell where it is looked for, and how it can mislead', () => {
    for (const { id, lookAt, where, misread, wrong, replaced } of sheet.tells) {
      expect(lookAt, id).not.toBe('')
      expect(where.panels.length + where.parts.length, id).toBeGreaterThan(0)
      expect(misread !== 0 || wrong > 0 || replaced !== null, id).toBe(true)
    }
  })

  it('draws its most telling tells, the loom bracket first of all: every answer of a tell, within the square', () => {
    const drawn = sheet.tells.flatMap(({ id, sketch, follows }) => {
      const answers = follows.kind === 'by cases' ? follows.values.map((value) => value.sketch) : []
      if (answers.some((answer) => answer !== null)) expect(answers, id).not.toContain(null)
      const all = [sketch, ...answers].filter((each) => each !== null)
      return all.length === 0 ? [] : [{ id, all }]
    })
    expect(drawn.length).toBeGreaterThanOrEqual(12)
    expect(drawn[0]?.id).toBe('loom-bracket')
    expect(sheet.tells[0]?.sketch?.marked).not.toEqual([])
    for (const { id, all } of drawn)
      for (const { paths, fine, marked } of all)
        for (const path of [...paths, ...fine, ...marked]) {
          const numbers = path.match(/-?\d+(\.\d+)?/g)?.map(Number) ?? []
          expect(Math.min(...numbers), `${id}: ${path}`).toBeGreaterThanOrEqual(0)
          expect(Math.max(...numbers), `${id}: ${path}`).toBeLessThanOrEqual(100)
        }
  })

  it('warns where looking means going under the car or turning it over by hand', () => {
    for (const { id, access, caution } of sheet.tells)
      if (access === 'from below') expect(caution, id).toMatch(/stands/)
  })

  it('dates the months without gaps, from 1956 to 1964', () => {
    const months = variable('built')?.values ?? []
    expect(months.at(0)?.from?.slice(0, 4)).toBe('1956')
    expect(months.at(-1)?.to?.slice(0, 4)).toBe('1964')
    months.slice(1).forEach(({ id, from }, at) => {
      const before = Date.parse(`${months[at]?.to}T00:00:00Z`)
      expect(Date.parse(`${from}T00:00:00Z`) - before, id).toBe(86_400_000)
    })
  })
})

describe('counts and numbers of the demonstration sheet', () => {
  const built = (id: string, when: Readonly<Record<string, string>> = {}) =>
    sheet.counts
      .find((count) => count.id === id)
      ?.cells.filter((cell) => Object.entries(when).every(([name, value]) => cell.when[name]?.includes(value)))
      .reduce((sum, cell) => sum + cell.built, 0) ?? 0
  const stretches = (id: string) =>
    sheet.numbers
      .find((number) => number.id === id)
      ?.places.flatMap((place) => (place.kind === 'sequence' ? place.stretches : [])) ?? []

  it('come from two papers that disagree on every body', () => {
    expect(sheet.counts.map(({ source }) => source)).toEqual(['works-ledger', 'register'])
    for (const { id } of variable('body')?.values ?? [])
      expect(built('works-count', { body: id }), id).not.toBe(built('register-count', { body: id }))
  })

  it('leave no chassis number for more cars than were built, nor the other way round, by more than the papers differ', () => {
    const rows = stretches('chassis-number')
    const issued = (rows.at(-1)?.last ?? 0) - (rows.at(0)?.first ?? 0) + 1
    const [one, other] = [built('works-count'), built('register-count')]
    expect(Math.abs(issued - one)).toBeLessThanOrEqual(Math.abs(one - other))
  })

  it('issue chassis numbers and tags in one row, without gaps, as time goes on', () => {
    for (const id of ['chassis-number', 'body-tag-number']) {
      const rows = stretches(id)
      rows.slice(1).forEach(({ first, from }, at) => {
        expect(first, id).toBe((rows[at]?.last ?? 0) + 1)
        expect(String(from) > String(rows[at]?.until), `${id} ${first}`).toBe(true)
      })
    }
  })

  it('put the plate and the tag of the demonstration car into the same spring', () => {
    const of = (id: string, number: number) =>
      stretches(id).find(({ first, last }) => first <= number && number <= last)
    expect(of('chassis-number', 11_387)).toMatchObject({ from: '1960-01-01', until: '1960-12-31' })
    expect(of('body-tag-number', 5519)).toMatchObject({ from: '1960-03-01', until: '1960-05-26' })
  })
})

describe('date codes of the demonstration sheet', () => {
  const read = (id: string, asRead: string) => {
    const grammars = sheet.dateCodes.filter((code) => code.id === id).map(({ grammar }) => grammar)
    return readDateCode({ asRead, grammars, notBefore: null, notAfter: null }).readings.map(({ interval }) => interval)
  }

  it('read the dates found on the demonstration car in one way each', () => {
    expect(read('casting-date', '7 62')).toEqual([{ from: '1962-07-01', to: '1962-07-31' }])
    expect(read('electrical-date', '3 60')).toEqual([{ from: '1960-03-01', to: '1960-03-31' }])
    expect(read('trim-print', '14 APR 60')).toEqual([{ from: '1960-04-14', to: '1960-04-14' }])
  })

  it('refuse a month that is none and a year in which no Sedge was made', () => {
    expect(read('casting-date', '13 60')).toEqual([])
    expect(read('casting-date', '7 52')).toEqual([])
  })
})

describe('interchange of the demonstration sheet', () => {
  it('names a gearbox of another line of the maker, and an engine of the right type and a later date', () => {
    const carriers = (part: string) =>
      sheet.interchange.filter((each) => each.part === part).flatMap((each) => each.carriers)
    const lines = carriers('transmission').map(({ line }) => line)
    expect(lines.some((line) => line.startsWith('Brackwater'))).toBe(true)
    const dated = carriers('engine-block').filter(({ until }) => until !== null && until > '1960-12-31')
    expect(dated.length).toBeGreaterThan(0)
    for (const { altered, toldBy, line } of [...carriers('transmission'), ...carriers('engine-block')]) {
      expect(altered, line).not.toBe('')
      expect(toldBy, line).not.toBe('')
    }
  })

  it('lets a van give its gearbox and shaft together', () => {
    const van = sheet.donors.flatMap(({ kinds }) => kinds).find(({ id }) => id === 'van')
    expect(Object.keys(van?.brings ?? {}).sort()).toEqual(['gearbox-prefix', 'propeller-shaft'])
    expect(compileSheets([sheet]).model?.donors.length).toBe(sheet.donors.length)
  })
})
