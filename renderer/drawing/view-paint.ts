import type { HatchName, PanelMark, PlanPanel, PlanView } from '../../shared-types/figure.ts'

type Mark = PanelMark | undefined

/** What the states of a few neighbours in a view's list paint, as few paths as there are kinds of mark; view millimetres. */
export interface PanelsPaint {
  /** Place of the first of them in the view's list. */
  readonly place: number
  /** Marks of the panels it was gathered for; undefined where this car has no such panel. */
  readonly marks: readonly Mark[]
  /** The panels themselves, for the sheet's colour under them. */
  readonly surface: string
  readonly hatches: readonly (readonly [HatchName, string])[]
  /** Edges of panels that were looked at, and of those that were not. */
  readonly seen: string
  readonly unseen: string
  /** Panels that could not be reached. */
  readonly crossed: readonly PlanPanel[]
}

/** Panels whose outlines are joined: few enough that a new state rewrites little, enough that a view is few paths. */
const TOGETHER = 4

/**
 * Gathers the outlines of panels by what is drawn with them. A panel without a mark is not on this car and has no edge;
 * before any mark of the view is known, all are drawn as what they are to the reader: not looked at.
 */
function paintOf(place: number, panels: readonly PlanPanel[], marks: readonly Mark[], isUnknown: boolean): PanelsPaint {
  const joined = (wanted: (mark: Mark) => boolean) =>
    panels
      .filter((_, index) => wanted(marks[index]))
      .map(({ outline }) => outline)
      .join(' ')
  const used = new Set(marks.flatMap((mark) => (mark === undefined || mark.hatch === 'clean' ? [] : [mark.hatch])))
  return {
    place,
    marks,
    surface: joined(() => true),
    hatches: [...used].sort().map((hatch) => [hatch, joined((mark) => mark?.hatch === hatch)] as const),
    seen: joined((mark) => mark?.edge === 'solid'),
    unseen: joined((mark) => isUnknown || mark?.edge === 'dotted'),
    crossed: panels.filter((_, index) => marks[index]?.crossed === true),
  }
}

/** What each view paints, by its id; whatever no changed mark touches is the very object of before. */
export function paintOfViews(
  views: readonly PlanView[],
  marks: readonly PanelMark[],
  before: ReadonlyMap<string, readonly PanelsPaint[]>,
): ReadonlyMap<string, readonly PanelsPaint[]> {
  const byId = new Map(marks.map((mark) => [mark.panelId, mark]))
  return new Map(
    views.map(({ id, panels }) => {
      const now = panels.map(({ panelId }) => byId.get(panelId))
      const old = before.get(id) ?? []
      const known = old.flatMap((paint) => paint.marks)
      if (known.length === now.length && now.every((mark, index) => mark === known[index])) return [id, old]
      const isUnknown = now.every((mark) => mark === undefined)
      const wasUnknown = known.every((mark) => mark === undefined)
      const paints = Array.from({ length: Math.ceil(panels.length / TOGETHER) }, (_, at) => {
        const [from, to] = [at * TOGETHER, (at + 1) * TOGETHER]
        const own = now.slice(from, to)
        const paint = old[at]
        const isSame = paint?.marks.length === own.length && own.every((mark, index) => mark === paint.marks[index])
        return isSame && isUnknown === wasUnknown ? paint : paintOf(from, panels.slice(from, to), own, isUnknown)
      })
      return [id, paints]
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
