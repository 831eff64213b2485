import type { z } from 'zod'
import { capital } from '../../../shared-types/capital.ts'
import { askedMeasures } from '../../../shared-types/coating-measures.ts'
import type { ComputationOutput, CountedPart, computations, WeighedPanel } from '../../../shared-types/computations.ts'
import type { Coverage, ShareRange, Unweighed } from '../../../shared-types/judgement.ts'
import { walkLayer } from '../../../shared-types/words.ts'
import { lookNext } from './look-next.ts'
import { weighing, weightsFound } from './own-weights.ts'
import { judgeParts } from './parts.ts'
import { judgeSurfaces } from './surfaces.ts'
import { wouldNarrow } from './would-narrow.ts'

/**
 * What each thing weighs, for whoever reads a share. The Charter of Turin (FIVA, ratified 27 October 2012) asks that
 * conservation leaves historic substance unaltered; it gives no figure, so none is made of it.
 */
const BASIS =
  'Counted is historic substance in the terms of the Charter of Turin (FIVA, 2012), which conservation leaves unaltered; the Charter gives no weights, and metal, paint and parts are never added up.'
const NONE_SET =
  'Weights: a panel by its area on the plan, a part by one, the program’s own; nothing weighs more because it is dear or in sight.'
const SOME_SET =
  'Weights: a panel by its area on the plan, a part by one, each times what the user set for it; one of a panel or part itself stands alone, else those of its area and layer are multiplied, or that of its group holds.'

/** Shares of originality as bounds, coverage by layer and what to look at next, from panels and parts as they stand. */
export function originality({
  panels,
  parts,
  weights = [],
  shownIn,
}: z.input<(typeof computations)['originality']['input']>): ComputationOutput<'originality'> {
  const weighs = weighing(weights)
  const judging = { weighs, surface: askedMeasures({ shownIn }).surface }
  const areas = [...new Set(panels.map((panel) => panel.bodyArea))]
  return {
    coverage: walkLayer.options.map((layer) => coverage(layer, panels)),
    whole: judgeSurfaces('whole', 'Whole body', panels, judging),
    areas: areas.map((area) =>
      judgeSurfaces(
        area.replaceAll(' ', '-'),
        capital(area),
        panels.filter((panel) => panel.bodyArea === area),
        judging,
      ),
    ),
    panels: panels.map((panel) => judgeSurfaces(panel.id, panel.label, [panel], judging)),
    parts: judgeParts(parts, weighs),
    lookNext: lookNext(panels),
    wouldNarrow: wouldNarrow(panels, parts, weighs),
    weights: `${weights.length === 0 ? NONE_SET : SOME_SET} ${BASIS}`,
    weightsSet: weightsFound(weights, panels, parts),
    unweighed: weights.length === 0 ? null : unweighed(panels, parts),
  }
}

/** The shares without the user's weights, to be read beside those with them. */
function unweighed(panels: readonly WeighedPanel[], parts: readonly CountedPart[]): Unweighed {
  const plain = weighing([])
  const judging = { weighs: plain, surface: askedMeasures({}).surface }
  const bounds = ({ lowPercent, highPercent }: ShareRange) => ({ lowPercent, highPercent })
  const { originalMetal, factoryPaint } = judgeSurfaces('whole', 'Whole body', panels, judging)
  const [all] = judgeParts(parts, plain)
  return {
    originalMetal: bounds(originalMetal),
    factoryPaint: bounds(factoryPaint),
    parts: all === undefined ? null : bounds(all),
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
