import { dayOfSerial, dayStyles, plainNumber } from './cell-values.ts'
import { readXml } from './read-xml.ts'
import { WorkbookFault, workbookParts } from './workbook-parts.ts'

/** Something in a cell that cannot be taken over, with its place as the workbook names it. */
export interface CellInTheWay {
  readonly line: number
  readonly what: string
  readonly cure: string
}

/** One table of a workbook: rows of cells by line, from 1, and what cannot be taken over. */
export interface WorkbookTable {
  readonly name: string
  readonly rows: ReadonlyMap<number, readonly string[]>
  readonly inTheWay: readonly CellInTheWay[]
}

/** More cells than this in a row are not a table of this form. */
const MOST_COLUMNS = 200

/** Column of a cell's reference, from 0: A1 is 0, AA1 is 26. */
export function columnOfReference(reference: string): number {
  const letters = /^[A-Z]+/.exec(reference)?.[0] ?? ''
  return [...letters].reduce((sum, letter) => 26 * sum + letter.charCodeAt(0) - 64, 0) - 1
}

/**
 * Tables of a workbook (Office Open XML, ECMA-376). Days become `1958-03-01`, numbers plain figures, true and false yes and no.
 * @throws WorkbookFault for what is too long, damaged or no workbook.
 */
export function readWorkbook(bytes: Uint8Array): readonly WorkbookTable[] {
  const parts = workbookParts(bytes)
  const book = parts.get('xl/workbook.xml')
  if (book === undefined)
    throw new WorkbookFault('It is a zip archive, but no workbook.', 'Save the tables as .xlsx and choose that file.')
  const shared = sharedTexts(parts.get('xl/sharedStrings.xml'))
  const days = dayStyles(parts.get('xl/styles.xml'))
  const targets = targetsOf(parts.get('xl/_rels/workbook.xml.rels'))
  const sheets: { name: string; id: string }[] = []
  let counted: 'from1900' | 'from1904' = 'from1900'
  readXml(book, {
    opens: ({ name, attributes }) => {
      if (name === 'workbookPr' && /^(1|true)$/.test(attributes.date1904 ?? '')) counted = 'from1904'
      const id = Object.entries(attributes).find(([key]) => /(^|:)id$/.test(key) && key !== 'sheetId')?.[1]
      if (name === 'sheet') sheets.push({ name: attributes.name ?? '', id: id ?? '' })
    },
  })
  return sheets.map(({ name, id }) => {
    const part = parts.get(targets.get(id) ?? '')
    return { name, ...(part === undefined ? { rows: new Map(), inTheWay: [] } : rowsOf(part, shared, days, counted)) }
  })
}

function targetsOf(relations: string | undefined): ReadonlyMap<string, string> {
  const found = new Map<string, string>()
  readXml(relations ?? '<none/>', {
    opens: ({ name, attributes: { Id: id = '', Target: target = '' } }) => {
      if (name === 'Relationship') found.set(id, target.startsWith('/') ? target.slice(1) : `xl/${target}`)
    },
  })
  return found
}

/** Texts kept once for all cells; how a piece is to be spoken (`rPh`) is no part of it. */
function sharedTexts(part: string | undefined): readonly string[] {
  const found: string[] = []
  let text = ''
  let [reading, spoken] = [false, false]
  readXml(part ?? '<none/>', {
    opens: ({ name }) => {
      if (name === 'si') text = ''
      if (name === 'rPh') spoken = true
      reading = name === 't' && !spoken
    },
    closes: (name) => {
      if (name === 'si') found.push(text)
      if (name === 'rPh') spoken = false
      reading = false
    },
    text: (words) => {
      if (reading) text += words
    },
  })
  return found
}

function rowsOf(
  part: string,
  shared: readonly string[],
  days: readonly boolean[],
  counted: 'from1900' | 'from1904',
): Omit<WorkbookTable, 'name'> {
  const rows = new Map<number, string[]>()
  const inTheWay: CellInTheWay[] = []
  let [line, column] = [0, -1]
  let cell = { reference: '', type: 'n', style: 0 }
  let [value, reading, formula] = ['', false, false]
  const standing = (): string => {
    switch (cell.type) {
      case 's':
        return shared[Number(value)] ?? ''
      case 'b':
        return value === '1' ? 'yes' : 'no'
      case 'd':
        return value.slice(0, 10)
      case 'n':
        return days[cell.style] === true && value !== '' ? dayOfSerial(Number(value), counted) : plainNumber(value)
      default:
        return value
    }
  }
  readXml(part, {
    opens: ({ name, attributes }) => {
      if (name === 'row') {
        line = Number(attributes.r ?? line + 1)
        column = -1
      } else if (name === 'c') {
        column = attributes.r === undefined ? column + 1 : columnOfReference(attributes.r)
        cell = { reference: attributes.r ?? '', type: attributes.t ?? 'n', style: Number(attributes.s ?? 0) }
        value = ''
        formula = false
      } else if (name === 'f') formula = true
      reading = name === 'v' || name === 't'
    },
    text: (words) => {
      if (reading) value += words
    },
    closes: (name) => {
      reading = false
      if (name !== 'c') return
      const complain = (what: string, cure: string) => inTheWay.push({ line, what, cure })
      if (formula)
        complain(`Cell ${cell.reference} holds a formula.`, 'Put its value in its place: copy, paste the value.')
      else if (cell.type === 'e')
        complain(`Cell ${cell.reference} holds the error ${value}.`, 'Correct it, or empty it.')
      else if (column >= MOST_COLUMNS) {
        if (standing() !== '') complain(`Cell ${cell.reference} lies beyond every column.`, 'Empty it.')
      } else {
        const own = rows.get(line) ?? []
        rows.set(line, own)
        while (own.length < column) own.push('')
        own[column] = standing()
      }
    },
  })
  return { rows, inTheWay }
}
