import type { ViewId } from '../../shared-types/finding.ts'
import type { PanelId } from '../../shared-types/panel.ts'
import type { BodyStyle } from '../../shared-types/words.ts'
import { dimensionsOf } from '../sheets/dimension-list.ts'
import { developedAreas } from './body-shape/developed-areas.ts'
import { drawnBody } from './plan-sheets.ts'

/** Every part a body can have is drawn, so that each has an area of its own. */
const everything = [
  'pillared',
  'separate-lamp-housing',
  'fixed-rear-side-window',
  'filler-flap.L',
  'front-spring-tower',
  'spare-well',
]

/**
 * The sill of a car turns under it and in at the door: its metal is larger than its face by this factor. An estimate, no
 * source. On pickup and van it is a plain strip.
 */
const SILL_TURNED_IN = 1.8
const plainSill: readonly BodyStyle[] = ['pickup', 'van']

/** Panels of the inner sheets that lie unfolded on the paper, so that the drawing is true to area. */
const unfolded: readonly ViewId[] = ['openings', 'bay', 'floor']
const trueToArea = new Set([
  'front-door-inner',
  'front-bulkhead',
  'radiator-support',
  'front-floor',
  'rear-floor',
  'lower-rail-inner',
  'luggage-floor',
  'rear-shelf',
  'rear-bulkhead',
  'heel-board',
  'toe-board',
  'load-floor',
])

/**
 * Developed outer areas of a body's panels in square metres, to a thousandth, at its usual dimensions, in order of their ids;
 * of two that mirror each other the left one. A panel of which no drawing is true to area is left out. Drawing a body
 * takes long: the program reads these from `resources/lists/panel-areas.json`, which `build/panel-areas.mjs` makes.
 */
export function developedPanelAreasM2(body: BodyStyle): Readonly<Record<PanelId, number>> {
  const areas = [...measured(body)].map(([id, area]) => [id, Math.round(area * 1000) / 1000] as const)
  return Object.fromEntries(areas.toSorted(([a], [b]) => (a < b ? -1 : 1)))
}

function measured(body: BodyStyle): Map<string, number> {
  const { work, sheets } = drawnBody(body, dimensionsOf(body, {}), everything)
  const outside = sheets.find(({ id }) => id === 'outside')?.views ?? []
  const areas = developedAreas(work, outside)
  const sill = areas.get('lower-rail-outer.L')
  if (sill !== undefined && !plainSill.includes(body)) areas.set('lower-rail-outer.L', sill * SILL_TURNED_IN)
  for (const view of sheets.flatMap((sheet) => sheet.views).filter(({ id }) => unfolded.includes(id))) {
    for (const { panelId, areaMm2 } of view.panels) {
      if (trueToArea.has(panelId.replace(/\.[LR]$/, ''))) areas.set(panelId, areaMm2 / 1e6)
    }
  }
  return areas
}
