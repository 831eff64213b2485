import LineBreaker from 'linebreak'
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
const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' })

/** A stretch of a span in one face and one direction. */
interface Slice extends Span {
  readonly face: ShippedFace
  readonly level: number
}
interface Segment {
  readonly slices: readonly Slice[]
  readonly required: boolean
}

/**
 * Breaks text into lines no wider than `width` mm, after UAX #14; a word longer than the line is broken between
 * grapheme clusters (UAX #29). Lines set once are remembered, so that laying out again costs little.
 */
export function breakLines(rich: Rich, width: number): readonly TextLine[] {
  const key = rich.reduce(
    (text, { style, link, text: own }) => `${text}|${style.face}${style.sizePt}${style.colour}${link ?? ''}:${own}`,
    String(width),
  )
  const known = remembered.get(key)
  if (known !== undefined) return known
  if (remembered.size > 20_000) remembered.clear()
  const filling = new Filling(width)
  for (const segment of segments(rich)) filling.add(segment)
  const lines = filling.finish()
  remembered.set(key, lines)
  return lines
}

/** Cuts spans at every place where a line may end. */
function* segments(rich: Rich): Generator<Segment> {
  const spans = rich.map((span) => ({ ...span, text: visibleText(span.text, span.style.face) }))
  const whole = spans.map(({ text }) => text).join('')
  const levels = readsRightToLeft(whole) ? embeddingLevels(whole) : null
  const breaker = new LineBreaker(whole)
  let spanIndex = 0
  let inSpan = 0
  let position = 0
  for (let found = breaker.nextBreak(); found !== null; found = breaker.nextBreak()) {
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
    yield { slices, required: found.required && slices.at(-1)?.text.endsWith('\n') === true }
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

  add({ slices, required }: Segment): void {
    const clean = slices.some(({ text }) => UNSEEN.test(text)) ? withoutUnseen(slices) : slices
    const wide = clean.reduce((sum, slice) => sum + measureClean(slice), 0)
    const trailing = trailingSpace(clean)
    if (this.#used > 0 && this.#used + wide - trailing > this.width) this.#end()
    if (wide - trailing > this.width) for (const slice of clean) this.#addBroken(slice)
    else for (const slice of clean) this.#append(slice)
    if (required) this.#end()
  }

  finish(): readonly TextLine[] {
    if (this.#parts.length > 0 || this.#lines.length === 0) this.#end()
    return this.#lines
  }

  #addBroken(slice: Slice): void {
    let piece = ''
    let pieceWidth = 0
    for (const { segment } of segmenter.segment(slice.text)) {
      const own = measureClean({ ...slice, text: segment })
      if (this.#used + pieceWidth + own > this.width - 0.3 && this.#used + pieceWidth > 0) {
        if (piece !== '') this.#append({ ...slice, text: piece })
        this.#end()
        piece = ''
        pieceWidth = 0
      }
      piece += segment
      pieceWidth += own
    }
    if (piece !== '') this.#append({ ...slice, text: piece })
  }

  #append(slice: Slice): void {
    const shaped = shape(slice)
    const width = widthMm(shaped, slice.style.sizePt)
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
    const trailing = last === undefined ? 0 : trailingSpace([{ ...last, text: last.words }])
    this.#lines.push({ parts: inOrder(this.#parts), width: this.#used - trailing })
    this.#parts = []
    this.#used = 0
  }
}

const shape = ({ text, face, level }: Slice): ShapedText => typeface(face).shape(text, level % 2 === 1)

const measureClean = (slice: Slice): number => widthMm(shape(slice), slice.style.sizePt)

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

function trailingSpace(slices: readonly Slice[]): number {
  const last = slices.at(-1)
  if (last === undefined || !last.text.endsWith(' ')) return 0
  return measureClean({ ...last, text: / +$/.exec(last.text)?.[0] ?? '' })
}
