import { type UnzipFileInfo, unzipSync } from 'fflate'

/** A workbook is looked at only up to this length, as it lies on disk. */
export const MOST_WORKBOOK_BYTES = 8 * 1024 * 1024
/** Parts of it are expanded only up to this length together: a few kilobytes can be packed to expand to anything. */
const MOST_EXPANDED_BYTES = 64 * 1024 * 1024

/** Why a workbook cannot be opened, and what to do. */
export class WorkbookFault extends Error {
  constructor(
    readonly what: string,
    readonly cure: string,
  ) {
    super(what)
    this.name = 'WorkbookFault'
  }
}

/** Says how long a workbook is against what one may have. */
export const tooLongAWorkbook = (byteLength: number): WorkbookFault =>
  new WorkbookFault(
    `It is ${Math.ceil(byteLength / 1e6)} MB long; a workbook of a sheet has ${MOST_WORKBOOK_BYTES / 1024 / 1024} MiB at most.`,
    'Take pictures out of it, or divide the sheet into several that import each other.',
  )

/** Whether a file is a zip archive, as every workbook of this form is (APPNOTE 4.3.7: local file header). */
export const isZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04

/** Parts that say what stands in cells (ECMA-376 part 1, 12.3); pictures, themes and the like are never expanded. */
const wanted =
  /^(\[Content_Types\]\.xml|xl\/(workbook|sharedStrings|styles)\.xml|xl\/_rels\/workbook\.xml\.rels|xl\/worksheets\/[^/]+\.xml)$/i

/**
 * The parts of a workbook that are wanted, by name, as text.
 * @throws WorkbookFault for what is too long, before it is expanded, and for what is no workbook.
 */
export function workbookParts(bytes: Uint8Array): ReadonlyMap<string, string> {
  if (bytes.byteLength > MOST_WORKBOOK_BYTES) throw tooLongAWorkbook(bytes.byteLength)
  let expanded = 0
  const filter = ({ name, originalSize }: UnzipFileInfo): boolean => {
    if (!wanted.test(name)) return false
    expanded += originalSize
    if (expanded <= MOST_EXPANDED_BYTES) return true
    const found = `Unpacked it would be more than ${MOST_EXPANDED_BYTES / 1024 / 1024} MiB.`
    throw new WorkbookFault(found, 'Save a new workbook with the tables of this sheet alone.')
  }
  const decoder = new TextDecoder('utf-8')
  try {
    const parts = unzipSync(bytes, { filter })
    return new Map(Object.entries(parts).map(([name, part]) => [name, decoder.decode(part)]))
  } catch (fault) {
    if (fault instanceof WorkbookFault) throw fault
    throw new WorkbookFault('It is no workbook, or it is damaged.', 'Save it anew as .xlsx and choose it again.')
  }
}
