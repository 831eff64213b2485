import { SaxesParser } from 'saxes'
import { WorkbookFault } from './workbook-parts.ts'

/** An element as it begins: its name without prefix, and its attributes. */
export interface XmlElement {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
}

interface Reader {
  readonly opens: (element: XmlElement) => void
  readonly closes?: (name: string) => void
  readonly text?: (text: string) => void
}

const withoutPrefix = (name: string): string => name.slice(name.indexOf(':') + 1)

/** Goes through a part element by element. @throws WorkbookFault where it is not well formed; declared entities are not expanded. */
export function readXml(text: string, { opens, closes, text: said }: Reader): void {
  const parser = new SaxesParser()
  parser.on('opentag', ({ name, attributes }) => {
    opens({ name: withoutPrefix(name), attributes: attributes as Record<string, string> })
  })
  parser.on('closetag', ({ name }) => closes?.(withoutPrefix(name)))
  parser.on('text', (words) => said?.(words))
  parser.on('cdata', (words) => said?.(words))
  parser.on('error', () => {
    throw new WorkbookFault('A part of it is damaged.', 'Save it anew as .xlsx and choose it again.')
  })
  parser.write(text).close()
}
