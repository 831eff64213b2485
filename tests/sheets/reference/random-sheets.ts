import fc from 'fast-check'
import { type ReferenceSheet, referenceSheet } from '../../../shared-types/reference-sheet.ts'

/*
 * Sheets of any content the form allows, sensible or not: the written forms must carry them all without loss.
 */

const name = fc.stringMatching(/^[a-z0-9]{1,6}(-[a-z0-9]{1,4}){0,2}$/)
const reference = fc.oneof(
  name,
  fc.tuple(name, name).map(([sheet, own]) => `${sheet}/${own}`),
)
/** Text with all that troubles a table: quotes, marks, line ends, formulas, apostrophes, other scripts. */
const awkward = fc.constantFrom(
  '=1+1',
  "'=x",
  "''",
  '@SUM(A1)',
  '+44',
  '-',
  '"',
  '","',
  ';',
  '\t',
  '\r\n',
  '\n',
  '\r',
  ' x ',
  'ß',
  '車',
  'true',
  '007',
  '(none)',
)
const free = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 20 }),
  fc.array(awkward, { maxLength: 4 }).map((parts) => parts.join('')),
)
const line = fc
  .oneof(free, fc.constantFrom('Ledger', '1958'))
  .map((text) => text.trim())
  .filter((text) => text !== '')
const day = fc
  .date({ min: new Date('1900-01-01'), max: new Date('2030-01-01'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10))
const orNone = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: null })
const changeDay = fc.oneof(day, fc.record({ earliest: day, latest: day }))
const days = { from: orNone(changeDay), until: orNone(changeDay) }
const share = fc.double({ min: 0, max: 1, noNaN: true }).map((value) => value + 0)
const some = <Value>(value: fc.Arbitrary<Value>, minLength = 0) => fc.array(value, { minLength, maxLength: 3 })
const number = fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((value) => value + 0)
const dictionary = <Value>(key: fc.Arbitrary<string>, value: fc.Arbitrary<Value>) =>
  fc.dictionary(key, value, { maxKeys: 3, noNullPrototype: true })
const condition = dictionary(reference, some(name, 1))
const shares = dictionary(name, share)
const shown = fc.oneof(name, shares)
const fact = { id: name, source: orNone(name), note: free }
const rule = { ...fact, surePercent: fc.integer({ min: 1, max: 100 }) }
const path = fc.constantFrom('M0 0L10 10Z', 'M1-1h5')
const sketch = orNone(fc.record({ words: line, paths: some(path, 1), fine: some(path), marked: some(path) }))
const partName = fc.constantFrom('engine-block', 'wheel.L', 'spark-plug.3')
const kind = <Word extends string>(word: Word) => fc.constant(word)

