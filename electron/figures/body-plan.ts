import type { OwnDimensions } from '../../shared-types/body-dimensions.ts'
import { coatingMeasures } from '../../shared-types/coating-measures.ts'
import type { PlanFigure } from '../../shared-types/figure.ts'
import { panelName } from '../../shared-types/panel.ts'
import { type LengthUnit, metricUnits } from '../../shared-types/units.ts'
import type { BodyStyle, NameChoice } from '../../shared-types/words.ts'
import { dimensionsOf } from '../sheets/dimension-list.ts'
import { panelList } from '../sheets/panel-list.ts'
import { drawnBody } from './plan-sheets.ts'

const made = new Map<string, PlanFigure>()

/**
 * The body plan of a style with what one car measures and has, the same object each time. `conditions` are those a
 * record keeps, such as `sunroof` or `filler-flap.L`; `lengthUnit` is the unit its words are told in.
 */
export function bodyPlan(
  body: BodyStyle,
  names: NameChoice,
  dimensions: OwnDimensions = {},
  conditions: readonly string[] = [],
  lengthUnit: LengthUnit = 'mm',
): PlanFigure {
  const key = JSON.stringify([body, names, Object.entries(dimensions).sort(), conditions.toSorted(), lengthUnit])
  const known = made.get(key)
  if (known) return known
  if (lengthUnit !== 'mm') {
    // Only the words differ.
    const metric = bodyPlan(body, names, dimensions, conditions)
    const told = { ...metric, textAlternative: textAlternative(metric, { body, names, conditions, lengthUnit }) }
    made.set(key, told)
    return told
  }
  const drawing = drawnBody(body, dimensionsOf(body, dimensions), conditions)
  const { lengthMm, wheelbaseMm, widthMm, heightMm } = drawing.dimensions
  const drawn = {
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
  }
  const figure: PlanFigure = {
    ...drawn,
    textAlternative: textAlternative(drawn, { body, names, conditions, lengthUnit }),
  }
  made.set(key, figure)
  return figure
}

interface PlanWords {
  readonly body: BodyStyle
  readonly names: NameChoice
  readonly conditions: readonly string[]
  readonly lengthUnit: LengthUnit
}

/** The plan in words: its sheets and views, and every panel in the order of the walk. */
function textAlternative(
  { title, dimensions, sheets }: Omit<PlanFigure, 'textAlternative'>,
  { body, names, conditions, lengthUnit }: PlanWords,
): string {
  const drawn = new Set(sheets.flatMap((sheet) => sheet.views.flatMap((view) => view.panels.map((p) => p.panelId))))
  const walk = panelList(body, 'with underneath', conditions)
  const named = walk.panels.filter(({ id }) => drawn.has(id)).map((panel) => panelName(panel, names))
  const { length } = coatingMeasures({ ...metricUnits, lengthUnit })
  const told = (mm: number) => (lengthUnit === 'mm' ? `${mm} mm` : length.text(mm))
  const { lengthMm, widthMm, heightMm, wheelbaseMm } = dimensions
  const size = `${told(lengthMm)} long, ${told(widthMm)} wide, ${told(heightMm)} high, wheelbase ${told(wheelbaseMm)}`
  const pages = sheets.map((sheet) => `${sheet.name}: ${sheet.views.map((view) => view.name).join('; ')}`).join('. ')
  return `${title}, ${size}. ${pages}. Panels in walking order: ${named.join(', ')}.`
}
