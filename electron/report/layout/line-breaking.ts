import LineBreaker from 'linebreak'
import { type ShapedText, typeface } from '../document/typeface.ts'
import type { TextStyle } from './text-style.ts'
import { visibleText } from './visible-text.ts'

/** A stretch of text in one style; `link` names the place of the report it leads to. */
export interface Span {
  readonly text: string
  readonly style: TextStyle
  readonly link?: string | undefined
}
export type Rich = readonly Span[]

/** A stretch of one line, placed: `x` and `width` in mm from the line's left end. */
export interface LinePart {
  readonly stretches: ShapedText[]
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
  widthMm(typeface(style.face).shape(visibleText(text, style.face)), style.sizePt)

const remembered = new Map<string, readonly TextLine[]>()
const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' })

interface Segment {
  readonly slices: readonly Span[]
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
  const breaker = new LineBreaker(spans.map(({ text }) => text).join(''))
  let spanIndex = 0
  let inSpan = 0
  let position = 0
  for (let found = breaker.nextBreak(); found !== null; found = breaker.nextBreak()) {
    const slices: Span[] = []
    while (position < found.position) {
      const span = spans[spanIndex]
      if (span === undefined) break
      const take = Math.min(span.text.length - inSpan, found.position - position)
      if (take > 0) slices.push({ ...span, text: span.text.slice(inSpan, inSpan + take) })
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

/** Fills lines one segment after another. */
class Filling {
  readonly #lines: TextLine[] = []
  #parts: LinePart[] = []
  #used = 0

  constructor(readonly width: number) {}

  add({ slices, required }: Segment): void {
    const clean = slices.map((slice) => ({ ...slice, text: slice.text.replace(/[\n\u200B]/g, '') }))
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

  #addBroken(slice: Span): void {
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

  #append(slice: Span): void {
    if (slice.text === '') return
    const shaped = typeface(slice.style.face).shape(slice.text)
    const width = widthMm(shaped, slice.style.sizePt)
    const last = this.#parts.at(-1)
    if (last !== undefined && last.style === slice.style && last.link === slice.link) {
      last.stretches.push(shaped)
      this.#parts[this.#parts.length - 1] = {
        ...last,
        words: last.words + slice.text,
        width: last.width + width,
      }
    } else {
      this.#parts.push({
        stretches: [shaped],
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
    const trailing = last === undefined ? 0 : trailingSpace([{ text: last.words, style: last.style }])
    this.#lines.push({ parts: this.#parts, width: this.#used - trailing })
    this.#parts = []
    this.#used = 0
  }
}

const measureClean = ({ text, style }: Span): number => widthMm(typeface(style.face).shape(text), style.sizePt)

function trailingSpace(slices: readonly Span[]): number {
  const last = slices.at(-1)
  const spaces = last === undefined ? '' : (/ +$/.exec(last.text)?.[0] ?? '')
  return last === undefined || spaces === '' ? 0 : measureClean({ ...last, text: spaces })
}