const rules = fc.oneof(
  fc.record({ ...rule, kind: kind('not built together'), when: condition, ...days }),
  fc.record({ ...rule, kind: kind('requires'), when: condition, needs: condition, ...days }),
  fc.record({ ...rule, kind: fc.constantFrom('only from', 'only until'), when: condition, day: changeDay }),
  fc.record({ ...rule, kind: kind('standard'), variable: reference, value: name, on: condition, ...days }),
  fc.record({
    ...rule,
    kind: kind('option'),
    variable: reference,
    value: name,
    on: condition,
    share: orNone(share),
    price: orNone(
      fc.record({ amount: fc.double({ min: 0, max: 1e4, noNaN: true }).map((value) => value + 0), currency: line }),
    ),
    ...days,
  }),
)
const tellValue = fc.record({
  id: name,
  name: line,
  looks: free,
  measure: orNone(fc.record({ mean: number, standardDeviation: share })),
  sketch,
})
const follows = fc.oneof(
  fc.record({ kind: kind('as built'), variable: reference }),
  fc.record({
    kind: kind('by cases'),
    values: fc.array(tellValue, { minLength: 2, maxLength: 3 }),
    cases: some(fc.record({ when: condition, ...days, shows: shown, source: orNone(name) }), 1),
    otherwise: orNone(shown),
  }),
)
const tell = fc.record({
  ...fact,
  name: line,
  lookAt: free,
  where: fc.record({ panels: some(fc.constantFrom('roof-skin', 'front-side.L')), parts: some(partName), words: free }),
  how: free,
  effort: fc.integer({ min: 1, max: 5 }),
  access: fc.constantFrom('from outside', 'from below', 'taken apart'),
  unit: orNone(fc.constantFrom('mm', 'kg')),
  follows,
  misread: fc.oneof(share, dictionary(name, shares)),
  replaced: orNone(fc.record({ share, by: shares })),
  wrong: share,
  travelsWith: orNone(reference),
  caution: free,
  sketch,
})
const place = fc.oneof(
  fc.record({ kind: kind('fixed'), texts: some(line, 1), optional: fc.boolean() }),
  fc.record({
    kind: kind('marks'),
    name: line,
    rows: some(fc.record({ text: line, means: condition, words: free }), 1),
    readBy: orNone(name),
  }),
  fc.record({
    kind: kind('sequence'),
    name: line,
    minDigits: fc.integer({ min: 1, max: 12 }),
    maxDigits: fc.integer({ min: 1, max: 12 }),
    stretches: some(fc.record({ first: fc.nat(), last: fc.nat(), means: condition, ...days })),
    readBy: orNone(name),
  }),
)
const grammar = fc.record({
  id: name,
  label: line,
  source: line,
  usedFrom: fc.constant(1950),
  usedTo: fc.constant(1960),
  elements: some(
    fc.record({ kind: kind('figures'), field: kind('year'), minDigits: fc.constant(1), maxDigits: fc.constant(2) }),
    1,
  ),
})
const value = fc.record({ id: name, name: line, from: orNone(day), to: orNone(day), sketch })
const list = <Value extends object>(entry: fc.Arbitrary<Value>) =>
  fc.uniqueArray(entry, { maxLength: 3, selector: (each) => (each as { id?: string }).id })

/** Any sheet the form allows, entries of one list with different names. */
export const anySheet: fc.Arbitrary<ReferenceSheet> = fc
  .record({
    form: fc.constant(1),
    sheetId: name,
    title: line,
    edition: line,
    about: free,
    imports: some(fc.record({ sheetId: name, edition: free })),
    sources: list(
      fc.record({
        id: name,
        who: line,
        where: line,
        page: free,
        surePercent: fc.double({ min: 1, max: 100, noNaN: true }),
        learned: fc.constantFrom('seen in the source itself', 'recalled', 'invented'),
        note: free,
      }),
    ),
    variables: list(
      fc.record({
        id: name,
        name: line,
        kind: fc.constantFrom('choice', 'dates'),
        basis: orNone(fc.constantFrom('manufacture', 'sale')),
        values: some(value, 1),
        groups: some(fc.record({ id: name, name: line, values: some(name, 1) })),
        note: free,
      }),
    ),
    datesAgainst: orNone(reference),
    rules: list(rules),
    tells: list(tell),
    donors: list(
      fc.record({
        ...fact,
        name: line,
        kinds: some(fc.record({ id: name, name: line, share, brings: dictionary(reference, shares) }), 1),
      }),
    ),
    counts: list(
      fc.record({
        ...fact,
        name: line,
        account: orNone(name),
        cells: some(fc.record({ when: condition, built: number }), 1),
        others: orNone(number),
      }),
    ),
    interchange: list(
      fc.record({
        ...fact,
        part: partName,
        name: line,
        on: condition,
        carriers: some(fc.record({ line, from: orNone(day), until: orNone(day), altered: free, toldBy: free }), 1),
      }),
    ),
    numbers: list(
      fc.record({
        ...fact,
        name: line,
        where: free,
        part: orNone(partName),
        passOverSeparators: fc.boolean(),
        misread: share,
        replaced: share,
        places: some(place, 1),
      }),
    ),
    dateCodes: list(
      fc.record({
        ...fact,
        part: partName,
        grammar,
        leadDays: orNone(fc.record({ least: fc.integer(), most: fc.integer() })),
      }),
    ),
  })
  .map((sheet) => referenceSheet.parse(sheet))
