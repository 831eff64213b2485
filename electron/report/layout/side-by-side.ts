import type { Piece } from './flow.ts'
import { LINE_MM } from './page-geometry.ts'

/** Height of pieces one under another, in lines. */
export const linesOf = (pieces: readonly Piece[]): number => pieces.reduce((sum, { lines }) => sum + lines, 0)

/** Pieces one under another as one that is never split. */
export const stacked = (pieces: readonly Piece[]): Piece => ({
  lines: linesOf(pieces),
  draw: (page, topMm) => {
    let line = 0
    for (const piece of pieces) {
      piece.draw(page, topMm + line * LINE_MM)
      line += piece.lines
    }
  },
})

/** Two columns of pieces as one that is never split: each keeps its own left edge, both begin on one line. */
export function sideBySide(left: readonly Piece[], right: readonly Piece[]): Piece {
  const columns = [stacked(left), stacked(right)]
  return {
    lines: Math.max(linesOf(left), linesOf(right)),
    draw: (page, topMm) => {
      for (const column of columns) column.draw(page, topMm)
    },
  }
}
