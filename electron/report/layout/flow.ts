import type { PageCanvas } from '../document/page-canvas.ts'
import type { ReportDocument } from '../document/report-document.ts'
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

export const gap = (lines: number, keep = false): Piece => ({ lines, gap: true, keep, draw: () => {} })

/** Sets pieces down the pages, keeping together what belongs together. */
export class Flow {
  page: PageCanvas
  line = 0

  constructor(
    readonly document: ReportDocument,
    readonly geometry: PageGeometry,
    private readonly furnish: (page: PageCanvas) => void,
  ) {
    this.page = document.addPage()
  }

  get topMm(): number {
    return this.geometry.topMm + this.line * LINE_MM
  }

  get linesLeft(): number {
    return this.geometry.lines - this.line
  }

  newPage(): void {
    this.page = this.document.addPage()
    this.line = 0
    this.furnish(this.page)
  }

  place(pieces: readonly Piece[]): void {
    for (let at = 0; at < pieces.length; ) {
      let end = at + 1
      while (end < pieces.length && pieces[end - 1]?.keep === true) end += 1
      this.#placeTogether(pieces.slice(at, end))
      at = end
    }
  }

  #placeTogether(group: readonly Piece[]): void {
    const lines = group.reduce((sum, piece) => sum + piece.lines, 0)
    if (lines > this.linesLeft && this.line > 0) this.#breakBefore(group)
    for (const piece of group) {
      // A group taller than a page cannot be kept whole.
      if (piece.lines > this.linesLeft && this.line > 0) this.#breakBefore([piece])
      if (piece.gap === true && this.line === 0) continue
      piece.draw(this.page, this.topMm)
      this.line += piece.lines
    }
  }

  #breakBefore(group: readonly Piece[]): void {
    const first = group.find((piece) => piece.gap !== true)
    this.newPage()
    for (const piece of first?.onBreak?.() ?? []) {
      piece.draw(this.page, this.topMm)
      this.line += piece.lines
    }
  }
}
