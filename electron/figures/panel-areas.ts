import type { ViewId } from '../../shared-types/finding.ts'
import type { PanelId } from '../../shared-types/panel.ts'
import type { BodyStyle } from '../../shared-types/words.ts'
import { hasPlan, readBodyPlan } from './body-plan-file.ts'

/**
 * Panels seen square enough in one view to take their developed area from it, and the factor by which the curve of
 * the sheet makes the metal larger than its picture. The factors are estimates, no source: 1 where a panel is drawn
 * unfolded, 1.02 to 1.1 for slightly crowned ones, 1.15 for ends, 1.25 to 1.35 where a good part turns out of the
 * view (tops of the wings, the fall of the boot lid), 1.8 for the sill, whose upper and lower faces are not seen.
 */
const squareViews: Readonly<Record<string, { readonly views: readonly ViewId[]; readonly factor: number }>> = {
  'front-side': { views: ['left', 'right'], factor: 1.25 },
  'front-door': { views: ['left', 'right'], factor: 1.05 },
  'lower-rail-outer': { views: ['left', 'right'], factor: 1.8 },
  'rear-side': { views: ['left', 'right'], factor: 1.3 },
  'fuel-filler-flap': { views: ['left', 'right'], factor: 1.02 },
  'front-lid': { views: ['roof'], factor: 1.04 },
  'air-chamber': { views: ['roof'], factor: 1.1 },
  'roof-skin': { views: ['roof'], factor: 1.05 },
  'rear-deck-panel': { views: ['roof'], factor: 1.05 },
  'rear-lid': { views: ['roof'], factor: 1.35 },
  'nose-panel': { views: ['front'], factor: 1.15 },
  'front-apron': { views: ['front'], factor: 1.15 },
  'tail-panel': { views: ['rear'], factor: 1.05 },
  'rear-apron': { views: ['rear'], factor: 1.15 },
  'front-lid-inner': { views: ['openings'], factor: 1 },
  'rear-lid-inner': { views: ['openings'], factor: 1 },
  'front-door-inner': { views: ['openings'], factor: 1 },
  'front-side-inner': { views: ['bay'], factor: 1 },
  'front-bulkhead': { views: ['bay'], factor: 1 },
  'radiator-support': { views: ['bay'], factor: 1 },
  'front-floor': { views: ['floor'], factor: 1 },
  'rear-floor': { views: ['floor'], factor: 1 },
  'lower-rail-inner': { views: ['floor'], factor: 1 },
  'luggage-floor': { views: ['floor'], factor: 1 },
  'rear-shelf': { views: ['floor'], factor: 1 },
  'rear-bulkhead': { views: ['floor'], factor: 1 },
  'heel-board': { views: ['floor'], factor: 1 },
  'toe-board': { views: ['floor'], factor: 1 },
}

/**
 * Developed outer area of a panel in square metres, from the plan of its body. Null where the body is not drawn yet
 * or no view shows the panel square enough; the middle of the plausible range then has to serve.
 */
export function panelAreaM2(body: BodyStyle, panelId: PanelId): number | null {
  const square = squareViews[panelId.replace(/\.[LR]$/, '')]
  if (square === undefined || !hasPlan(body)) return null
  for (const sheet of readBodyPlan(body).sheets) {
    for (const view of sheet.views) {
      const panel = square.views.includes(view.id) ? view.panels.find((p) => p.panelId === panelId) : undefined
      if (panel) return Math.round((panel.areaMm2 / 1e6) * square.factor * 1000) / 1000
    }
  }
  return null
}
