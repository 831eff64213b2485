import type { CalloutMark, PlanSheet, PlanView } from '../../shared-types/figure.ts'
import type { PanelId } from '../../shared-types/panel.ts'
import { type CalloutPlace, choosePlaces } from './callout-choice.ts'
import { RING_PX } from './callout-conflicts.ts'
import { groundOf, type SheetBox } from './callout-ground.ts'
import { placesOf, type SheetSurroundings } from './callout-places.ts'
import type { CalledPanel, CalloutWish } from './callout-wish.ts'
import { boundsOf, flattened } from './cubic-path.ts'
import { readOutline } from './path-text.ts'
import { captionBox, rulerBoxes, viewCaptions } from './sheet-furniture.ts'

/** Below this scale there is room for the rings only. */
export const NAMES_FROM_PIXELS_PER_MM = 0.11
/** From this scale on the reader has come nearer, and more is named. */
const NEARER_FROM_PIXELS_PER_MM = 0.28
/** Paper round the sheet that callouts may use on screen and on the page, px. */
const PAPER_PX = { left: 24, top: 4, right: 12, foot: 0 } as const

/** How many panels of one view are called out, and how many of those may have nothing to tell. */
export interface CalloutLimits {
  readonly inAView: number
  readonly quiet: number
}

/** Four to six in each of several views; a sheet of one view has the paper for more. */
export function limitsFor(sheet: PlanSheet, pixelsPerMm: number): CalloutLimits {
  if (sheet.views.length === 1) return { inAView: 30, quiet: 12 }
  return pixelsPerMm >= NEARER_FROM_PIXELS_PER_MM ? { inAView: 12, quiet: 6 } : { inAView: 6, quiet: 3 }
}

/**
 * Callouts of one sheet: numbered rings, each in its panel where the panel is bare and large enough, else on bare paper
 * with a straight leader to a point inside the panel. `taken` is where marks of the record stand, sheet mm. Places are
 * chosen so that no ring, text or leader touches another (`callout-choice.ts`, after Christensen, Marks and Shieber
 * 1995); names are folded away, ring by ring, where there is no room. A panel in hand that
 * would not be called out otherwise is placed last, so that walking on moves no other callout unless there is no room.
 */
export function callouts(
  sheet: PlanSheet,
  wishes: readonly CalloutWish[],
  pixelsPerMm: number,
  taken: readonly SheetBox[] = [],
  limits: CalloutLimits = limitsFor(sheet, pixelsPerMm),
): CalloutMark[] {
  const named = pixelsPerMm >= NAMES_FROM_PIXELS_PER_MM
  const ground = groundOf(sheet, pixelsPerMm)
  const px = (length: number) => length / pixelsPerMm
  const around: SheetSurroundings = {
    ground,
    pixelsPerMm,
    taken,
    captions: viewCaptions(sheet, ground, pixelsPerMm).map((caption) => captionBox(caption, pixelsPerMm)),
    rulers: rulerBoxes(sheet, pixelsPerMm),
    paper: {
      left: -px(PAPER_PX.left),
      top: -px(PAPER_PX.top),
      right: sheet.widthMm + px(PAPER_PX.right),
      foot: sheet.heightMm + px(PAPER_PX.foot),
    },
  }
  const called = calledPanels(sheet, wishes, limits, (view, panelId) => ground.panelNumber(view.id, panelId))
  const places = choosePlaces(called.map((one) => placesOf(one, around, named)))
  return called.flatMap((one, index) => {
    const place = places[index]
    return place ? [markOf(one, place, pixelsPerMm)] : []
  })
}

/** The panels to be called out and where, in the order of the wishes; the one in hand last where it is one too many. */
function calledPanels(
  sheet: PlanSheet,
  wishes: readonly CalloutWish[],
  limits: CalloutLimits,
  numberOf: (view: PlanView, panelId: PanelId) => number,
): CalledPanel[] {
  const all = wishes.flatMap((wish) => {
    const view = viewFor(sheet, wish)
    const drawn = view?.panels.find(({ panelId }) => panelId === wish.panelId)
    if (view === undefined || drawn === undefined) return []
    const [dx, dy] = [view.at.x - view.box.u, view.at.y - view.box.v]
    const { u, v, width, height } = boundsOf(flattened(readOutline(drawn.outline), 8))
    const called: CalledPanel = {
      wish,
      view,
      viewPlace: sheet.views.indexOf(view) + 1,
      panel: numberOf(view, wish.panelId),
      label: { x: drawn.label.u + dx, y: drawn.label.v + dy },
      box: { left: u + dx, top: v + dy, right: u + width + dx, foot: v + height + dy },
    }
    return [{ called, areaMm2: drawn.areaMm2 }]
  })
  const chosen = new Set(
    sheet.views.flatMap((view) => {
      const here = all.filter(({ called }) => called.view === view)
      const telling = here.filter(({ called }) => !called.wish.quiet).slice(0, limits.inAView)
      const quiet = here.filter(({ called }) => called.wish.quiet).sort((a, b) => b.areaMm2 - a.areaMm2)
      return [...telling, ...quiet.slice(0, Math.max(0, limits.quiet - telling.length))]
    }),
  )
  const extra = all.filter((one) => one.called.wish.inHand && !chosen.has(one))
  return [...all.filter((one) => chosen.has(one)), ...extra].map(({ called }) => called)
}

/** The view in which a panel is called out: where its finding lies, else where it is largest. */
function viewFor(sheet: PlanSheet, { panelId, at }: CalloutWish): PlanView | undefined {
  const found = sheet.views.find((view) => view.id === at?.view && view.panels.some((own) => own.panelId === panelId))
  const areaIn = (view: PlanView) => view.panels.find((own) => own.panelId === panelId)?.areaMm2 ?? 0
  const largest = sheet.views.reduce<PlanView | undefined>(
    (best, view) => (areaIn(view) > (best === undefined ? 0 : areaIn(best)) ? view : best),
    undefined,
  )
  return found ?? largest
}

function markOf({ wish, view }: CalledPanel, place: CalloutPlace, pixelsPerMm: number): CalloutMark {
  const mm = ({ x, y }: { x: number; y: number }) => ({ x: x / pixelsPerMm, y: y / pixelsPerMm })
  const { ring, end, text } = place
  const length = end === null ? 1 : Math.hypot(end.x - ring.x, end.y - ring.y) || 1
  const rim = end && {
    x: ring.x + ((end.x - ring.x) * RING_PX) / length,
    y: ring.y + ((end.y - ring.y) * RING_PX) / length,
  }
  return {
    figure: String(wish.stop),
    panelId: wish.panelId,
    view: view.id,
    ring: mm(ring),
    leader: end && rim ? [mm(rim), mm(end)] : [],
    name: text === null ? '' : wish.name,
    word: text === null ? '' : wish.word,
    textSide: text !== null && text.right < ring.x ? 'left' : 'right',
  }
}
