import { readFile } from 'node:fs/promises'
import sharp, { type Metadata, type Sharp } from 'sharp'
import type { Photograph } from '../../shared-types/exhibit.ts'
import { type CameraWords, cameraWords } from './camera-words.ts'
import {
  MOST_PIXELS,
  type PhotographSeen,
  type PhotographWork,
  RENDERING_QUALITY,
  REPORT_PX,
  type Rendering,
  THUMBNAIL_PX,
} from './photograph-work.ts'
import { kindName, nameLies, pictureKind } from './picture-kind.ts'

type MediaType = Photograph['mediaType']

const formats: { readonly [M in MediaType]: string } = {
  'image/jpeg': 'jpeg',
  'image/png': 'png',
  'image/webp': 'webp',
  'image/tiff': 'tiff',
  'image/heic': 'heif',
}

/** Stands before the TIFF structure in a JPEG (CIPA DC-008, 4.7.2); a PNG goes without. */
const EXIF_HEADER = 'Exif\0\0'

/**
 * Looks at one photograph: what it is, what its camera says, and both renderings, upright, in sRGB and without
 * metadata. The picture is decoded once; the thumbnail is made from the report rendering.
 */
export async function lookAtPhotograph({ path, fileName }: PhotographWork): Promise<PhotographSeen> {
  const bytes = await readFile(path)
  const kind = pictureKind(bytes)
  if (kind === null) {
    return { refused: 'It is no photograph that can be taken in. Save it as JPEG, PNG, WebP, TIFF or HEIC.' }
  }
  if (nameLies(fileName, kind)) {
    return { refused: `Its name says another kind of picture, but it is a ${kindName[kind]}. Rename it as what it is.` }
  }
  try {
    return await seen(bytes, kind, fileName)
  } catch (fault) {
    return { refused: inWords(fault, kind) }
  }
}

async function seen(bytes: Buffer, kind: MediaType, fileName: string): Promise<PhotographSeen> {
  const picture = sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'truncated', sequentialRead: true })
  const metadata = await picture.metadata()
  if (metadata.format !== formats[kind]) throw new Error(`Read as ${metadata.format}.`)
  const words = await wordsOf(metadata, bytes, kind)
  const upright = await picture
    .autoOrient()
    .resize({ width: REPORT_PX, height: REPORT_PX, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true })
  const { width, height, channels } = upright.info
  const raw = () => sharp(upright.data, { raw: { width, height, channels } })
  const report = await encoded(raw())
  const thumbnail = await encoded(
    raw().resize({ width: THUMBNAIL_PX, height: THUMBNAIL_PX, fit: 'inside', withoutEnlargement: true }),
  )
  const orientation = metadata.orientation ?? 1
  const lying = orientation >= 5
  return {
    photograph: {
      fileName,
      mediaType: kind,
      byteLength: bytes.length,
      widthPx: lying ? metadata.height : metadata.width,
      heightPx: lying ? metadata.width : metadata.height,
      orientation,
      ...words,
    },
    thumbnail,
    report,
  }
}

async function encoded(picture: Sharp): Promise<Rendering> {
  const { data, info } = await picture
    .jpeg({ quality: RENDERING_QUALITY, optimiseCoding: false })
    .toBuffer({ resolveWithObject: true })
  return { bytes: data, widthPx: info.width, heightPx: info.height }
}

function wordsOf(metadata: Metadata, bytes: Buffer, kind: MediaType): Promise<CameraWords> {
  if (kind === 'image/tiff') return cameraWords(bytes)
  const exif = metadata.exif ?? Buffer.alloc(0)
  const headed = exif.toString('latin1', 0, EXIF_HEADER.length) === EXIF_HEADER
  return cameraWords(headed ? exif.subarray(EXIF_HEADER.length) : exif)
}

/** Why a picture could not be decoded, and what to do; the library's own words only choose between causes. */
function inWords(fault: unknown, kind: MediaType): string {
  const words = fault instanceof Error ? fault.message : ''
  if (/pixel limit/i.test(words)) {
    return `It has more than ${MOST_PIXELS / 1_000_000} million pixels. Save it smaller, and keep the original beside the record.`
  }
  if (kind === 'image/heic')
    return 'This HEIC picture cannot be read on this machine. Export it as JPEG from the camera or telephone.'
  if (/premature end|truncated|not enough data|unexpected end/i.test(words)) {
    return 'It breaks off before its end. Copy it from the camera again.'
  }
  return `It is damaged and cannot be read as a ${kindName[kind]}. Copy it from the camera again.`
}
