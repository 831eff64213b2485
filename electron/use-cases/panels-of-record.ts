import {
  type PanelDefinition,
  type PanelId,
  type PanelList,
  type PanelState,
  panelName,
} from '../../shared-types/panel.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { panelList } from '../sheets/panel-list.ts'

/** Panels of the record's body in walking order, for its conditions and its level of inspection. */
export function panelsOfRecord(now: RecordView): PanelList {
  return panelList(now.particulars.body, now.commission.level, now.particulars.conditions)
}

/** The panel's definition; throws `not-found` when this car has no such panel. */
export function requirePanel(now: RecordView, panelId: PanelId, field = 'panelId'): PanelDefinition {
  const found = panelsOfRecord(now).panels.find((panel) => panel.id === panelId)
  if (found === undefined) {
    const message = `This car has no panel "${panelId}". Choose one of the walk, or say under its particulars that it has one.`
    throw new ProblemError('not-found', message, { field })
  }
  return found
}

/** Name of a panel as printed; its id in words when the car no longer has it. */
export function panelNameIn(now: RecordView, panelId: PanelId): string {
  const found = panelsOfRecord(now).panels.find((panel) => panel.id === panelId)
  return found === undefined ? panelId : panelName(found, now.commission.names)
}

/** The panel's row; where there is none, the state every panel starts in. */
export function panelStateOf(now: RecordView, panelId: PanelId): PanelState {
  return now.panels.find((panel) => panel.panelId === panelId) ?? untouchedPanel(panelId)
}

/** Every panel starts as not inspected. */
export const untouchedPanel = (panelId: PanelId): PanelState => ({
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
})

/** The panel once somebody has looked at it: metal not yet named is not determined. */
export const lookedAt = (state: PanelState): PanelState => ({
  ...state,
  inspection: 'inspected',
  reason: '',
  metal: state.metal === 'not inspected' ? 'not determined' : state.metal,
})
