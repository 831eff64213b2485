import type { Exhibit } from '../../shared-types/exhibit.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { ObjectWriter } from './document/object-writer.ts'
import type { StoredObject } from './layout/composer.ts'
import type { ReportContent, ReportPicture } from './report-content.ts'

/** Pictures asked for before their turn, so that reading and writing go on side by side. */
const ASKED_AHEAD = 3

/** Writes the picture of every photograph that is to be printed, bytes unchanged, one after another; few are held at once. */
export async function writePictures(
  writer: ObjectWriter,
  content: ReportContent,
): Promise<ReadonlyMap<number, StoredObject>> {
  const pictures = new Map<number, StoredObject>()
  const printed = content.record.exhibits.filter(({ inReport, photograph }) => inReport && photograph !== null)
  const coming = printed.slice(0, ASKED_AHEAD).map((exhibit) => fetched(content, exhibit))
  for (const [index, exhibit] of printed.entries()) {
    const picture = (await coming.shift()) ?? null
    const later = printed[index + ASKED_AHEAD]
    if (later !== undefined) coming.push(fetched(content, later))
    if (picture === null) continue
    const components = jpegComponents(picture.bytes)
    if (components !== 1 && components !== 3) {
      throw new ProblemError(
        'photograph-refused',
        `The report copy of exhibit E${exhibit.number} is no grey or colour JPEG. Import the photograph again, or leave it out of the report.`,
      )
    }
    const ref = writer.context.nextRef()
    const dictionary = writer.context.obj({
      Type: 'XObject',
      Subtype: 'Image',
      Width: picture.widthPx,
      Height: picture.heightPx,
      ColorSpace: components === 1 ? 'DeviceGray' : 'DeviceRGB',
      BitsPerComponent: 8,
      Filter: 'DCTDecode',
    })
    await writer.writeStream(ref, dictionary, picture.bytes)
    pictures.set(exhibit.number, {
      name: `E${exhibit.number}`,
      ref,
      width: picture.widthPx,
      height: picture.heightPx,
    })
  }
  return pictures
}

/** A picture on its way. What goes wrong is told when its turn comes, not before. */
function fetched(content: ReportContent, exhibit: Exhibit): Promise<ReportPicture | null> {
  const picture = content.picture(exhibit.number)
  picture.catch(() => null)
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
