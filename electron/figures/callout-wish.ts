import type { PlanView } from '../../shared-types/figure.ts'
import type { PlanPoint, ViewId } from '../../shared-types/finding.ts'
import type { PanelId } from '../../shared-types/panel.ts'

/** A panel that wants a callout; the first in the list are the ones that get one. */
export interface CalloutWish {
  readonly panelId: PanelId
  readonly stop: number
  readonly name: string
  readonly word: string
  /** Nothing was found here and nothing is left to see. */
  readonly quiet: boolean
  /** The panel in hand is always called out, but moves no other callout. */
  readonly inHand: boolean
  /** Whether the panel is hatched, so that a ring inside it would cover its mark. */
  readonly hatched: boolean
  /** Where the gravest finding of the panel lies: the leader points there. */
  readonly at: { readonly view: ViewId; readonly point: PlanPoint } | null
}

/** A wish in the view where it is called out. */
export interface CalledPanel {
  readonly wish: CalloutWish
  readonly view: PlanView
  /** Place of the view on its sheet, counted from 1. */
  readonly viewPlace: number
  /** Number of the outline on the ground of the sheet. */
  readonly panel: number
  /** Label point of the outline, sheet mm. */
  readonly label: { readonly x: number; readonly y: number }
  /** The box round the outline, sheet mm. */
  readonly box: { readonly left: number; readonly top: number; readonly right: number; readonly foot: number }
}
