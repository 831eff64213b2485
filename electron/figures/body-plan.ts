import type { OwnDimensions } from '../../shared-types/body-dimensions.ts'
import type { PlanFigure } from '../../shared-types/figure.ts'
import { panelName } from '../../shared-types/panel.ts'
import type { BodyStyle, NameChoice } from '../../shared-types/words.ts'
import { dimensionsOf } from '../sheets/dimension-list.ts'
import { panelList } from '../sheets/panel-list.ts'
import { type DrawnBody, drawnBody } from './plan-sheets.ts'

const made = new Map<string, PlanFigure>()

/**
 * The body plan of a style with what one car measures and has, the same object each time. `conditions` are those a
 * record keeps, such as `sunroof` or `filler-flap.L`.
 */
export function bodyPlan(
  body: BodyStyle,
  names: NameChoice,
  dimensions: OwnDimensions = {},
  conditions: readonly string[] = [],
): PlanFigure {
  const key = JSON.stringify([body, names, Object.entries(dimensions).sort(), conditions.toSorted()])
  const known = made.get(key)
  if (known) return known
  const drawing = drawnBody(body, dimensionsOf(body, dimensions), conditions)
  const { lengthMm, wheelbaseMm, widthMm, heightMm } = drawing.dimensions
  const figure: PlanFigure = {
    body,
    title: drawing.title,
    dimensions: { lengthMm, wheelbaseMm, widthMm, heightMm },
    sheets: drawing.sheets.map((sheet) => ({
      ...sheet,
      views: sheet.views.map(({ id, name, box, at, panels, ink, silhouette }) => ({
        id,
        name,
        box,
        at,
        panels,
        ink,
        silhouette,
      })),
    })),
    textAlternative: textAlternative(body, names, drawing, conditions),
  }
  made.set(key, figure)
  return figure
}

/** The plan in words: its sheets and views, and every panel in the order of the walk. */
function textAlternative(
  body: BodyStyle,
  names: NameChoice,
  { title, dimensions, sheets }: DrawnBody,
  conditions: readonly string[],
): string {
  const drawn = new Set(sheets.flatMap((sheet) => sheet.views.flatMap((view) => view.panels.map((p) => p.panelId))))
  const walk = panelList(body, 'with underneath', conditions)
  const named = walk.panels.filter(({ id }) => drawn.has(id)).map((panel) => panelName(panel, names))
  const size = `${dimensions.lengthMm} mm long, ${dimensions.widthMm} mm wide, ${dimensions.heightMm} mm high, wheelbase ${dimensions.wheelbaseMm} mm`
  const pages = sheets.map((sheet) => `${sheet.name}: ${sheet.views.map((view) => view.name).join('; ')}`).join('. ')
  return `${title}, ${size}. ${pages}. Panels in walking order: ${named.join(', ')}.`
}
