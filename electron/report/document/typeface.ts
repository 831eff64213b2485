import type { Font } from '@cantoo/fontkit'
import { resourcePath } from '../../places-on-disk.ts'
import { mirrored } from './bidirectional.ts'
import { FontFile } from './font-file.ts'
import { PlainShaping } from './plain-shaping.ts'
import { openForShaping } from './shaping-engine.ts'

/** Faces shipped in `resources/fonts`, by the name the report calls them. */
export const faceFiles = {
  light: 'SourceSans3-Light.ttf',
  text: 'SourceSans3-Regular.ttf',
  italic: 'SourceSans3-Italic.ttf',
  strong: 'SourceSans3-SemiBold.ttf',
  mono: 'SourceCodePro-Regular.ttf',
} as const
export type FaceName = keyof typeof faceFiles

/** Faces for letters the faces of the report lack; read and embedded only when a text needs them. */
export const otherScriptFiles = {
  hebrew: 'NotoSansHebrew-Regular.ttf',
  hebrewStrong: 'NotoSansHebrew-SemiBold.ttf',
  arabic: 'PlexSansArabic-Regular.ttf',
  arabicStrong: 'PlexSansArabic-SemiBold.ttf',
} as const
export const shippedFaces = { ...faceFiles, ...otherScriptFiles }
export type ShippedFace = keyof typeof shippedFaces

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
/**
 * Characters that stand one after another without regard to their neighbours but for ligatures and kerning: Latin
 * letters, figures, punctuation, arrows and signs. The fraction slash is not among them, for it changes the figures
 * around it, nor is the raised dot, which joins the L before it.
 */
const PLAIN =
  /^[\x20-\x7E\u00A0-\u00AC\u00AE-\u00B6\u00B8-\u024F\u2000-\u200A\u2010-\u2027\u202F-\u2043\u2070-\u20BF\u2100-\u27BF]*$/

/** One font file, opened once for the life of the program, with every text it ever shaped. */
export class Typeface {
  readonly font: FontFile
  readonly #scale: number
  readonly #plain: PlainShaping
  readonly #remembered = new Map<string, ShapedText>()
  #engine: Font | null = null

  constructor(readonly file: string) {
    this.font = new FontFile(resourcePath('fonts', file))
    this.#scale = 1000 / this.font.measures.unitsPerEm
    this.#plain = new PlainShaping(this.font)
  }

  covers(codePoint: number): boolean {
    return this.font.glyphOf(codePoint) !== 0
  }

  /** Thousandths of the type size for a value in the font's own units. */
  scaled(units: number): number {
    return Math.round(units * this.#scale * 1000) / 1000
  }

  /** Glyphs from left to right, and width, of a text of one direction whose every character the face covers. */
  shape(text: string, rightToLeft = false): ShapedText {
    const key = rightToLeft ? `\n${text}` : text
    const known = this.#remembered.get(key)
    if (known !== undefined) return known
    if (this.#remembered.size > MOST_REMEMBERED) this.#remembered.clear()
    const plain = this.#plain.complete && PLAIN.test(text)
    const shaped = !plain
      ? this.shapedByEngine(text, rightToLeft)
      : rightToLeft
        ? this.#shapedBackwards(text)
        : this.#shapedPlainly(text)
    this.#remembered.set(key, shaped)
    return shaped
  }

  /** Signs and spaces among words read from right to left: the last stands first, brackets are drawn the other way. */
  #shapedBackwards(text: string): ShapedText {
    const { glyphs, width } = this.#shapedPlainly([...text].reverse().map(mirrored).join(''))
    return { glyphs: glyphs.map((glyph) => ({ ...glyph, text: mirrored(glyph.text) })), width }
  }

  #shapedPlainly(text: string): ShapedText {
    const joined = this.#plain.joined(Array.from(text, (character) => this.font.glyphOf(character.charCodeAt(0))))
    const glyphs: ShapedGlyph[] = []
    let width = 0
    let at = 0
    for (const [index, { glyphId, replaces }] of joined.entries()) {
      const own = this.font.advanceOf(glyphId)
      const next = joined[index + 1]
      const ownAdvance = this.scaled(own)
      const advance = next === undefined ? ownAdvance : this.scaled(own + this.#plain.kerning(glyphId, next.glyphId))
      width += advance
      glyphs.push({ glyphId, text: text.slice(at, at + replaces), ownAdvance, advance, shiftX: 0, shiftY: 0 })
      at += replaces
    }
    return { glyphs, width }
  }

  /** The same by the whole shaping engine, which knows every script and every table. */
  shapedByEngine(text: string, rightToLeft = false): ShapedText {
    this.#engine ??= openForShaping(this.font.bytes)
    const run = this.#engine.layout(text, FEATURES, undefined, undefined, rightToLeft ? 'rtl' : 'ltr')
    let width = 0
    const glyphs = run.glyphs.map((glyph, index): ShapedGlyph => {
      const position = run.positions?.[index]
      const advance = this.scaled(position?.xAdvance ?? glyph.advanceWidth)
      width += advance
      return {
        glyphId: glyph.id,
        // Programs that copy text take the characters of one glyph from left to right, like the glyphs themselves.
        text: String.fromCodePoint(...(rightToLeft ? glyph.codePoints.toReversed() : glyph.codePoints)),
        ownAdvance: this.scaled(glyph.advanceWidth),
        advance,
        shiftX: this.scaled(position?.xOffset ?? 0),
        shiftY: this.scaled(position?.yOffset ?? 0),
      }
    })
    return { glyphs, width }
  }
}

const opened = new Map<ShippedFace, Typeface>()

/** The face of that name; its file is read when first wanted. */
export function typeface(name: ShippedFace): Typeface {
  const known = opened.get(name)
  if (known !== undefined) return known
  const face = new Typeface(shippedFaces[name])
  opened.set(name, face)
  return face
}
