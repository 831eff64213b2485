import { rmSync } from 'node:fs'
import sharp from 'sharp'
import { afterAll, describe, expect, it } from 'vitest'
import { lookAtPhotograph } from '../../electron/exhibits/look-at-photograph.ts'
import { cameraFile } from '../fixtures/camera-files.ts'
import { freshFolder, orientations, put, quarters, stored, uprightPixels } from './make-photographs.ts'

const folder = freshFolder()
afterAll(() => rmSync(folder, { recursive: true, force: true }))

async function looked(path: string, fileName: string) {
  const seen = await lookAtPhotograph({ path, fileName })
  if ('refused' in seen) throw new Error(seen.refused)
  return seen
}

/** Greatest difference of any channel, leaving out the pixels beside an edge between colours, which JPEG blurs. */
async function greatestDifference(jpeg: Uint8Array): Promise<number> {
  const { width, height } = quarters
  const { data, info } = await sharp(jpeg).raw().toBuffer({ resolveWithObject: true })
  expect([info.width, info.height]).toEqual([width, height])
  const wanted = uprightPixels()
  let greatest = 0
  for (let y = 4; y < height - 4; y++) {
    for (let x = 4; x < width - 4; x++) {
      if (Math.abs(x - width / 2) < 9 || Math.abs(y - height / 2) < 9) continue
      for (let channel = 0; channel < 3; channel++) {
        const at = (y * width + x) * 3 + channel
        greatest = Math.max(greatest, Math.abs((data[at] ?? 0) - (wanted[at] ?? 0)))
      }
    }
  }
  return greatest
}

describe.each(orientations)('orientation $value, $says (CIPA DC-008, tag Orientation)', (orientation) => {
  it('comes out upright in both renderings', async () => {
    const path = await put(folder, `${orientation.value}.jpg`, await stored(orientation))
    const seen = await looked(path, 'a.jpg')
    expect(seen.photograph).toMatchObject({ orientation: orientation.value, widthPx: 64, heightPx: 48 })
    expect(await greatestDifference(seen.report.bytes)).toBeLessThan(12)
    expect(await greatestDifference(seen.thumbnail.bytes)).toBeLessThan(12)
  })
})

describe('the letter F in eight camera files', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('orientation %i looks as the first does', async (value) => {
    const pixels = async (at: number) => {
      const seen = await looked(cameraFile(`orientation-${at}.jpg`), 'f.jpg')
      expect(seen.photograph.orientation).toBe(at)
      return sharp(seen.report.bytes).greyscale().resize(24, 24, { fit: 'fill' }).raw().toBuffer()
    }
    const [one, other] = await Promise.all([pixels(1), pixels(value)])
    const differences = one.map((shade, at) => Math.abs(shade - (other[at] ?? 0)))
    expect(differences.reduce((sum, next) => sum + next, 0) / differences.length).toBeLessThan(8)
  })
})

it('renderings carry no metadata and keep within their long sides', async () => {
  const seen = await looked(cameraFile('wall-turned-position.jpg'), 'w.jpg')
  expect(seen.photograph.latitude).not.toBeNull()
  for (const [rendering, long] of [
    [seen.report, 1600],
    [seen.thumbnail, 320],
  ] as const) {
    const metadata = await sharp(rendering.bytes).metadata()
    expect([metadata.exif, metadata.icc, metadata.xmp, metadata.iptc, metadata.orientation]).toEqual(
      Array(5).fill(undefined),
    )
    expect(metadata.space).toBe('srgb')
    expect(Math.max(metadata.width, metadata.height)).toBe(long)
    expect([rendering.widthPx, rendering.heightPx]).toEqual([metadata.width, metadata.height])
  }
})
