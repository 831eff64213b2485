import type { PageCanvas } from '../document/page-canvas.ts'
import type { ReportDocument } from '../document/report-document.ts'
import type { StructureElement } from '../document/structure-tree.ts'
import type { Piece } from './flow.ts'
import { breakLines, type Rich, type TextLine } from './line-breaking.ts'
import { BASELINE_MM, LINE_MM } from './page-geometry.ts'

export type Align = 'left' | 'right'

/** Draws one line of text; each linked part becomes a Link element of `owner`, or plain text in an artifact. */
export function drawLine(
  document: ReportDocument,
  page: PageCanvas,
  line: TextLine,
  leftMm: number,
  baselineMm: number,
  owner: StructureElement | 'artifact',
): void {
  if (document.onlyMeasured) return
  for (const part of line.parts) {
    const link = part.link === undefined || owner === 'artifact' ? null : part.link
    const own = link === null || owner === 'artifact' ? owner : owner.add('Link')
    page.belongTo(own)
    page.text(
      document.face(part.face),
      part.stretches,
      leftMm + part.x,
      baselineMm,
      part.style.sizePt,
      part.style.colour,
    )
    if (link !== null && own !== 'artifact') {
      const box = { left: leftMm + part.x, top: baselineMm - BASELINE_MM, width: part.width, height: LINE_MM }
      page.link(own, box, link, part.words.trim())
    }
  }
}

export interface TextPlace {
  readonly leftMm: number
  readonly widthMm: number
  readonly owner: StructureElement | 'artifact'
  readonly align?: Align
  /** Height of a line in grid lines; 1 unless the type is large. */
  readonly linePitch?: number
}

/** Text as pieces of one line each; two lines at least stand together at either end. */
export function textPieces(document: ReportDocument, rich: Rich, place: TextPlace): Piece[] {
  const { leftMm, widthMm, owner, align, linePitch = 1 } = place
  const lines = breakLines(rich, widthMm)
  return lines.map((line, index) => ({
    lines: linePitch,
    keep: (index === 0 && lines.length > 1) || (index === lines.length - 2 && index >= 0),
    draw: (page, topMm) => {
      const left = align === 'right' ? leftMm + widthMm - line.width : leftMm
      drawLine(document, page, line, left, topMm + (linePitch - 1) * LINE_MM + BASELINE_MM, owner)
    },
  }))
}
