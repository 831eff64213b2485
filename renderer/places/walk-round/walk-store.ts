import { create } from 'zustand'
import type { PlanFigure, PlanMarks, PlanSheet } from '../../../shared-types/figure.ts'
import type { Judgement } from '../../../shared-types/judgement.ts'
import type { PlanLook } from '../../drawing/plan-scale.ts'

/** What the sheet at the right shows: the panel in hand, or one entry. */
export type SheetEntry =
  | { readonly kind: 'metal' | 'paint' | 'not accessible' | 'note' | 'exhibit' | 'go to' }
  | { readonly kind: 'finding' | 'reading'; readonly amends: number | null }

export interface WalkState {
  readonly figure: PlanFigure | null
  readonly marks: PlanMarks | null
  /** Marks of the sheet that shows the panel in hand, while another sheet is in front. */
  readonly handMarks: PlanMarks | null
  readonly judgement: Judgement | null
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

export const wholeSheet: PlanLook = { zoom: 1, middle: null }

export const useWalkStore = create<WalkState>()(() => ({
  figure: null,
  marks: null,
  handMarks: null,
  judgement: null,
  planSheet: 'outside',
  look: wholeSheet,
  tableShown: false,
  entry: null,
  unfolded: null,
  pixelsPerMm: null,
}))

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
  useWalkStore.setState({ planSheet, look: wholeSheet, marks: null })
}

/** Zooms about the middle of what is shown; 1 is the whole sheet. */
export function zoomBy(factor: number): void {
  useWalkStore.setState(({ look }) => {
    const zoom = Math.min(12, Math.max(1, look.zoom * factor))
    return { look: zoom === 1 ? wholeSheet : { ...look, zoom } }
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
