import { zipSync } from 'fflate'

/** One table to write: its name, and rows of cells, the headings first. */
export interface TableToWrite {
  readonly name: string
  readonly rows: readonly (readonly string[])[]
  /** Lines, from 1, that are examples and not content: written in grey. */
  readonly grey: ReadonlySet<number>
}

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006'
const CONTENT = 'application/vnd.openxmlformats-officedocument.spreadsheetml'

/** Formats of cells, in the order of `styles`: text as it stands, a heading, an example. 49 keeps what is typed as text. */
const [PLAIN, HEADING, EXAMPLE] = [0, 1, 2] as const
const NARROWEST = 10
const WIDEST = 48

/** Text in XML 1.0; characters it has no place for are left out. */
const escaped = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters XML 1.0 does not allow
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll('\r', '&#13;')

/** Column as a workbook names it: 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  const before = Math.floor(column / 26) - 1
  return `${before < 0 ? '' : columnLetters(before)}${String.fromCharCode(65 + (column % 26))}`
}

const styles = `${HEAD}<styleSheet xmlns="${MAIN}"><fonts count="3"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font><font><i/><sz val="11"/><color rgb="FF767676"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="3">${[0, 1, 2].map((font) => `<xf numFmtId="49" fontId="${font}" fillId="0" borderId="0" xfId="0" applyNumberFormat="1" applyFont="1"/>`).join('')}</cellXfs></styleSheet>`

function sheetXml({ rows, grey }: TableToWrite): string {
  const widths = (rows[0] ?? []).map((_, column) => {
    const longest = rows.reduce((most, row) => Math.max(most, [...(row[column] ?? '')].length), 0)
    return Math.min(WIDEST, Math.max(NARROWEST, longest + 2))
  })
  const columns = widths
    .map((width, at) => `<col min="${at + 1}" max="${at + 1}" width="${width}" style="${PLAIN}" customWidth="1"/>`)
    .join('')
  const lines = rows.map((row, at) => {
    const line = at + 1
    const style = at === 0 ? HEADING : grey.has(line) ? EXAMPLE : PLAIN
    const cells = row.map((text, column) =>
      text === ''
        ? ''
        : `<c r="${columnLetters(column)}${line}" s="${style}" t="inlineStr"><is><t xml:space="preserve">${escaped(text)}</t></is></c>`,
    )
    return `<row r="${line}">${cells.join('')}</row>`
  })
  const pane = '<pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/>'
  return `${HEAD}<worksheet xmlns="${MAIN}"><sheetViews><sheetView workbookViewId="0">${pane}</sheetView></sheetViews><cols>${columns}</cols><sheetData>${lines.join('')}</sheetData></worksheet>`
}

/** Tables as a workbook (Office Open XML, ECMA-376): every cell as text, so that a spreadsheet changes no day and no number. */
export function writeWorkbook(tables: readonly TableToWrite[]): Uint8Array {
  const part = (xml: string) => new TextEncoder().encode(xml)
  const each = (write: (table: TableToWrite, number: number) => string) =>
    tables.map((table, at) => write(table, at + 1)).join('')
  const override = (path: string, kind: string) =>
    `<Override PartName="/xl/${path}" ContentType="${CONTENT}.${kind}+xml"/>`
  const relation = (id: string, kind: string, target: string) =>
    `<Relationship Id="${id}" Type="${RELATIONS}/${kind}" Target="${target}"/>`
  return zipSync({
    '[Content_Types].xml': part(
      `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>${override('workbook.xml', 'sheet.main')}${override('styles.xml', 'styles')}${each((_, number) => override(`worksheets/sheet${number}.xml`, 'worksheet'))}</Types>`,
    ),
    '_rels/.rels': part(
      `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${relation('rId1', 'officeDocument', 'xl/workbook.xml')}</Relationships>`,
    ),
    'xl/workbook.xml': part(
      `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheets>${each(({ name }, number) => `<sheet name="${escaped(name)}" sheetId="${number}" r:id="rId${number}"/>`)}</sheets></workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': part(
      `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${each((_, number) => relation(`rId${number}`, 'worksheet', `worksheets/sheet${number}.xml`))}${relation('rIdStyles', 'styles', 'styles.xml')}</Relationships>`,
    ),
    'xl/styles.xml': part(styles),
    ...Object.fromEntries(tables.map((table, at) => [`xl/worksheets/sheet${at + 1}.xml`, part(sheetXml(table))])),
  })
}
