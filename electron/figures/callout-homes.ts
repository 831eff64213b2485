import type { PlanPanel, PlanView } from '../../shared-types/figure.ts'
import type { PlanPoint } from '../../shared-types/finding.ts'
import type { PanelId } from '../../shared-types/panel.ts'

/** A panel that wants a callout; the first in the list are the ones that get one. */
export interface CalloutWish {
  readonly panelId: PanelId
  readonly stop: number
  readonly name: string
  readonly word: string
  /** Nothing was found here and nothing is left to see. */
  readonly quiet: boolean
}

/** A wish with the panel it names, in the view where it is called out. */
export interface CalledPanel {
  readonly wish: CalloutWish
  readonly panel: PlanPanel
}

/** A row of callouts from its first ring to the end of its last text, mm of the view. */
interface Rail {
  readonly from: number
  readonly to: number
  readonly v: number
  /** Whether a panel whose label lies there is served by this row. */
  serves(label: PlanPoint): boolean
}

/**
 * Homes for the callouts of a view, each as near above or below its panel as its neighbours allow. `room` is the
 * width a callout takes, `below` the distance of a row from the edge of the view, mm. Callouts for which a row has
 * no room left are dropped, the last wishes first.
 */
export function homesFor(
  view: PlanView,
  wanted: readonly CalledPanel[],
  room: (wish: CalloutWish) => number,
  below: number,
): { served: CalledPanel[]; homes: PlanPoint[] } {
  const served: CalledPanel[] = []
  const homes: PlanPoint[] = []
  const rails = railsOf(view, below)
  const groups = rails.map((rail, index) =>
    wanted.filter(
      ({ panel }) => rails.findIndex((other) => other.serves(panel.label)) === index && rail.to > rail.from,
    ),
  )
  for (const [index, group] of groups.entries()) {
    const rail = rails[index] as Rail
    const inOrder = fitting(group, rail, room)
    served.push(...inOrder)
    homes.push(...spread(inOrder, rail, room))
  }
  return { served, homes }
}

/** As many of the first wishes as a row has room for, from left to right. */
function fitting(group: readonly CalledPanel[], rail: Rail, room: (wish: CalloutWish) => number): CalledPanel[] {
  const taken: CalledPanel[] = []
  let width = 0
  for (const one of group) {
    width += room(one.wish)
    if (width <= rail.to - rail.from) taken.push(one)
    else width -= room(one.wish)
  }
  return taken.sort((a, b) => a.panel.label.u - b.panel.label.u)
}

/** Moves callouts apart along a row: to the right where they overlap, then back from its end. */
function spread(inOrder: readonly CalledPanel[], rail: Rail, room: (wish: CalloutWish) => number): PlanPoint[] {
  const places: number[] = []
  let free = rail.from
  for (const { wish, panel } of inOrder) {
    const place = Math.max(panel.label.u, free)
    places.push(place)
    free = place + room(wish)
  }
  let end = rail.to
  for (let index = places.length - 1; index >= 0; index--) {
    const own = room((inOrder[index] as CalledPanel).wish)
    places[index] = Math.min(places[index] ?? end, end - own)
    end = places[index] ?? end
  }
  return places.map((u) => ({ u, v: rail.v }))
}

/**
 * Sides: beside the roof, under the sill between the wheels, and on the right side under the ground line (under the
 * left one stands the ruler). Ends: under the ground line. Roof: inside its panels only. Other sheets: above and below.
 */
function railsOf(view: PlanView, below: number): Rail[] {
  const { u, v, width, height } = view.box
  if (view.id === 'left' || view.id === 'right') {
    const lower = (label: PlanPoint) => label.v > -700
    const underGround: Rail[] = [
      { from: -60, to: 1180, v: below, serves: (label) => lower(label) && label.u < 900 },
      { from: 3000, to: 4800, v: below, serves: (label) => lower(label) && label.u > 2650 },
    ]
    return [
      {
        from: 1170,
        to: 2900,
        v: -100,
        serves: ({ u: at, v: down }) => down > -320 || (at > 1500 && at < 2600 && down > -850),
      },
      ...(view.id === 'right' ? underGround : []),
      { from: 0, to: 1820, v: -1300, serves: (label) => label.u < 2050 },
      { from: 2840, to: 4500, v: -1300, serves: () => true },
    ]
  }
  if (view.id === 'front' || view.id === 'rear') return [{ from: -830, to: 1000, v: below, serves: () => true }]
  if (view.id === 'roof') return []
  const middle = v + height / 2
  return [
    { from: u, to: u + width + 400, v: v - below, serves: (label) => label.v < middle },
    { from: u, to: u + width + 400, v: v + height + below, serves: () => true },
  ]
}
