import type { ExtentMark, PanelMark, PlanMarks, PlanView } from '../../../shared-types/figure.ts'
import { lineWeights, MM_PER_HATCH_PIXEL, unseenEdge } from '../../../shared-types/tokens.ts'
import type { PageCanvas, StrokeStyle } from '../document/page-canvas.ts'
import { inks } from '../layout/text-style.ts'
import { drawHatch, rectangleOperators } from './hatching.ts'
import { onPage, type Placement, pathBox, pathOperators } from './path-operators.ts'

const stroke = (weight: keyof typeof lineWeights, colour: string = inks.ink): StrokeStyle => ({
  weightMm: lineWeights[weight].mm,
  colour,
  round: true,
})

const dots: StrokeStyle = {
  weightMm: unseenEdge.dotPx * MM_PER_HATCH_PIXEL,
  colour: inks.soft,
  dashMm: [0, unseenEdge.pitchPx * MM_PER_HATCH_PIXEL],
  round: true,
}

/** Inks of lines that are no outline: form lines and stations stand back. */
const inkOf = (weight: PlanView['ink'][number]['weight']): string =>
  weight === 'form' ? inks.soft : weight === 'station' || weight === 'centre' ? inks.hair : inks.ink

/** One view of the car as line work alone: the picture of the title page. */
export function drawViewPlain(page: PageCanvas, view: PlanView, placement: Placement): void {
  for (const panel of view.panels) page.rawPath(pathOperators(panel.outline, placement), 'S', stroke('shut'))
  drawInk(page, view, placement)
}

/** One view with what the record says: hatches cut to the panels, extents, edges, then the line work. */
export function drawViewMarked(page: PageCanvas, view: PlanView, marks: PlanMarks, placement: Placement): void {
  const markOf = new Map(marks.panels.map((mark) => [mark.panelId, mark]))
  const drawn = view.panels.map((panel) => ({
    path: pathOperators(panel.outline, placement),
    box: pathBox(panel.outline, placement),
    mark: markOf.get(panel.panelId),
  }))
  for (const { path, box, mark } of drawn) if (mark !== undefined) drawHatch(page, mark.hatch, path, box)
  for (const extent of marks.extents) if (extent.view === view.id) drawExtent(page, extent, placement)
  const unseen = (mark: PanelMark | undefined) => mark !== undefined && mark.edge === 'dotted'
  for (const { path, box, mark } of drawn) {
    if (!unseen(mark)) continue
    page.rawPath(path, 'S', dots)
    if (mark?.crossed === true) drawCross(page, path, box)
  }
  for (const { path, mark } of drawn) if (!unseen(mark)) page.rawPath(path, 'S', stroke('shut'))
  drawInk(page, view, placement)
}

function drawInk(page: PageCanvas, view: PlanView, placement: Placement): void {
  for (const line of view.ink) {
    const path = pathOperators(line.path, placement)
    const style = stroke(line.weight, inkOf(line.weight))
    page.rawPath(path, line.occlude ? 'B' : 'S', style, line.occlude ? inks.paper : undefined)
  }
  page.rawPath(pathOperators(view.silhouette, placement), 'S', stroke('silhouette'))
}

function drawCross(page: PageCanvas, path: string, box: ReturnType<typeof pathBox>): void {
  page.saved(() => {
    page.rawPath(path, 'W n', stroke('detail'))
    page.line(box.left, box.top, box.right, box.bottom, stroke('detail'))
    page.line(box.left, box.bottom, box.right, box.top, stroke('detail'))
  })
}

const DOT_RADIUS_MM = 0.5

function drawExtent(page: PageCanvas, extent: ExtentMark, placement: Placement): void {
  const points = extent.points.map(({ u, v }) => onPage(placement, u, v))
  const [first] = points
  if (first === undefined) return
  if (extent.shape === 'point') {
    page.circle(first.x, first.y, DOT_RADIUS_MM, null, inks.ink)
    return
  }
  const closed = extent.shape === 'area'
  const corners = extent.points.map(({ u, v }, index) => `${index === 0 ? 'M' : 'L'}${u} ${v}`).join('')
  const text = `${corners}${closed ? 'Z' : ''}`
  const path = pathOperators(text, placement)
  if (!closed) {
    page.rawPath(path, 'S', { weightMm: 0.5, colour: inks.ink, round: true })
    return
  }
  // Paper under the patch, so that the hatch of the panel does not show through it.
  page.rawPath(path, 'f', { weightMm: 0.1, colour: inks.ink }, inks.paper)
  if (extent.hatch !== null) drawHatch(page, extent.hatch, path, pathBox(text, placement))
  const dash = [3 * MM_PER_HATCH_PIXEL, 2 * MM_PER_HATCH_PIXEL]
  page.rawPath(path, 'S', { weightMm: lineWeights.shut.mm, colour: inks.ink, dashMm: dash })
}

/** A patch of the legend: the same hatch, the same edge. */
export function drawLegendPatch(
  page: PageCanvas,
  legend: PlanMarks['legend'][number],
  left: number,
  top: number,
): { readonly widthMm: number; readonly heightMm: number } {
  const size = { widthMm: 8, heightMm: 2.8 }
  const box = { left, top, right: left + size.widthMm, bottom: top + size.heightMm }
  const path = rectangleOperators(page, box)
  drawHatch(page, legend.hatch, path, box)
  page.rawPath(path, 'S', legend.edge === 'dotted' ? dots : stroke('detail'))
  if (legend.crossed) drawCross(page, path, box)
  return size
}
