import { create } from 'zustand'
import type { PlanFigure, PlanMarks, PlanSheet } from '../../../shared-types/figure.ts'
import type { TellView } from '../../../shared-types/identity-view.ts'
import type { Judgement } from '../../../shared-types/judgement.ts'
import { type LookSource, type PlanLook, wholeSheet } from '../../drawing/plan-scale.ts'
import { useScreenStore } from '../../store/screen-store.ts'

/** What the sheet at the right shows: the panel in hand, or one entry. */
export type SheetEntry =
  | { readonly kind: 'metal' | 'paint' | 'not accessible' | 'note' | 'exhibit' | 'go to' }
  | { readonly kind: 'finding' | 'reading'; readonly amends: number | null }
  /** A tell of a reference sheet that is looked for on the panel in hand. */
  | { readonly kind: 'tell'; readonly tell: string }

export interface WalkState {
  readonly figure: PlanFigure | null
  readonly marks: PlanMarks | null
  /** Marks of the sheet that shows the panel in hand, while another sheet is in front. */
  readonly handMarks: PlanMarks | null
  readonly judgement: Judgement | null
  /** Tells that are looked for on the panel in hand. */
  readonly tells: readonly TellView[]
  readonly planSheet: PlanSheet['id']
  readonly look: PlanLook
  /** The same facts as a table in place of the drawing. */
  readonly tableShown: boolean
  readonly entry: SheetEntry | null
  /** Finding or reading whose rows are unfolded. */
  readonly unfolded: string | null
  /** Scale the callouts are to be set for. */
  readonly pixelsPerMm: number | null
}

export const useWalkStore = create<WalkState>()(() => ({
  figure: null,
  marks: null,
  handMarks: null,
  judgement: null,
  tells: [],
  planSheet: 'outside',
  look: wholeSheet,
  tableShown: false,
  entry: null,
  unfolded: null,
  pixelsPerMm: null,
}))

/** How the reader has moved the plan, for the drawing to follow. */
export const planLook: LookSource = {
  now: () => useWalkStore.getState().look,
  subscribe: (hear) => useWalkStore.subscribe(hear),
}

/** Opens an entry in the sheet. */
export function enter(entry: SheetEntry): void {
  useWalkStore.setState({ entry })
}

/** Goes back to the panel in hand; what was typed stays in its draft. */
export function leaveEntry(): void {
  useWalkStore.setState({ entry: null })
}

/** Turns to a sheet of the plan. */
export function turnTo(planSheet: PlanSheet['id']): void {
  useWalkStore.setState((state) => ({
    planSheet,
    look: wholeSheet,
    marks: planSheet === state.planSheet ? state.marks : null,
  }))
}

/** Shows the plan as a table, or the table as a plan. */
export function turnTable(): void {
  useWalkStore.setState((state) => ({ tableShown: !state.tableShown }))
}

type SheetPlace = NonNullable<PlanLook['middle']>

/** Where a panel stands on the sheet in front, in sheet millimetres; null when that sheet does not show it. */
function placeOfPanel({ figure, planSheet }: WalkState, panelId: string | null): SheetPlace | null {
  for (const view of figure?.sheets.find(({ id }) => id === planSheet)?.views ?? []) {
    const panel = view.panels.find((own) => own.panelId === panelId)
    if (panel === undefined) continue
    return { x: view.at.x + panel.label.u - view.box.u, y: view.at.y + panel.label.v - view.box.v }
  }
  return null
}

/** Zooms about the middle of what is shown, at first about the panel in hand; 1 is the whole sheet. */
export function zoomBy(factor: number): void {
  useWalkStore.setState((state) => {
    const zoom = Math.min(12, Math.max(1, state.look.zoom * factor))
    if (zoom === 1) return { look: wholeSheet }
    return { look: { zoom, middle: state.look.middle ?? placeOfPanel(state, useScreenStore.getState().inHand) } }
  })
}

/** Brings a panel into the middle while the plan is larger than its room. */
export function lookAtPanel(panelId: string): void {
  useWalkStore.setState((state) => {
    const middle = state.look.zoom === 1 ? null : placeOfPanel(state, panelId)
    return middle === null ? {} : { look: { ...state.look, middle } }
  })
}

/** Moves what is shown, in sheet millimetres. */
export function panBy(xMm: number, yMm: number): void {
  useWalkStore.setState(({ look, figure, planSheet }) => {
    const sheet = figure?.sheets.find(({ id }) => id === planSheet)
    if (sheet === undefined || look.zoom === 1) return {}
    const { x, y } = look.middle ?? { x: sheet.widthMm / 2, y: sheet.heightMm / 2 }
    const middle = {
      x: Math.min(sheet.widthMm, Math.max(0, x + xMm)),
      y: Math.min(sheet.heightMm, Math.max(0, y + yMm)),
    }
    return { look: { ...look, middle } }
  })
}
