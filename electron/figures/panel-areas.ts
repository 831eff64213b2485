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

const known = new Map<BodyStyle, ReadonlyMap<string, number>>()

/**
 * Developed outer area of a panel in square metres at the usual dimensions of its body; null where no drawing is true
 * to its area, and the middle of the plausible range has to serve.
 */
export function panelAreaM2(body: BodyStyle, panelId: PanelId): number | null {
  const areas = known.get(body) ?? measured(body)
  known.set(body, areas)
  const area = areas.get(panelId) ?? areas.get(panelId.replace(/\.R$/, '.L'))
  return area === undefined ? null : Math.round(area * 1000) / 1000
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
