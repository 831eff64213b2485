import type { PlanFigure, PlanSheet } from '../../../shared-types/figure.ts'
import type { PanelDefinition, PanelState } from '../../../shared-types/panel.ts'
import { panelName } from '../../../shared-types/panel.ts'
import type { NameChoice, WalkLayer } from '../../../shared-types/words.ts'

/** Panels that the level of inspection walks to, in walking order. */
export const walkedStops = (panels: readonly PanelDefinition[]): readonly PanelDefinition[] =>
  panels.filter((panel) => panel.walked)

/** The stop before or after the one in hand; the first one when none is in hand. Stays at the ends. */
export function stopBeside(
  panels: readonly PanelDefinition[],
  inHand: string | null,
  step: 1 | -1,
): PanelDefinition | undefined {
  const stops = walkedStops(panels)
  const at = stops.findIndex((panel) => panel.id === inHand)
  if (at >= 0) return stops[Math.min(stops.length - 1, Math.max(0, at + step))]
  const stopInHand = panels.find((panel) => panel.id === inHand)?.stop
  if (stopInHand === undefined) return stops[0]
  return step === 1
    ? stops.find((panel) => panel.stop > stopInHand)
    : stops.findLast((panel) => panel.stop < stopInHand)
}

/** Coverage of one layer: how many of its walked panels have been looked at, and how many could not be reached. */
export interface LayerCoverage {
  readonly layer: WalkLayer
  readonly seen: number
  readonly notAccessible: number
  readonly all: number
}

/** Counts per layer over the panels this car has; those beyond the level of inspection count as not seen. */
export function coverageOf(
  panels: readonly PanelDefinition[],
  states: readonly PanelState[],
): readonly LayerCoverage[] {
  const stateOf = new Map(states.map((state) => [state.panelId, state.inspection]))
  return (['outer', 'inner', 'under'] as const).map((layer) => {
    const own = panels.filter((panel) => panel.layer === layer)
    return {
      layer,
      all: own.length,
      seen: own.filter((panel) => stateOf.get(panel.id) === 'inspected').length,
      notAccessible: own.filter((panel) => stateOf.get(panel.id) === 'not accessible').length,
    }
  })
}

/** Panels that answer to what was typed: their number first, then names that begin so, then names that hold all words. */
export function panelsTyped(
  panels: readonly PanelDefinition[],
  names: NameChoice,
  typed: string,
): readonly PanelDefinition[] {
  const text = typed.trim().toLowerCase()
  if (text === '') return panels
  if (/^\d+$/.test(text)) {
    return panels
      .filter((panel) => String(panel.stop).startsWith(text))
      .sort((a, b) => Number(b.stop === Number(text)) - Number(a.stop === Number(text)) || a.stop - b.stop)
  }
  const words = text.split(/\s+/)
  const named = panels.map((panel) => ({ panel, name: panelName(panel, names).toLowerCase() }))
  const holds = named.filter(({ name }) =>
    words.every((word) => name.split(/[\s,]+/).some((own) => own.startsWith(word))),
  )
  return holds
    .sort((a, b) => Number(b.name.startsWith(text)) - Number(a.name.startsWith(text)) || a.panel.stop - b.panel.stop)
    .map(({ panel }) => panel)
}

/** The sheet of the plan to turn to for a panel: the one in front if it shows the panel, else the first that does. */
export function sheetShowing(figure: PlanFigure, panelId: string, inFront: PlanSheet['id']): PlanSheet['id'] {
  const showing = figure.sheets.filter((sheet) =>
    sheet.views.some((view) => view.panels.some((panel) => panel.panelId === panelId)),
  )
  return showing.find(({ id }) => id === inFront)?.id ?? showing[0]?.id ?? inFront
}

/** A panel's row, or what stands for it before anybody looked. */
export function stateOfPanel(states: readonly PanelState[], panelId: string): PanelState {
  return (
    states.find((state) => state.panelId === panelId) ?? {
      panelId,
      inspection: 'not inspected',
      reason: '',
      metal: 'not inspected',
      paint: 'not inspected',
      nothingFound: false,
      backSeen: false,
      magnetVoid: false,
      note: '',
      changedAt: '1970-01-01T00:00:00.000Z',
    }
  )
}
