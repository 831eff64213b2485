import { mkdtempSync } from 'node:fs'
import { writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'

export const freshFolder = (): string => mkdtempSync(join(tmpdir(), 'photographs-'))

/** Four quarters of plain colour: red, green / blue, white, as the upright picture shows them. */
export const quarters = { width: 64, height: 48, topLeft: [255, 0, 0], topRight: [0, 255, 0], bottomLeft: [0, 0, 255] }

/** Raw pixels of the upright picture, three bytes each. */
export function uprightPixels(): Uint8Array {
  const { width, height } = quarters
  const pixels = new Uint8Array(width * height * 3)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const left = x < width / 2
      const colour =
        y < height / 2 ? (left ? quarters.topLeft : quarters.topRight) : left ? quarters.bottomLeft : [255, 255, 255]
      pixels.set(colour, (y * width + x) * 3)
    }
  }
  return pixels
}

/**
 * Where row 0 and column 0 of the stored picture lie in the upright one: CIPA DC-008-2019 (Exif 2.32), 4.6.4 A,
 * tag Orientation. Answers the upright pixel that is stored at (row, column).
 */
export const orientations: readonly {
  readonly value: number
  readonly says: string
  readonly turned: boolean
  upright(column: number, row: number, width: number, height: number): readonly [number, number]
}[] = [
  { value: 1, says: 'row 0 top, column 0 left', turned: false, upright: (c, r) => [c, r] },
  { value: 2, says: 'row 0 top, column 0 right', turned: false, upright: (c, r, w) => [w - 1 - c, r] },
  { value: 3, says: 'row 0 bottom, column 0 right', turned: false, upright: (c, r, w, h) => [w - 1 - c, h - 1 - r] },
  { value: 4, says: 'row 0 bottom, column 0 left', turned: false, upright: (c, r, _, h) => [c, h - 1 - r] },
  { value: 5, says: 'row 0 left, column 0 top', turned: true, upright: (c, r) => [r, c] },
  { value: 6, says: 'row 0 right, column 0 top', turned: true, upright: (c, r, w) => [w - 1 - r, c] },
  { value: 7, says: 'row 0 right, column 0 bottom', turned: true, upright: (c, r, w, h) => [w - 1 - r, h - 1 - c] },
  { value: 8, says: 'row 0 left, column 0 bottom', turned: true, upright: (c, r, _, h) => [r, h - 1 - c] },
]

/** The upright picture as a camera held in this orientation would store it, with its EXIF. */
export async function stored(orientation: (typeof orientations)[number]): Promise<Buffer> {
  const { width, height } = quarters
  const upright = uprightPixels()
  const [storedWidth, storedHeight] = orientation.turned ? [height, width] : [width, height]
  const pixels = new Uint8Array(upright.length)
  for (let row = 0; row < storedHeight; row++) {
    for (let column = 0; column < storedWidth; column++) {
      const [x, y] = orientation.upright(column, row, width, height)
      pixels.set(upright.subarray((y * width + x) * 3, (y * width + x) * 3 + 3), (row * storedWidth + column) * 3)
    }
  }
  return sharp(pixels, { raw: { width: storedWidth, height: storedHeight, channels: 3 } })
    .jpeg({ quality: 95, chromaSubsampling: '4:4:4' })
    .withMetadata({ orientation: orientation.value })
    .toBuffer()
}

/** A grey TIFF of 4 by 2 pixels with Make, Model, DateTime and Orientation 6, written field by field (TIFF 6.0, section 2). */
export function tiffWithWords(): Buffer {
  const words = ['Fenland', 'Plate 2', '2026:05:14 10:42:16'].map((word) => Buffer.from(`${word}\0`))
  const entries: [tag: number, type: number, count: number, value: number][] = [
    [256, 3, 1, 4],
    [257, 3, 1, 2],
    [258, 3, 1, 8],
    [259, 3, 1, 1],
    [262, 3, 1, 1],
    [271, 2, 8, 0],
    [272, 2, 8, 0],
    [273, 4, 1, 0],
    [274, 3, 1, 6],
    [277, 3, 1, 1],
    [278, 3, 1, 2],
    [279, 4, 1, 8],
    [306, 2, 20, 0],
  ]
  let at = 8 + 2 + entries.length * 12 + 4
  const place = (length: number) => {
    at += length
    return at - length
  }
  const placed = new Map([
    [271, place(8)],
    [272, place(8)],
    [306, place(20)],
    [273, place(8)],
  ])
  const head = Buffer.alloc(8 + 2 + entries.length * 12 + 4)
  head.write('II*\0', 'latin1')
  head.writeUInt32LE(8, 4)
  head.writeUInt16LE(entries.length, 8)
  for (const [index, [tag, type, count, value]] of entries.entries()) {
    const from = 10 + index * 12
    head.writeUInt16LE(tag, from)
    head.writeUInt16LE(type, from + 2)
    head.writeUInt32LE(count, from + 4)
    head.writeUInt32LE(placed.get(tag) ?? value, from + 8)
  }
  return Buffer.concat([head, ...words, Buffer.alloc(8, 0x80)])
}

/** A plain grey picture of one kind, unlike every other shade. */
export const grey = (shade: number, width = 400, height = 300) =>
  sharp({ create: { width, height, channels: 3, background: { r: shade, g: shade, b: shade } } })

export async function put(folder: string, name: string, bytes: Uint8Array): Promise<string> {
  const path = join(folder, name)
  await writeFile(path, bytes)
  return path
}
