import type { HatchName, PanelMark, PlanPanel, PlanView } from '../../shared-types/figure.ts'

/** What the states of its panels paint on a view, as few paths as there are kinds of mark; view millimetres. */
export interface ViewPaint {
  /** All panels, for the sheet's colour under them. */
  readonly surface: string
  readonly hatches: readonly (readonly [HatchName, string])[]
  /** Edges of panels that were looked at, and of those that were not. */
  readonly seen: string
  readonly unseen: string
  /** Panels that could not be reached. */
  readonly crossed: readonly PlanPanel[]
}

/**
 * Gathers the outlines of a view by what is drawn with them. A panel without a mark is not on this car and has no edge;
 * before any mark is known, all are drawn as what they are to the reader: not looked at.
 */
export function paintOf(view: PlanView, marks: readonly (PanelMark | undefined)[]): ViewPaint {
  const joined = (wanted: (mark: PanelMark | undefined) => boolean) =>
    view.panels
      .filter((_, index) => wanted(marks[index]))
      .map(({ outline }) => outline)
      .join(' ')
  const isUnknown = marks.every((mark) => mark === undefined)
  const used = new Set(marks.flatMap((mark) => (mark === undefined || mark.hatch === 'clean' ? [] : [mark.hatch])))
  return {
    surface: joined(() => true),
    hatches: [...used].sort().map((hatch) => [hatch, joined((mark) => mark?.hatch === hatch)] as const),
    seen: joined((mark) => mark?.edge === 'solid'),
    unseen: joined((mark) => isUnknown || mark?.edge === 'dotted'),
    crossed: view.panels.filter((_, index) => marks[index]?.crossed === true),
  }
}

/** The marks of each view's panels in its own order; a list is the very one of before where none of its marks changed. */
export function marksOfViews(
  views: readonly PlanView[],
  marks: readonly PanelMark[],
  before: ReadonlyMap<string, readonly (PanelMark | undefined)[]>,
): ReadonlyMap<string, readonly (PanelMark | undefined)[]> {
  const byId = new Map(marks.map((mark) => [mark.panelId, mark]))
  return new Map(
    views.map((view) => {
      const now = view.panels.map(({ panelId }) => byId.get(panelId))
      const old = before.get(view.id)
      const isSame = old?.length === now.length && now.every((mark, index) => mark === old[index])
      return [view.id, isSame ? old : now]
    }),
  )
}

/** Marks gathered by the view they stand in. */
export function byView<Mark extends { readonly view: string }>(
  marks: readonly Mark[],
): ReadonlyMap<string, readonly Mark[]> {
  const groups = new Map<string, Mark[]>()
  for (const mark of marks) groups.set(mark.view, [...(groups.get(mark.view) ?? []), mark])
  return groups
}
