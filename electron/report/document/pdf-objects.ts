export { PDFContext, type PDFDict, PDFHexString, type PDFObject, type PDFRef, PDFString } from 'pdf-lib'

const TWO_BYTES = 2

/** A text string as it stands in the file: UTF-16 with its byte order mark, in hexadecimal (ISO 32000-1, 7.9.2.2). */
export function textString(text: string): string {
  const bytes = Buffer.alloc((text.length + 1) * TWO_BYTES)
  bytes.write(`\uFEFF${text}`, 'utf16le')
  return `<${bytes.swap16().toString('hex').toUpperCase()}>`
}
