import { describe, expect, test } from 'vitest'
import { checkSheet } from '../../../electron/sheets/reference/check-sheet.ts'
import { readSheet } from '../../../electron/sheets/reference/read-sheet.ts'
import { problemText } from '../../../electron/sheets/reference/sheet-problem.ts'
import { bytesOf, smallSheetText } from './small-sheets.ts'

/** What the checker says of the small sheet with one piece of its text changed. */
function words(change: string, to: string): readonly string[] {
  const text = smallSheetText.replace(change, to)
  if (text === smallSheetText && change !== to) throw new Error(`The small sheet has no “${change}”.`)
  const { sheet, problems, placeOf } = readSheet(bytesOf(text))
  return (sheet === null ? problems : checkSheet(sheet, new Map(), placeOf)).map(problemText)
}
const lineWith = (text: string) => smallSheetText.split('\n').findIndex((line) => line.includes(text)) + 1

test('the small sheet is sound', () => {
  expect(words('', '')).toEqual([])
})

describe('names', () => {
  test('a variable, a value, a source and a donor that are not there, each with line and cure', () => {
    expect(words('when: {series: [plain], gearbox', 'when: {serie: [plain], gearbox')).toEqual([
      `line ${lineWith('no-plain-four')}, rules[1].when.serie: There is no variable “serie”. Did you mean series?`,
    ])
    expect(words('gearbox: [four]}', 'gearbox: [fuor]}')).toEqual([
      `line ${lineWith('no-plain-four')}, rules[1].when.gearbox[1]: “fuor” is no value of gearbox. Correct the name, or add it to the sheet.`,
    ])
    expect(words('{id: no-plain-four, source: ledger', '{id: no-plain-four, source: leger')).toEqual([
      `line ${lineWith('no-plain-four')}, rules[1].source: There is no source “leger”. Did you mean ledger?`,
    ])
    expect(words('travelsWith: breaker', 'travelsWith: yard')[0]).toContain('There is no donor “yard”.')
  })

  test('two facts with one name, of whatever kind', () => {
    expect(words('{id: by-half', '{id: bracket')).toEqual([
      `line ${lineWith('{id: by-half')}, counts[2].id: Two facts are called “bracket”; the other is tells[1]. Rename one: a report cites facts by name.`,
    ])
  })

  test('a panel and a part no list holds', () => {
    expect(words('panels: [], parts: []', 'panels: [roof-skni], parts: []')[0]).toContain('roof-skin')
    expect(words('panels: [], parts: []', 'panels: [], parts: [flux]')[0]).toContain('“flux” is no part')
  })
})

describe('numbers', () => {
  test('shares that do not add up', () => {
    expect(words('shows: screwed}', 'shows: {screwed: 0.5, welded: 0.4}}')[0]).toContain('The shares add up to 0.9.')
    expect(words('{three: 0.7, four: 0.3}', '{three: 0.7, four: 0.2}')[0]).toContain('The shares add up to 0.9.')
  })

  test('options that are on more than every car', () => {
    const second =
      '{id: overdrive-again, kind: option, variable: gearbox, value: overdrive, on: {series: [fine]}, share: 0.9}'
    expect(words('tells:\n', `  - ${second}\ntells:\n`)[0]).toContain('The shares of gearbox add up to more than 1')
  })

  test('counts that are negative, all zero, incomplete or overlapping', () => {
    expect(words('built: 300', 'built: -3')).toEqual([
      `line ${lineWith('built: 300')}, counts[1].cells[1].built: It is less than nothing. Correct the sign.`,
    ])
    expect(
      words('built: 250}, {when: {built: [q3]}, built: 150', 'built: 0}, {when: {built: [q3]}, built: 0')[0],
    ).toContain('All its numbers are 0.')
    expect(words(', {when: {series: [fine]}, built: 100}', '')[0]).toContain('Write others: 0')
    expect(words('{built: [q3]}', '{built: [q2, q3]}')[0]).toContain('A cell before it counts some of the same cars.')
  })

  test('counts of one source with different totals are doubtful', () => {
    expect(words('{id: by-half, source: returns', '{id: by-half, account: ledger, source: returns')).toEqual([])
    const [doubt] = words(
      '{id: by-half, source: returns, name: By half, others: 0',
      '{id: by-half, account: ledger, source: returns, name: By half, others: 20',
    )
    expect(doubt).toContain('It comes to 420, by-series of the same source to 400.')
  })

  test('days in disorder', () => {
    expect(words('until: 1958-05-15', 'from: 1958-06-01, until: 1958-05-15')[0]).toContain('before it begins')
    expect(words('from: 1958-04-01, to', 'from: 1958-03-01, to')[0]).toContain('begins before q1 has ended')
  })
})

describe('what follows from all facts together', () => {
  const also = (rule: string) => words('tells:\n', `  - ${rule}\ntells:\n`)

  test('a rule that forbids everything', () => {
    expect(also('{id: nothing, kind: not built together, when: {}}')[0]).toContain('It forbids every car.')
    expect(also('{id: nothing, kind: not built together, when: {series: [plain, fine]}}')[0]).toContain(
      'Together nothing leave no car that could be built. Correct it.',
    )
  })

  test('rules that together forbid everything are named, and no others', () => {
    const rules =
      '{id: only-plain, kind: not built together, when: {series: [fine]}}\n  - {id: only-fine, kind: requires, when: {}, needs: {series: [fine]}}'
    expect(also(rules)[0]).toContain('Together only-plain, only-fine leave no car')
  })

  test('a value that can never occur, with the facts that rule it out', () => {
    const found = also('{id: no-fine-four, source: ledger, kind: not built together, when: {gearbox: [four]}}')
    expect(found.find((each) => each.includes('No car can have gearbox “four”'))).toContain('because of no-fine-four')
    // The rule of the plain series has become a part of the new one.
    expect(found.find((each) => each.includes('rules[1]'))).toContain('It never bites: it follows from no-fine-four.')
  })

  test('a rule that never bites because nothing meets it', () => {
    const found = also(
      '{id: late, kind: not built together, when: {series: [plain], gearbox: [three]}, from: 1959-01-01}',
    )
    expect(found).toEqual([expect.stringContaining('It never bites: no car the sheet knows of meets it.')])
    expect(also('{id: again, kind: only from, when: {series: [plain]}, day: 1958-01-01}')[0]).toContain('never bites')
  })

  test('a tell value no car can show and nothing brings', () => {
    const found = words('otherwise: screwed', 'otherwise: welded').concat(
      words(
        'values: [{id: welded, name: Welded}, {id: screwed',
        'values: [{id: glued, name: Glued}, {id: welded, name: Welded}, {id: screwed',
      ),
    )
    expect(found).toEqual([expect.stringContaining('No car can have bracket “glued”')])
  })

  test('a case of a tell that never applies', () => {
    const found = words(
      '{when: {series: [fine]}, shows: screwed}',
      '{when: {series: [fine]}, shows: screwed}\n        - {when: {series: [fine], built: [q1]}, shows: welded}',
    )
    expect(found).toEqual([expect.stringContaining('tells[1].follows.cases[2]: It never applies')])
  })

  test('cars counted that could not be built', () => {
    const count =
      '{id: odd, source: returns, name: Odd, others: 396, cells: [{when: {series: [plain], gearbox: [four]}, built: 4}]}'
    const found = words('{id: by-half', `${count}\n  - {id: by-half`)
    expect(found).toEqual([
      expect.stringContaining('It counts 4 cars that could not be built, because of no-plain-four.'),
    ])
  })
})
