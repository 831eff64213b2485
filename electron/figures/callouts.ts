import type { CalloutMark, PlanPanel, PlanSheet, PlanView } from '../../shared-types/figure.ts'
import type { PanelId } from '../../shared-types/panel.ts'
import { type CalledPanel, type CalloutWish, homesFor } from './callout-homes.ts'
import { flattened, isInside } from './cubic-path.ts'
import { readOutline } from './path-text.ts'
import { shortestAssignment } from './shortest-assignment.ts'

/** Below this scale there is room for the rings only. */
export const NAMES_FROM_PIXELS_PER_MM = 0.11
const RING_PX = 8.5
/** Room a ring takes along a row of homes, and what each letter beside it adds, px at 11.5 px type. */
const RING_ROOM_PX = 34
const LETTER_PX = 5.4
const CALLED_IN_A_VIEW = 6
/** Panels with nothing to tell are called out up to here only, so that the drawing stays quiet. */
const QUIET_IN_A_VIEW = 3

interface SheetPoint {
  readonly x: number
  readonly y: number
}

/**
 * Callouts of one sheet. Each panel is called out once, in the view where it is largest: inside it where it is
 * large enough, else from a home at the edge of the view by a straight leader. Homes are matched to panels so that
 * the sum of the leaders is least; leaders of a shortest matching never cross, because two that crossed would be
 * shorter with their homes exchanged (Bekos, Kaufmann, Symvonis, Wolff: Boundary labeling, Computational Geometry
 * 36, 2007, straight leaders; the matching itself in `shortest-assignment.ts`).
 */
export function callouts(sheet: PlanSheet, wishes: readonly CalloutWish[], pixelsPerMm: number): CalloutMark[] {
  const named = pixelsPerMm >= NAMES_FROM_PIXELS_PER_MM
  return sheet.views.flatMap((view) => {
    const here = chosen(
      view,
      wishes.filter(({ panelId }) => largestView(sheet, panelId) === view),
    )
    const inside = here.filter((one) => hasRoomInside(one, view, named, pixelsPerMm))
    const outside = here.filter((one) => !inside.includes(one))
    return [
      ...inside.map(({ wish, panel }) =>
        mark(
          wish,
          view,
          ringInside(panel, view, named ? (roomPx(wish) - RING_ROOM_PX) / 2 / pixelsPerMm : 0),
          [],
          named,
        ),
      ),
      ...led(view, outside, named, pixelsPerMm),
    ]
  })
}

/** Which wishes of a view are met; quiet panels come largest first, after all others. */
function chosen(view: PlanView, wishes: readonly CalloutWish[]): CalledPanel[] {
  const all = wishes.flatMap((wish) => {
    const panel = view.panels.find((own) => own.panelId === wish.panelId)
    return panel === undefined ? [] : [{ wish, panel }]
  })
  const telling = all.filter(({ wish }) => !wish.quiet).slice(0, CALLED_IN_A_VIEW)
  const quiet = all.filter(({ wish }) => wish.quiet).sort((a, b) => b.panel.areaMm2 - a.panel.areaMm2)
  return [...telling, ...quiet.slice(0, Math.max(0, QUIET_IN_A_VIEW - telling.length))]
}

/** The view of a sheet in which a panel is largest. */
export function largestView(sheet: PlanSheet, panelId: PanelId): PlanView | undefined {
  let best: PlanView | undefined
  let most = 0
  for (const view of sheet.views) {
    const area = view.panels.find((panel) => panel.panelId === panelId)?.areaMm2 ?? 0
    if (area > most) {
      most = area
      best = view
    }
  }
  return best
}

const onSheet = (view: PlanView, { u, v }: { u: number; v: number }): SheetPoint => ({
  x: view.at.x + u - view.box.u,
  y: view.at.y + v - view.box.v,
})

/** Large panels carry their callout themselves; the ends of the car are too full of lines for that. */
function hasRoomInside({ wish, panel }: CalledPanel, view: PlanView, named: boolean, pixelsPerMm: number): boolean {
  if (view.id === 'front' || view.id === 'rear') return false
  const outline = flattened(readOutline(panel.outline), 8)
  const half = (named ? roomPx(wish) : RING_ROOM_PX) / 2 / pixelsPerMm
  const tall = RING_ROOM_PX / 2 / pixelsPerMm
  const { u, v } = panel.label
  return [-1, 1].every((x) => [-1, 0, 1].every((y) => isInside(outline, [u + x * half, v + y * tall])))
}

function ringInside(panel: PlanPanel, view: PlanView, shift: number): SheetPoint {
  const { x, y } = onSheet(view, panel.label)
  return { x: x - shift, y }
}

function mark(
  wish: CalloutWish,
  view: PlanView,
  ring: SheetPoint,
  leader: readonly SheetPoint[],
  named: boolean,
): CalloutMark {
  return {
    figure: String(wish.stop),
    panelId: wish.panelId,
    view: view.id,
    ring,
    leader,
    name: named ? wish.name : '',
    word: named ? wish.word : '',
    textSide: 'right',
  }
}

/** Room of a ring with its two lines of text. */
const roomPx = ({ name, word }: CalloutWish): number => RING_ROOM_PX + LETTER_PX * Math.max(name.length, word.length)

function led(view: PlanView, wanted: readonly CalledPanel[], named: boolean, pixelsPerMm: number): CalloutMark[] {
  const { served, homes } = homesFor(
    view,
    wanted,
    (wish) => (named ? roomPx(wish) : RING_ROOM_PX) / pixelsPerMm,
    20 / pixelsPerMm,
  )
  if (served.length === 0) return []
  const sites = served.map(({ panel }) => onSheet(view, panel.label))
  const onPaper = homes.map((home) => onSheet(view, home))
  const places = shortestAssignmentOf(sites, onPaper)
  return served.map(({ wish }, index) => {
    const site = sites[index] as SheetPoint
    const home = onPaper[places[index] ?? 0] as SheetPoint
    return mark(wish, view, home, [rim(home, site, pixelsPerMm), site], named)
  })
}

function shortestAssignmentOf(sites: readonly SheetPoint[], homes: readonly SheetPoint[]): number[] {
  return shortestAssignment(sites.map((site) => homes.map((home) => Math.hypot(site.x - home.x, site.y - home.y))))
}

/** Where the leader leaves the ring. */
function rim(ring: SheetPoint, site: SheetPoint, pixelsPerMm: number): SheetPoint {
  const length = Math.hypot(site.x - ring.x, site.y - ring.y) || 1
  const share = Math.min(0.9, RING_PX / pixelsPerMm / length)
  return { x: ring.x + (site.x - ring.x) * share, y: ring.y + (site.y - ring.y) * share }
}
