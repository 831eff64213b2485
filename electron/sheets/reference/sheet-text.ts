import { Document, isCollection, isPair, isScalar } from 'yaml'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'

/** Longest entry that stands on one line. */
const ONE_LINE = 100
const asJson = (value: unknown): string => JSON.stringify(value)

/** What may be left out of an entry because the form reads it so: null, empty text and empty lists, by key. */
const USUAL: Readonly<Record<string, readonly string[]>> = {
  ...Object.fromEntries(
    ['about', 'note', 'page', 'looks', 'how', 'caution', 'altered', 'toldBy', 'edition', 'words'].map((key) => [
      key,
      ['""'],
    ]),
  ),
  ...Object.fromEntries(
    [
      'source',
      'from',
      'until',
      'to',
      'sketch',
      'measure',
      'basis',
      'unit',
      'replaced',
      'travelsWith',
      'account',
      'others',
    ]
      .concat(['price', 'share', 'otherwise', 'datesAgainst', 'leadDays', 'part'])
      .map((key) => [key, ['null']]),
  ),
  ...Object.fromEntries(
    ['imports', 'sources', 'variables', 'rules', 'tells', 'donors', 'counts', 'interchange', 'numbers', 'dateCodes']
      .concat(['groups', 'panels', 'parts', 'stretches', 'fine', 'marked'])
      .map((key) => [key, ['[]']]),
  ),
  misread: ['0'],
  wrong: ['0'],
  optional: ['false'],
}

/** A number on the car is misread now and then unless its sheet says otherwise: that none is ever misread is written out. */
const USUAL_OF_NUMBERS: typeof USUAL = { ...USUAL, misread: [] }

/** Written whole: what has names of the sheet for its keys, and the grammar of a date code, which has a form of its own. */
const WHOLE = new Set('grammar when needs on means shows otherwise misread by brings'.split(' '))

function withoutUsual(value: unknown, usual = USUAL): unknown {
  if (Array.isArray(value)) return value.map((each) => withoutUsual(each, usual))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key, held]) => !(Object.hasOwn(usual, key) && usual[key]?.includes(asJson(held)) === true))
      .map(([key, held]) => [
        key,
        WHOLE.has(key) ? held : withoutUsual(held, key === 'numbers' ? USUAL_OF_NUMBERS : usual),
      ]),
  )
}

const heldBy = (item: unknown): unknown => (isPair(item) ? item.value : item)

/** Within a line, words of several lines are not read back as they were. */
const isOfOneLine = (node: unknown): boolean =>
  isScalar(node) && !(typeof node.value === 'string' && node.value.includes('\n'))

/** Puts short entries on one line, from the inside outwards; answers whether this one is. The sheet's own lists never are. */
function onOneLine(node: unknown, depth: number): boolean {
  if (!isCollection(node)) return isOfOneLine(node)
  const below = node.items.map((item) => onOneLine(heldBy(item), depth + 1))
  node.flow = depth > 1 && below.every((short) => short) && asJson(node.toJSON()).length <= ONE_LINE
  return node.flow
}

/** A sheet as YAML a person goes on writing: what is as usual is left out, short entries stand on one line. */
export function sheetText(sheet: ReferenceSheet): string {
  const document = new Document(withoutUsual(sheet), { aliasDuplicateObjects: false })
  onOneLine(document.contents, 0)
  return document.toString({ lineWidth: 120, flowCollectionPadding: true })
}
