import { execFileSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Writable } from 'node:stream'
import { finished } from 'node:stream/promises'
import { create, type Font } from '@cantoo/fontkit'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { ObjectWriter } from '../../electron/report/document/object-writer.ts'
import { ReportDocument } from '../../electron/report/document/report-document.ts'
import { srgbProfile } from '../../electron/report/document/srgb-profile.ts'
import { type ShapedText, type ShippedFace, shippedFaces, typeface } from '../../electron/report/document/typeface.ts'
import { has } from './composing.ts'

const LINE = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ abcdefghijklmnopqrstuvwxyz 0123456789 éÉüßøčő £€µ°²³ ±−×≤≥→“”’–…'
const HEBREW = 'אבגדהוזחטיכךלמםנןסעפףצץקרשת־'
const ARABIC = 'ابتثجحخ دذرزسشص ضطظعغفق كلمنهوي ءآأؤإئىة پچژگ لا ٠١٢٣٤٥٦٧٨٩ ،؛؟'
const SIZE_PT = 20
const SCALE = 3

/** A line of the letters a face is there for. */
function lineIn(name: ShippedFace): ShapedText {
  const face = typeface(name)
  if (name.startsWith('hebrew')) return face.shape(HEBREW, true)
  return name.startsWith('arabic') ? face.shape(ARABIC, true) : face.shape(LINE)
}

/** Ink of a picture in columns a point wide: the share of dark pixels in each. */
async function inkColumns(picture: Buffer): Promise<number[]> {
  const { data, info } = await sharp(picture).greyscale().raw().toBuffer({ resolveWithObject: true })
  const columns = Math.floor(info.width / SCALE)
  return Array.from({ length: columns }, (_, column) => {
    let ink = 0
    for (let y = 0; y < info.height; y++) {
      for (let x = column * SCALE; x < (column + 1) * SCALE; x++) ink += 255 - (data[y * info.width + x] ?? 255)
    }
    return ink / (255 * info.height * SCALE)
  })
}

/** The line as the face's own outlines draw it, by an SVG renderer that knows nothing of PDF. */
async function fromOutlines(name: ShippedFace, width: number, height: number, baseline: number): Promise<Buffer> {
  const face = typeface(name)
  const outlines = create(face.font.bytes) as Font
  let x = 10
  const paths = lineIn(name).glyphs.map((glyph) => {
    const path = outlines.getGlyph(glyph.glyphId)?.path.toSVG() ?? ''
    const scale = SIZE_PT / outlines.unitsPerEm
    const placed = `<path transform="translate(${x} ${baseline}) scale(${scale} ${-scale})" d="${path}"/>`
    x += (glyph.advance / 1000) * SIZE_PT
    return placed
  })
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width * SCALE}" height="${height * SCALE}" viewBox="0 0 ${width} ${height}"><rect width="100%" height="100%" fill="#fff"/>${paths.join('')}</svg>`
  return sharp(Buffer.from(svg)).png().toBuffer()
}

describe.runIf(has('pdftoppm'))('every glyph is really drawn', () => {
  test.each(Object.keys(shippedFaces) as ShippedFace[])('in the face %s, as its own outlines are', async (name) => {
    const chunks: Buffer[] = []
    const output = new Writable({
      write(chunk: Buffer, _encoding, done) {
        chunks.push(Buffer.from(chunk))
        done()
      },
    })
    const writer = new ObjectWriter(output)
    await writer.begin()
    const [width, height, baseline] = [1200, 40, 28]
    const mm = 25.4 / 72
    const document = new ReportDocument(writer, width * mm, height * mm)
    const page = document.addPage()
    page.text(document.face(name), [lineIn(name)], 10 * mm, baseline * mm, SIZE_PT, '#000000')
    const { catalog, information } = await document.write({
      title: 't',
      author: 'a',
      subject: 's',
      language: 'en-GB',
      issuedAt: '2026-01-01T00:00:00.000Z',
    })
    await writer.finish(catalog, information)
    output.end()
    await finished(output)
    const path = join(mkdtempSync(join(tmpdir(), 'glyphs-')), 'line')
    writeFileSync(`${path}.pdf`, Buffer.concat(chunks))
    execFileSync('pdftoppm', ['-r', String(72 * SCALE), '-png', '-singlefile', `${path}.pdf`, path])
    const seen = await inkColumns(await sharp(`${path}.png`).toBuffer())
    const expected = await inkColumns(await fromOutlines(name, width, height, baseline))
    // Two renderers smooth and hint differently; a letter that is missing leaves no ink where its own should be.
    let x = 10
    for (const { advance, text } of lineIn(name).glyphs) {
      const [from, to] = [Math.round(x), Math.round(x + (advance / 1000) * SIZE_PT)]
      x += (advance / 1000) * SIZE_PT
      const ink = (columns: readonly number[]) => columns.slice(from, to).reduce((sum, part) => sum + part, 0)
      if (ink(expected) < 0.05) continue
      expect(ink(seen) / ink(expected), text).toBeGreaterThan(0.7)
      expect(ink(seen) / ink(expected), text).toBeLessThan(1.4)
    }
  })
})

test('the profile is an sRGB profile: a picture that carries it converts to sRGB unchanged', async () => {
  const profile = Buffer.from(srgbProfile())
  expect(profile.subarray(36, 40).toString('latin1')).toBe('acsp')
  expect(profile.readUInt32BE(0)).toBe(profile.length)
  const path = join(mkdtempSync(join(tmpdir(), 'profile-')), 'own.icc')
  writeFileSync(path, profile)
  const colours = Buffer.from(Array.from({ length: 256 * 3 }, (_, index) => (index * 37) % 256))
  // Converted by lcms2, inside libvips, from its own sRGB to the profile.
  const converted = await sharp(colours, { raw: { width: 256, height: 1, channels: 3 } })
    .withIccProfile(path)
    .png()
    .toBuffer()
  const values = await sharp(converted).raw().toBuffer()
  const worst = Math.max(...[...colours].map((value, index) => Math.abs(value - (values[index] ?? 0))))
  expect(worst).toBeLessThanOrEqual(1)
})
