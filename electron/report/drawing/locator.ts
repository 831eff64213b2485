import type { PlanFigure } from '../../../shared-types/figure.ts'
import type { PlanPoint, ViewId } from '../../../shared-types/finding.ts'
import { printedMarks } from '../../../shared-types/tokens.ts'
import type { ObjectWriter } from '../document/object-writer.ts'
import { type PageCanvas, POINTS_PER_MM } from '../document/page-canvas.ts'
import type { Composer, StoredObject } from '../layout/composer.ts'
import { inks } from '../layout/text-style.ts'
import { pathOperators } from './path-operators.ts'

/** Line weight of an outline in millimetres of the car: 0.12 mm at the usual size of a locator. */
const OUTLINE_WEIGHT_MM = 16

/** Stores the outline of each view once, in millimetres of the car, so that hundreds of locators cost little. */
export function writeOutlines(writer: ObjectWriter, plan: PlanFigure): ReadonlyMap<string, StoredObject> {
  const outlines = new Map<string, StoredObject>()
  for (const view of plan.sheets.flatMap(({ views }) => views)) {
    const { u, v, width, height } = view.box
    // The stored drawing's unit is one millimetre of the car, so the page's points are undone here.
    const placement = {
      leftMm: 0,
      topMm: 0,
      scale: 1 / POINTS_PER_MM,
      u,
      v,
      pageHeightMm: height / POINTS_PER_MM,
    }
    const lines = view.panels.map(({ outline }) => `${pathOperators(outline, placement)} S`)
    const content = [
      `${OUTLINE_WEIGHT_MM / 2} w 1 j 0.55 G`,
      ...lines,
      `${OUTLINE_WEIGHT_MM} w 0 G ${pathOperators(view.silhouette, placement)} S`,
    ].join('\n')
    const ref = writer.context.nextRef()
    const margin = OUTLINE_WEIGHT_MM
    const dictionary = writer.context.obj({
      Type: 'XObject',
      Subtype: 'Form',
      BBox: [-margin, -margin, width + margin, height + margin],
      Resources: {},
    })
    writer.writeCompressed(ref, dictionary, Buffer.from(content, 'latin1'))
    outlines.set(view.id, { name: `V-${view.id}`, ref, width, height })
  }
  return outlines
}

/** Where something stands: a view and, when known, a point of it. */
export interface PlaceOnCar {
  readonly view: ViewId
  readonly at: PlanPoint
}

/** The place of an exhibit or finding: its own point, else the panel's label point in any view that shows it. */
export function placeOnCar(
  composer: Composer,
  view: ViewId | null,
  at: PlanPoint | null,
  panelId: string | null,
): PlaceOnCar | null {
  if (view !== null && at !== null) return { view, at }
  for (const sheet of composer.content.plan.sheets) {
    for (const drawn of sheet.views) {
      if (view !== null && drawn.id !== view) continue
      const panel = drawn.panels.find((candidate) => candidate.panelId === panelId)
      if (panel !== undefined) return { view: drawn.id, at: panel.label }
    }
  }
  return null
}

/** A small outline of the car with a dot in the accent. Fits the box; answers the height used, mm. */
export function drawLocator(
  composer: Composer,
  page: PageCanvas,
  where: PlaceOnCar,
  box: { readonly left: number; readonly top: number; readonly widthMm: number; readonly heightMm: number },
): void {
  if (page.onlyMeasured) return
  const outline = composer.stored.outlines.get(where.view)
  const view = composer.content.plan.sheets.flatMap(({ views }) => views).find(({ id }) => id === where.view)
  if (outline === undefined || view === undefined) return
  const scale = Math.min(box.widthMm / outline.width, box.heightMm / outline.height)
  const width = outline.width * scale
  const left = box.left + box.widthMm - width
  const bottom = box.top + outline.height * scale
  const points = scale * POINTS_PER_MM
  page.object(outline.name, outline.ref, [
    points,
    0,
    0,
    points,
    left * POINTS_PER_MM,
    (page.heightMm - bottom) * POINTS_PER_MM,
  ])
  const x = left + (where.at.u - view.box.u) * scale
  const y = box.top + (where.at.v - view.box.v) * scale
  page.circle(x, y, printedMarks.locatorDot, null, inks.accent)
}
