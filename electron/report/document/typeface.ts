import type { Font } from '@cantoo/fontkit'
import { resourcePath } from '../../places-on-disk.ts'
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

  /** Glyphs and width of a text whose every character the face covers. */
  shape(text: string): ShapedText {
    const known = this.#remembered.get(text)
    if (known !== undefined) return known
    if (this.#remembered.size > MOST_REMEMBERED) this.#remembered.clear()
    const shaped = this.#plain.complete && PLAIN.test(text) ? this.#shapedPlainly(text) : this.shapedByEngine(text)
    this.#remembered.set(text, shaped)
    return shaped
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
  shapedByEngine(text: string): ShapedText {
    this.#engine ??= openForShaping(this.font.bytes)
    const run = this.#engine.layout(text, FEATURES)
    let width = 0
    const glyphs = run.glyphs.map((glyph, index): ShapedGlyph => {
      const position = run.positions?.[index]
      const advance = this.scaled(position?.xAdvance ?? glyph.advanceWidth)
      width += advance
      return {
        glyphId: glyph.id,
        text: String.fromCodePoint(...glyph.codePoints),
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
