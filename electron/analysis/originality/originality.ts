import type { ComputationInput, ComputationOutput, WeighedPanel } from '../../../shared-types/computations.ts'
import type { Coverage } from '../../../shared-types/judgement.ts'
import { walkLayer } from '../../../shared-types/words.ts'
import { lookNext } from './look-next.ts'
import { judgeParts } from './parts.ts'
import { judgeSurfaces } from './surfaces.ts'
import { wouldNarrow } from './would-narrow.ts'

/**
 * What each thing weighs, for whoever reads a share. The Charter of Turin (FIVA, ratified 27 October 2012) asks that
 * conservation leaves historic substance unaltered; it gives no figure, so none is made of it.
 */
const WEIGHTS =
  'Weights: a panel by its area on the plan, a part by one; nothing weighs more because it is dear or in sight. Counted is historic substance in the terms of the Charter of Turin (FIVA, 2012), which conservation leaves unaltered; the Charter gives no weights, these are the program’s own, and metal, paint and parts are never added up.'

/** Shares of originality as bounds, coverage by layer and what to look at next, from panels and parts as they stand. */
export function originality({ panels, parts }: ComputationInput<'originality'>): ComputationOutput<'originality'> {
  const areas = [...new Set(panels.map((panel) => panel.bodyArea))]
  return {
    coverage: walkLayer.options.map((layer) => coverage(layer, panels)),
    whole: judgeSurfaces('whole', 'Whole body', panels),
    areas: areas.map((area) =>
      judgeSurfaces(
        area.replaceAll(' ', '-'),
        area.charAt(0).toUpperCase() + area.slice(1),
        panels.filter((panel) => panel.bodyArea === area),
      ),
    ),
    panels: panels.map((panel) => judgeSurfaces(panel.id, panel.label, [panel])),
    parts: judgeParts(parts),
    lookNext: lookNext(panels),
    wouldNarrow: wouldNarrow(panels, parts),
    weights: WEIGHTS,
  }
}

function coverage(layer: WeighedPanel['layer'], panels: readonly WeighedPanel[]): Coverage {
  const here = panels.filter((panel) => panel.layer === layer)
  const count = (wanted: (panel: WeighedPanel) => boolean) => here.filter(wanted).length
  return {
    layer,
    seen: count((panel) => panel.inspection === 'inspected'),
    notAccessible: count((panel) => panel.inspection === 'not accessible'),
    walked: count((panel) => panel.walked),
    all: here.length,
  }
}
