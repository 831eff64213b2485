import type { PageCanvas } from '../document/page-canvas.ts'
import type { ReportDocument } from '../document/report-document.ts'
import { pageBeginnings, type Unit } from './page-breaking.ts'
import { LINE_MM, type PageGeometry } from './page-geometry.ts'

/** What stands on whole lines of the grid and is never split. */
export interface Piece {
  readonly lines: number
  draw(page: PageCanvas, topMm: number): void
  /** Stays on the page of the piece after it. */
  readonly keep?: boolean
  /** Empty space, left out at the top of a page. */
  readonly gap?: boolean
  /** What is set above this piece when a page ends just before it: a table's head again. */
  readonly onBreak?: () => readonly Piece[]
}

/** Pieces that stay together. */
interface Group extends Unit {
  readonly pieces: readonly Piece[]
  /** The section it belongs to, as the head of a page names it. */
  readonly section: string
}

export const gap = (lines: number, keep = false): Piece => ({ lines, gap: true, keep, draw: () => {} })

/** Empty lines above the head of a section that follows on a page. */
const ABOVE_SECTION_LINES = 2
/** Of a group taller than a page, so many lines stay together at its beginning. */
const TOGETHER_IN_TALL = 12

/**
 * Sets pieces down the pages, keeping together what belongs together. Pieces wait until all are known or somebody asks
 * how much room is left; only then is it chosen where pages end, and only then are they drawn.
 */
export class Flow {
  page: PageCanvas
  line = 0
  #waiting: Group[] = []
  #held: Piece[] = []
  #headLines = 0
  #opensPage = false
  #section = ''
  readonly #repeated = new Map<() => readonly Piece[], number>()

  constructor(
    readonly document: ReportDocument,
    readonly geometry: PageGeometry,
    private readonly furnish: (page: PageCanvas, section: string) => void,
  ) {
    this.page = document.addPage()
    furnish(this.page, '')
  }

  get topMm(): number {
    return this.geometry.topMm + this.line * LINE_MM
  }

  /** Lines free for what is placed next; draws what waits. */
  get linesLeft(): number {
    this.draw()
    const atTop = this.#opensPage || this.line === 0
    return this.geometry.lines - (atTop ? 0 : this.line) - linesOf(this.#held, atTop)
  }

  /** What is placed next begins a page. */
  newPage(): void {
    this.#opensPage = true
  }

  /** Opens a section, its head above what is placed next. */
  open(section: string, head: Piece): void {
    this.#section = section
    this.#headLines += ABOVE_SECTION_LINES + head.lines
    this.#held.push(gap(ABOVE_SECTION_LINES), { ...head, keep: true })
  }

  place(pieces: readonly Piece[]): void {
    const all = [...this.#held, ...pieces]
    this.#held = []
    for (let at = 0; at < all.length; ) {
      let end = at + 1
      // Empty lines belong to what stands below them: a page never begins or ends with them alone.
      while (end < all.length && (all[end - 1]?.keep === true || all.slice(at, end).every(isGap))) end += 1
      const group = all.slice(at, end)
      if (end === all.length && group.every(isGap)) this.#held = group
      else for (const part of withinPage(group, this.geometry.lines - this.#linesRepeated(group))) this.#wait(part)
      at = end
    }
  }

  /** Draws what waits. */
  draw(): void {
    for (const _ of this.pages());
  }

  /** Draws what waits, page by page; turns to the caller whenever one is full. */
  *pages(): Generator<void> {
    const groups = this.#waiting
    this.#waiting = []
    const beginnings = new Set(pageBeginnings(groups, this.geometry.lines, this.line, this.#opensPage))
    for (const [index, { pieces, section }] of groups.entries()) {
      if (beginnings.has(index) && this.line > 0) {
        yield
        this.page = this.document.addPage()
        this.line = 0
        this.furnish(this.page, section)
        for (const piece of repeatedAbove(pieces)?.() ?? []) this.#drawPiece(piece)
      }
      for (const piece of pieces) this.#drawPiece(piece)
    }
  }

  #drawPiece(piece: Piece): void {
    if (piece.gap === true && this.line === 0) return
    piece.draw(this.page, this.topMm)
    this.line += piece.lines
  }

  #wait(pieces: readonly Piece[]): void {
    this.#waiting.push({
      pieces,
      lines: linesOf(pieces, false),
      linesAtTop: linesOf(pieces, true) + this.#linesRepeated(pieces),
      headLines: this.#headLines,
      opensPage: this.#opensPage,
      runsOn: repeatedAbove(pieces) !== undefined,
      section: this.#section,
    })
    this.#headLines = 0
    this.#opensPage = false
  }

  #linesRepeated(pieces: readonly Piece[]): number {
    const repeated = repeatedAbove(pieces)
    if (repeated === undefined) return 0
    const known = this.#repeated.get(repeated) ?? linesOf(repeated(), false)
    this.#repeated.set(repeated, known)
    return known
  }
}

const isGap = (piece: Piece): boolean => piece.gap === true

/** What is set again above pieces that begin a page. */
const repeatedAbove = (pieces: readonly Piece[]): (() => readonly Piece[]) | undefined =>
  pieces.find((piece) => !isGap(piece))?.onBreak

function linesOf(pieces: readonly Piece[], atTop: boolean): number {
  let lines = 0
  for (const piece of pieces) if (!(atTop && lines === 0 && isGap(piece))) lines += piece.lines
  return lines
}

/** A group taller than a page cannot be kept whole: its first lines and its last two pieces are. */
function withinPage(group: readonly Piece[], capacity: number): readonly (readonly Piece[])[] {
  if (linesOf(group, true) <= capacity) return [group]
  const parts: Piece[][] = [[]]
  for (const [index, piece] of group.entries()) {
    const first = parts.length === 1 && linesOf(parts[0] ?? [], true) < TOGETHER_IN_TALL
    const last = index === group.length - 1 && piece.lines < TOGETHER_IN_TALL
    if (first || last) parts.at(-1)?.push(piece)
    else parts.push([piece])
  }
  return parts
}
