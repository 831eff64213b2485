import sharp from 'sharp'

/** A pixel differs when one of its colours is this far off, of 255: beyond anti-aliasing and the palette of a reference. */
const FAR = 48
/** A picture is compared in squares of this side, px, so that a small change is not lost in a large page. */
const SQUARE_PX = 24
/**
 * Share of a square's pixels that may differ. Of 70 pictures taken twice with one browser, 69 differed in no pixel
 * and one in a single pixel of a square; one figure of running text that reads otherwise changes more than this.
 */
const SHARE_OF_SQUARE = 0.03

/** A place of a picture that is not as it was: its corner in px, and the share of its pixels that differ. */
export interface ChangedSquare {
  readonly x: number
  readonly y: number
  readonly share: number
}

const rawOf = (picture: Buffer) => sharp(picture).removeAlpha().raw().toBuffer({ resolveWithObject: true })

/** A page's picture as references are kept: few colours, and a large screen's at half its size. */
export async function asKept(picture: Buffer, half: boolean): Promise<Buffer> {
  return sharp(await asCompared(picture, half))
    .png({ palette: true, colours: 64, dither: 0, effort: 10, compressionLevel: 9 })
    .toBuffer()
}

/** A page's picture at the size in which it is compared. */
export async function asCompared(picture: Buffer, half: boolean): Promise<Buffer> {
  if (!half) return picture
  const { width } = await sharp(picture).metadata()
  return sharp(picture)
    .resize({ width: Math.round(width / 2), kernel: 'cubic' })
    .png()
    .toBuffer()
}

/** The squares in which two pictures of one size differ; a picture of another size is one changed square. */
export async function changedSquares(reference: Buffer, now: Buffer): Promise<readonly ChangedSquare[]> {
  const [before, after] = await Promise.all([rawOf(reference), rawOf(now)])
  const { width, height } = before.info
  if (after.info.width !== width || after.info.height !== height) return [{ x: 0, y: 0, share: 1 }]
  const across = Math.ceil(width / SQUARE_PX)
  const differing = new Uint16Array(across * Math.ceil(height / SQUARE_PX))
  for (let pixel = 0; pixel < width * height; pixel++) {
    const at = pixel * 3
    const off = Math.max(
      Math.abs((before.data[at] ?? 0) - (after.data[at] ?? 0)),
      Math.abs((before.data[at + 1] ?? 0) - (after.data[at + 1] ?? 0)),
      Math.abs((before.data[at + 2] ?? 0) - (after.data[at + 2] ?? 0)),
    )
    if (off <= FAR) continue
    const square = Math.floor(Math.floor(pixel / width) / SQUARE_PX) * across + Math.floor((pixel % width) / SQUARE_PX)
    differing[square] = (differing[square] ?? 0) + 1
  }
  return [...differing].flatMap((count, square) => {
    const share = count / SQUARE_PX ** 2
    if (share <= SHARE_OF_SQUARE) return []
    return [{ x: (square % across) * SQUARE_PX, y: Math.floor(square / across) * SQUARE_PX, share }]
  })
}
