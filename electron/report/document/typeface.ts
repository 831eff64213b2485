import { readFileSync } from 'node:fs'
import { create, type Font } from '@cantoo/fontkit'
import { resourcePath } from '../../places-on-disk.ts'

/** Faces shipped in `resources/fonts`, by the name the report calls them. */
export const faceFiles = {
  light: 'SourceSans3-Light.ttf',
  text: 'SourceSans3-Regular.ttf',
  italic: 'SourceSans3-Italic.ttf',
  strong: 'SourceSans3-SemiBold.ttf',
  mono: 'SourceCodePro-Regular.ttf',
} as const
export type FaceName = keyof typeof faceFiles

/** Glyphs of one stretch of text in one face. Lengths are in thousandths of the type size. */
export interface ShapedText {
  readonly glyphs: readonly ShapedGlyph[]
  readonly width: number
}
export interface ShapedGlyph {
  readonly glyphId: number
  /** Characters the glyph stands for; empty when an earlier glyph already carries them. */
  readonly text: string
  /** Advance as the face's own table has it, and as this text wants it (kerning). */
  readonly ownAdvance: number
  readonly advance: number
  readonly shiftX: number
  readonly shiftY: number
}

/** Shaped texts remembered by one face; above this they are forgotten all at once. */
const MOST_REMEMBERED = 40_000
const FEATURES = ['kern', 'liga', 'ccmp', 'mark', 'mkmk']
/** Figures are tabular and never kerned, and a fixed-pitch face kerns nothing: such text needs no shaping. */
const FIGURES_ONLY = /^[\d \u202F.,:/]+$/
const PLAIN = /^[\x20-\x7E]+$/

/** One font file, opened once for the life of the program, with every text it ever shaped. */
export class Typeface {
  readonly font: Font
  readonly #scale: number
  readonly #fixedPitch: boolean
  readonly #remembered = new Map<string, ShapedText>()

  constructor(readonly file: string) {
    this.font = create(readFileSync(resourcePath('fonts', file))) as Font
    this.#scale = 1000 / this.font.unitsPerEm
    this.#fixedPitch = file.startsWith('SourceCodePro')
  }

  covers(codePoint: number): boolean {
    return this.font.hasGlyphForCodePoint(codePoint)
  }

  /** Thousandths of the type size for a value in the font's own units. */
  scaled(units: number): number {
    return Math.round(units * this.#scale * 1000) / 1000
  }

  /** Glyphs and width of a text whose every character the face covers. */
  shape(text: string): ShapedText {
    const known = this.#remembered.get(text)
    if (known !== undefined) return known
    if (this.#remembered.size > MOST_REMEMBERED) this.#remembered.clear()
    const shaped =
      FIGURES_ONLY.test(text) || (this.#fixedPitch && PLAIN.test(text)) ? this.#unshaped(text) : this.#shaped(text)
    this.#remembered.set(text, shaped)
    return shaped
  }

  #unshaped(text: string): ShapedText {
    const glyphs = [...text].map((character): ShapedGlyph => {
      const glyph = this.font.glyphForCodePoint(character.codePointAt(0) ?? 0)
      if (glyph === null) throw new Error(`The face ${this.file} has no glyph for ${character}.`)
      const advance = this.scaled(glyph.advanceWidth)
      return { glyphId: glyph.id, text: character, ownAdvance: advance, advance, shiftX: 0, shiftY: 0 }
    })
    return { glyphs, width: glyphs.reduce((sum, { advance }) => sum + advance, 0) }
  }

  #shaped(text: string): ShapedText {
    const run = this.font.layout(text, FEATURES)
    const characters = [...text]
    const oneToOne = run.glyphs.length === characters.length && run.direction === 'ltr'
    let width = 0
    const glyphs = run.glyphs.map((glyph, index): ShapedGlyph => {
      const position = run.positions?.[index]
      const advance = this.scaled(position?.xAdvance ?? glyph.advanceWidth)
      width += advance
      return {
        glyphId: glyph.id,
        // A face may draw two characters with one glyph, which then remembers only the first it was asked for.
        text: oneToOne ? (characters[index] ?? '') : String.fromCodePoint(...glyph.codePoints),
        ownAdvance: this.scaled(glyph.advanceWidth),
        advance,
        shiftX: this.scaled(position?.xOffset ?? 0),
        shiftY: this.scaled(position?.yOffset ?? 0),
      }
    })
    return { glyphs, width }
  }
}

const opened = new Map<FaceName, Typeface>()

/** The face of that name; its file is read when first wanted. */
export function typeface(name: FaceName): Typeface {
  const known = opened.get(name)
  if (known !== undefined) return known
  const face = new Typeface(faceFiles[name])
  opened.set(name, face)
  return face
}
