import { ProblemError } from '../../shared-types/problem-error.ts'
import type { ObjectWriter } from './document/object-writer.ts'
import type { StoredObject } from './layout/composer.ts'
import type { ReportContent } from './report-content.ts'

/** Pictures asked for before their turn, so that they are read while pages are laid out. */
const ASKED_AHEAD = 16

/** Pictures as the pages show them, and when the last of them is in the file. */
export interface PicturesOnTheirWay {
  readonly stored: ReadonlyMap<number, StoredObject>
  readonly written: Promise<void>
}

/**
 * Begins to write the picture of every photograph that is to be printed, bytes unchanged, one after another; few are held
 * at once. Their sizes are all the pages need, so that these are laid out meanwhile.
 */
export async function beginPictures(writer: ObjectWriter, content: ReportContent): Promise<PicturesOnTheirWay> {
  const sizes = await content.pictureSizes()
  const stored = new Map<number, StoredObject>()
  for (const { number, inReport, photograph } of content.record.exhibits) {
    const size = sizes.get(number)
    if (!inReport || photograph === null || size === undefined) continue
    const ref = writer.context.nextRef()
    stored.set(number, { name: `E${number}`, ref, width: size.widthPx, height: size.heightPx })
  }
  const written = writePictures(writer, content, stored)
  // What goes wrong is told to whoever waits for the last picture.
  written.catch(() => undefined)
  return { stored, written }
}

async function writePictures(
  writer: ObjectWriter,
  content: ReportContent,
  stored: ReadonlyMap<number, StoredObject>,
): Promise<void> {
  const wanted = [...stored]
  const coming: Promise<Uint8Array>[] = []
  for (const [index, [number, { ref, width, height }]] of wanted.entries()) {
    for (const [later] of wanted.slice(index + coming.length, index + ASKED_AHEAD)) coming.push(fetched(content, later))
    const bytes = await (coming.shift() as Promise<Uint8Array>)
    const components = jpegComponents(bytes)
    if (components !== 1 && components !== 3) {
      throw new ProblemError(
        'photograph-refused',
        `The report copy of exhibit E${number} is no grey or colour JPEG. Import the photograph again, or leave it out of the report.`,
      )
    }
    const dictionary = writer.context.obj({
      Type: 'XObject',
      Subtype: 'Image',
      Width: width,
      Height: height,
      ColorSpace: components === 1 ? 'DeviceGray' : 'DeviceRGB',
      BitsPerComponent: 8,
      Filter: 'DCTDecode',
    })
    await writer.writeStream(ref, dictionary, bytes)
  }
}

/** A picture on its way. What goes wrong is told when its turn comes, not before. */
function fetched(content: ReportContent, exhibitNumber: number): Promise<Uint8Array> {
  const picture = content.picture(exhibitNumber)
  picture.catch(() => undefined)
  return picture
}

/** Number of colour components from the frame header of a JPEG (ITU-T T.81, B.2.2); 0 when there is none. */
export function jpegComponents(bytes: Uint8Array): number {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return 0
  for (let at = 2; at + 9 < bytes.length; ) {
    if (bytes[at] !== 0xff) return 0
    const marker = bytes[at + 1] ?? 0
    const isFrame = marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc
    if (isFrame) return bytes[at + 9] ?? 0
    at += 2 + (((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0))
  }
  return 0
}
