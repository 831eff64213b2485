import type { OwnDimensions } from '../../shared-types/body-dimensions.ts'
import type { PlanFigure } from '../../shared-types/figure.ts'
import { panelName } from '../../shared-types/panel.ts'
import type { BodyStyle, NameChoice } from '../../shared-types/words.ts'
import { panelConditions, panelList } from '../sheets/panel-list.ts'
import { readBodyPlan } from './body-plan-file.ts'

const made = new Map<string, PlanFigure>()

/**
 * The body plan of a style with what one car measures and has, the same object each time; throws `not-found` for a
 * body that is not drawn yet. `conditions` are those a record keeps, such as `sunroof` or `filler-flap.L`.
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
  const file = readBodyPlan(body)
  const figure: PlanFigure = {
    body: file.body,
    title: file.title,
    dimensions: file.dimensions,
    sheets: file.sheets.map((sheet) => ({
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
    textAlternative: textAlternative(body, names),
  }
  made.set(key, figure)
  return figure
}

/** The plan in words: its sheets and views, and every panel in the order of the walk. */
function textAlternative(body: BodyStyle, names: NameChoice): string {
  const { title, dimensions, sheets } = readBodyPlan(body)
  const drawn = new Set(sheets.flatMap((sheet) => sheet.views.flatMap((view) => view.panels.map((p) => p.panelId))))
  const walk = panelList(body, 'with underneath', Object.keys(panelConditions()))
  const named = walk.panels.filter(({ id }) => drawn.has(id)).map((panel) => panelName(panel, names))
  const size = `${dimensions.lengthMm} mm long, ${dimensions.widthMm} mm wide, ${dimensions.heightMm} mm high, wheelbase ${dimensions.wheelbaseMm} mm`
  const pages = sheets.map((sheet) => `${sheet.name}: ${sheet.views.map((view) => view.name).join('; ')}`).join('. ')
  return `${title}, ${size}. ${pages}. Panels in walking order: ${named.join(', ')}.`
}
