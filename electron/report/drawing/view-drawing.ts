import type { ExtentMark, PanelMark, PlanMarks, PlanView } from '../../../shared-types/figure.ts'
import { lineWeights, MM_PER_HATCH_PIXEL, printedMarks, unseenEdge } from '../../../shared-types/tokens.ts'
import type { PageCanvas, StrokeStyle } from '../document/page-canvas.ts'
import { inks } from '../layout/text-style.ts'
import { drawHatch, rectangleOperators } from './hatching.ts'
import { onPage, type Placement, pathBox, pathOperators, UNSTROKED } from './path-operators.ts'

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
  if (page.onlyMeasured) return
  for (const panel of view.panels) page.rawPath(pathOperators(panel.outline, placement), 'S', stroke('shut'))
  drawInk(page, view, placement)
}

/** One view with what the record says: hatches cut to the panels, extents, edges, then the line work. */
export function drawViewMarked(page: PageCanvas, view: PlanView, marks: PlanMarks, placement: Placement): void {
  if (page.onlyMeasured) return
  const markOf = new Map(marks.panels.map((mark) => [mark.panelId, mark]))
  const drawn = view.panels.map((panel) => ({
    path: pathOperators(panel.outline, placement),
    box: pathBox(panel.outline, placement),
    mark: markOf.get(panel.panelId),
  }))
  const origin = onPage(placement, 0, 0)
  const extents = marks.extents.filter((extent) => extent.view === view.id)
  for (const { path, box, mark } of drawn) if (mark !== undefined) drawHatch(page, mark.hatch, path, box, origin)
  for (const extent of extents) drawExtentGround(page, extent, placement)
  if (drawn.some(({ mark }) => mark !== undefined && mark.hatch !== 'clean')) clearDetails(page, view, placement)
  const unseen = (mark: PanelMark | undefined) => mark !== undefined && mark.edge === 'dotted'
  for (const { path, box, mark } of drawn) {
    if (!unseen(mark)) continue
    page.rawPath(path, 'S', dots)
    if (mark?.crossed === true) drawCross(page, path, box)
  }
  for (const { path, mark } of drawn) if (mark !== undefined && !unseen(mark)) page.rawPath(path, 'S', stroke('shut'))
  drawInk(page, view, placement)
  for (const extent of extents) drawExtentEdge(page, extent, placement)
}

/** Paper round vents, handles and other details, so that no hatch hides them. */
function clearDetails(page: PageCanvas, view: PlanView, placement: Placement): void {
  for (const { weight, occlude, path } of view.ink) {
    if (weight !== 'detail' || occlude) continue
    page.rawPath(pathOperators(path, placement), 'S', {
      weightMm: printedMarks.cleared,
      colour: inks.paper,
      round: true,
    })
  }
}

/** The silhouette, and over it the ink in its order: bumpers and lamps stand before the body. */
function drawInk(page: PageCanvas, view: PlanView, placement: Placement): void {
  page.rawPath(pathOperators(view.silhouette, placement), 'S', stroke('silhouette'))
  for (const line of view.ink) {
    const path = pathOperators(line.path, placement)
    const style = stroke(line.weight, inkOf(line.weight))
    page.rawPath(path, line.occlude ? 'B' : 'S', style, line.occlude ? inks.paper : undefined)
  }
}

function drawCross(page: PageCanvas, path: string, box: ReturnType<typeof pathBox>): void {
  page.saved(() => {
    page.rawPath(path, 'W n', stroke('detail'))
    page.line(box.left, box.top, box.right, box.bottom, stroke('detail'))
    page.line(box.left, box.bottom, box.right, box.top, stroke('detail'))
  })
}

function extentPath({ points, shape }: ExtentMark): string {
  const corners = points.map(({ u, v }, index) => `${index === 0 ? 'M' : 'L'}${u} ${v}`).join('')
  return shape === 'area' ? `${corners}Z` : corners
}

/** Paper under an area that was found, so that the hatch of the panel does not show through it, and its own hatch. */
function drawExtentGround(page: PageCanvas, extent: ExtentMark, placement: Placement): void {
  if (extent.shape !== 'area' || extent.points.length === 0) return
  const text = extentPath(extent)
  const path = pathOperators(text, placement)
  page.rawPath(path, 'f', UNSTROKED, inks.paper)
  if (extent.hatch !== null) drawHatch(page, extent.hatch, path, pathBox(text, placement), onPage(placement, 0, 0))
}

/** Where a finding lies, over the line work: dashed round an area, a heavy line, or a dot. */
function drawExtentEdge(page: PageCanvas, extent: ExtentMark, placement: Placement): void {
  const [first] = extent.points
  if (first === undefined) return
  if (extent.shape === 'point') {
    const { x, y } = onPage(placement, first.u, first.v)
    page.circle(x, y, printedMarks.pointDot, null, inks.ink)
    return
  }
  const path = pathOperators(extentPath(extent), placement)
  if (extent.shape === 'line') {
    const weightMm = extent.hatch === 'rusted-through' ? printedMarks.extentThrough : printedMarks.extentLine
    page.rawPath(path, 'S', { weightMm: printedMarks.extentHalo, colour: inks.paper, round: true })
    page.rawPath(path, 'S', { weightMm, colour: inks.ink, round: true })
    return
  }
  page.rawPath(path, 'S', { weightMm: lineWeights.shut.mm, colour: inks.ink, dashMm: printedMarks.extentDash })
}

/** A patch of the legend: the same hatch, the same edge. */
export function drawLegendPatch(
  page: PageCanvas,
  legend: PlanMarks['legend'][number],
  left: number,
  top: number,
): { readonly widthMm: number; readonly heightMm: number } {
  const { width: widthMm, height: heightMm } = printedMarks.legendPatch
  const box = { left, top, right: left + widthMm, bottom: top + heightMm }
  const path = rectangleOperators(page, box)
  drawHatch(page, legend.hatch, path, box)
  page.rawPath(path, 'S', legend.edge === 'dotted' ? dots : stroke('detail'))
  if (legend.crossed) drawCross(page, path, box)
  return { widthMm, heightMm }
}
