import { extname } from 'node:path'
import type { Photograph } from '../../shared-types/exhibit.ts'

type MediaType = Photograph['mediaType']

const extensions: { readonly [M in MediaType]: readonly string[] } = {
  'image/jpeg': ['.jpg', '.jpeg', '.jpe', '.jfif'],
  'image/png': ['.png'],
  'image/webp': ['.webp'],
  'image/tiff': ['.tif', '.tiff'],
  'image/heic': ['.heic', '.heif', '.hif'],
}
const everyExtension: readonly string[] = Object.values(extensions).flat()
const heicBrands: readonly string[] = ['heic', 'heix', 'heim', 'heis', 'mif1', 'msf1']

const ascii = (bytes: Uint8Array, from: number, length: number): string =>
  String.fromCharCode(...bytes.subarray(from, from + length))

/**
 * What the first bytes of a file say it is: signatures of JPEG (ITU-T T.81), PNG (ISO/IEC 15948), WebP (RFC 9649),
 * TIFF 6.0 and HEIF (ISO/IEC 23008-12). Null for anything else.
 */
export function pictureKind(bytes: Uint8Array): MediaType | null {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'image/jpeg'
  if (ascii(bytes, 0, 8) === '\x89PNG\r\n\x1a\n') return 'image/png'
  if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 4) === 'WEBP') return 'image/webp'
  if (ascii(bytes, 0, 4) === 'II*\0' || ascii(bytes, 0, 4) === 'MM\0*') return 'image/tiff'
  if (ascii(bytes, 4, 4) === 'ftyp' && heicBrands.includes(ascii(bytes, 8, 4))) return 'image/heic'
  return null
}

/** True when a file's name ends as another kind of picture than its bytes are; a strange ending claims nothing. */
export function nameLies(fileName: string, kind: MediaType): boolean {
  const extension = extname(fileName).toLowerCase()
  return everyExtension.includes(extension) && !extensions[kind].includes(extension)
}

/** Name of a kind as a user knows it. */
export const kindName: { readonly [M in MediaType]: string } = {
  'image/jpeg': 'JPEG',
  'image/png': 'PNG',
  'image/webp': 'WebP',
  'image/tiff': 'TIFF',
  'image/heic': 'HEIC',
}
