import LineBreaker from 'linebreak'
import { spacesInQuantities } from '../../../shared-types/spaces-in-quantities.ts'
import { embeddingLevels, readsRightToLeft, visualOrder, withoutIsolates } from '../document/bidirectional.ts'
import { type ShapedText, type ShippedFace, typeface } from '../document/typeface.ts'
import { faceOfCharacter } from './face-of-character.ts'
import type { TextStyle } from './text-style.ts'
import { NON_JOINER, visibleText } from './visible-text.ts'

/** A stretch of text in one style; `link` names the place of the report it leads to. */
export interface Span {
  readonly text: string
  readonly style: TextStyle
  readonly link?: string | undefined
}
export type Rich = readonly Span[]

/**
 * A stretch of one line, placed: `x` and `width` in mm from the line's left end. Parts of a line follow one another as
 * they are read, which is not from left to right where a right-to-left script stands among them.
 */
export interface LinePart {
  readonly stretches: ShapedText[]
  readonly face: ShippedFace
  /** Embedding level of UAX #9: odd where the text runs from right to left. */
  readonly level: number
  readonly style: TextStyle
  readonly link: string | undefined
  readonly words: string
  readonly x: number
  readonly width: number
}
export interface TextLine {
  readonly parts: readonly LinePart[]
  readonly width: number
}

const MM_PER_POINT = 25.4 / 72

/** Width in mm of shaped text at a size. */
export const widthMm = (shaped: ShapedText, sizePt: number): number => (shaped.width / 1000) * sizePt * MM_PER_POINT

/** Width in mm of one line of plain text. */
export const measure = (text: string, style: TextStyle): number =>
  breakLines([{ text, style }], Number.POSITIVE_INFINITY)[0]?.width ?? 0

const remembered = new Map<string, readonly TextLine[]>()
/** Made with the first word longer than its line: to make one takes longer than to set a page. */
let graphemes: Intl.Segmenter | null = null
function graphemesOf(text: string): Intl.Segments {
  graphemes ??= new Intl.Segmenter('en', { granularity: 'grapheme' })
  return graphemes.segment(text)
}

/** A stretch of a span in one face and one direction. */
interface Slice extends Span {
  readonly face: ShippedFace
  readonly level: number
}
/** A stretch with its glyphs, and its width in mm. */
interface SetSlice extends Slice {
  readonly shaped: ShapedText
  readonly width: number
}

/**
 * Breaks text into lines no wider than `width` mm, after UAX #14, but never inside a number; a word longer than the line
 * is broken between grapheme clusters (UAX #29). Lines set once are remembered, so that laying out again costs little.
 */
export function breakLines(rich: Rich, width: number): readonly TextLine[] {
  let key = String(width)
  for (const { style, link, text } of rich) key += `|${nameOf(style)}${link ?? ''}:${text}`
  const known = remembered.get(key)
  if (known !== undefined) return known
  if (remembered.size > 20_000) remembered.clear()
  const filling = new Filling(width)
  fill(filling, rich)
  const lines = filling.finish()
  remembered.set(key, lines)
  return lines
}

const styleNames = new WeakMap<TextStyle, string>()
function nameOf(style: TextStyle): string {
  let name = styleNames.get(style)
  if (name === undefined) {
    name = `${style.face}${style.sizePt}${style.colour}`
    styleNames.set(style, name)
  }
  return name
}

/** Cuts spans at every place where a line may end, and fills lines with what stands between. */
function fill(filling: Filling, rich: Rich): void {
  const spans = rich.map(({ text, style, link }) => ({ text: visibleText(text, style.face), style, link }))
  const whole = spans.length === 1 && spans[0] !== undefined ? spans[0].text : spans.map(({ text }) => text).join('')
  const levels = readsRightToLeft(whole) ? embeddingLevels(whole) : null
  const hasUnseen = UNSEEN.test(whole)
  const inQuantities = spacesInQuantities(whole)
  const breaker = new LineBreaker(whole)
  let spanIndex = 0
  let inSpan = 0
  let position = 0
  for (let found = breaker.nextBreak(); found !== null; found = breaker.nextBreak()) {
    // A place where a line may end stands behind the space.
    if (inQuantities.has(found.position - 1)) continue
    const slices: Slice[] = []
    while (position < found.position) {
      const span = spans[spanIndex]
      if (span === undefined) break
      const take = Math.min(span.text.length - inSpan, found.position - position)
      if (take > 0) {
        const { style, link } = span
        const text = span.text.slice(inSpan, inSpan + take)
        if (levels === null) slices.push({ text, style, link, face: style.face, level: 0 })
        else slices.push(...runs({ text, style, link }, levels.subarray(position, position + take)))
      }
      position += take
      inSpan += take
      if (inSpan >= span.text.length) {
        spanIndex += 1
        inSpan = 0
      }
    }
    const required = found.required && slices.at(-1)?.text.endsWith('\n') === true
    filling.add((hasUnseen ? withoutUnseen(slices) : slices).map(setSlice), required)
  }
}

