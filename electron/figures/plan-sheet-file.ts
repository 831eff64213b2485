import type { PlanSheet, PlanView } from '../../shared-types/figure.ts'

/** A view as a plan keeps it; `open` are holes of the silhouette, `set` panels that lie in another one. */
export interface PlanViewFile extends PlanView {
  readonly open: readonly string[]
  readonly set: readonly { readonly panelId: string; readonly within: string }[]
}

/** A sheet as a plan keeps it. */
export interface PlanSheetFile extends Omit<PlanSheet, 'views'> {
  readonly views: readonly PlanViewFile[]
}