/** Cuts a stretch wherever face or direction changes, and spaces from words where they may come to stand apart. */
function runs(span: Span, levels: Uint8Array): Slice[] {
  const found: Slice[] = []
  let at = 0
  let kind = ''
  for (const character of span.text) {
    const level = levels[at] ?? 0
    const face = faceOfCharacter(character, span.style.face) ?? span.style.face
    const own = `${face} ${level} ${level > 0 && character === ' '}`
    const last = found.at(-1)
    if (last !== undefined && own === kind && character !== NON_JOINER)
      found[found.length - 1] = { ...last, text: last.text + character }
    else found.push({ ...span, text: character, face, level })
    kind = own
    at += character.length
  }
  return found
}

/** Marks that have done their work once lines and directions are found. */
const UNSEEN = /[\n\u200B\u200C\u2066-\u2069]/
const withoutUnseen = (slices: readonly Slice[]): Slice[] =>
  slices
    .map((slice) => ({ ...slice, text: withoutIsolates(slice.text.replace(/[\n\u200B\u200C]/g, '')) }))
    .filter(({ text }) => text !== '')

/** Fills lines one segment after another. */
class Filling {
  readonly #lines: TextLine[] = []
  #parts: { -readonly [Name in keyof LinePart]: LinePart[Name] }[] = []
  #used = 0

  constructor(readonly width: number) {}

  /** Adds what must stand on one line; a line ends after it where one is `required` to. */
  add(slices: readonly SetSlice[], required: boolean): void {
    let wide = 0
    for (const { width } of slices) wide += width
    const last = slices.at(-1)
    const trailing = last === undefined ? 0 : trailingSpace(last, last.text)
    if (this.#used > 0 && this.#used + wide - trailing > this.width) this.#end()
    if (wide - trailing > this.width) for (const slice of slices) this.#addBroken(slice)
    else for (const slice of slices) this.#append(slice)
    if (required) this.#end()
  }

  finish(): readonly TextLine[] {
    if (this.#parts.length > 0 || this.#lines.length === 0) this.#end()
    return this.#lines
  }

  #addBroken(slice: Slice): void {
    let piece = ''
    let pieceWidth = 0
    for (const { segment } of graphemesOf(slice.text)) {
      const own = setSlice({ ...slice, text: segment }).width
      if (this.#used + pieceWidth + own > this.width - 0.3 && this.#used + pieceWidth > 0) {
        if (piece !== '') this.#append(setSlice({ ...slice, text: piece }))
        this.#end()
        piece = ''
        pieceWidth = 0
      }
      piece += segment
      pieceWidth += own
    }
    if (piece !== '') this.#append(setSlice({ ...slice, text: piece }))
  }

  #append(slice: SetSlice): void {
    const { shaped, width } = slice
    const last = this.#parts.at(-1)
    if (last !== undefined && last.style === slice.style && last.link === slice.link && followsOn(last, slice)) {
      last.stretches.push(shaped)
      last.words += slice.text
      last.width += width
    } else {
      this.#parts.push({
        stretches: [shaped],
        face: slice.face,
        level: slice.level,
        style: slice.style,
        link: slice.link,
        words: slice.text,
        x: this.#used,
        width,
      })
    }
    this.#used += width
  }

  #end(): void {
    const last = this.#parts.at(-1)
    const trailing = last === undefined ? 0 : trailingSpace(last, last.words)
    this.#lines.push({ parts: inOrder(this.#parts), width: this.#used - trailing })
    this.#parts = []
    this.#used = 0
  }
}

function setSlice({ text, style, link, face, level }: Slice): SetSlice {
  const shaped = typeface(face).shape(text, level % 2 === 1)
  return { text, style, link, face, level, shaped, width: widthMm(shaped, style.sizePt) }
}

/** Whether a slice stands just to the right of what is read before it. */
const followsOn = (last: LinePart, { face, level }: Slice): boolean =>
  last.face === face && last.level === level && level % 2 === 0

/** Parts with the places they take when each direction is honoured; spaces at the end of a line stay at its end. */
function inOrder(parts: readonly LinePart[]): readonly LinePart[] {
  if (parts.every(({ level }) => level === 0)) return parts
  const end = parts.findLastIndex(({ words }) => words.trim() !== '')
  const levels = parts.map(({ level }, index) => (index > end ? 0 : level))
  const places: number[] = []
  let x = 0
  for (const index of visualOrder(levels)) {
    places[index] = x
    x += parts[index]?.width ?? 0
  }
  return parts.map((part, index) => ({ ...part, x: places[index] ?? part.x }))
}

/** Width in mm of the spaces a text ends with. */
function trailingSpace({ face, level, style }: Omit<Slice, 'text' | 'link'>, text: string): number {
  if (!text.endsWith(' ')) return 0
  const spaces = text.at(-2) === ' ' ? (/ +$/.exec(text)?.[0] ?? '') : ' '
  return widthMm(typeface(face).shape(spaces, level % 2 === 1), style.sizePt)
}
