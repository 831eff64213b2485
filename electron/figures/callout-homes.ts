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

/** A row where rings may stand, mm of the view. */
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
    const fitting = group.filter((_, place) => widthOf(group.slice(0, place + 1), room) <= rail.to - rail.from)
    const inOrder = [...fitting].sort((a, b) => a.panel.label.u - b.panel.label.u)
    served.push(...inOrder)
    homes.push(...spread(inOrder, rail, room))
  }
  return { served, homes }
}

/** Width of a row from its first ring to its last. */
const widthOf = (group: readonly CalledPanel[], room: (wish: CalloutWish) => number): number =>
  group.slice(1).reduce((sum, { wish }) => sum + room(wish), 0)

/** Moves rings apart along a row: to the right where they overlap, then back from its end. */
function spread(group: readonly CalledPanel[], rail: Rail, room: (wish: CalloutWish) => number): PlanPoint[] {
  const widest = Math.max(0, ...group.map(({ wish }) => room(wish)))
  const pitch = group.length > 1 ? Math.min(widest, (rail.to - rail.from) / (group.length - 1)) : 0
  const places: number[] = []
  for (const { panel } of group)
    places.push(Math.max(panel.label.u, rail.from, (places.at(-1) ?? rail.from - pitch) + pitch))
  let limit = rail.to
  for (let index = places.length - 1; index >= 0; index--) {
    places[index] = Math.min(places[index] ?? limit, limit)
    limit = (places[index] ?? limit) - pitch
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
    return [
      { from: 1190, to: 2100, v: -100, serves: (label) => label.v > -320 },
      ...(view.id === 'right'
        ? [
            { from: -60, to: 500, v: below, serves: (label: PlanPoint) => label.u < 900 && label.v > -700 },
            { from: 3300, to: 3800, v: below, serves: (label: PlanPoint) => label.u > 2700 && label.v > -700 },
          ]
        : []),
      { from: 0, to: 1080, v: -1300, serves: (label) => label.u < 2050 },
      { from: 2860, to: 3640, v: -1300, serves: () => true },
    ]
  }
  if (view.id === 'front' || view.id === 'rear') return [{ from: -790, to: 240, v: below, serves: () => true }]
  if (view.id === 'roof') return []
  const middle = v + height / 2
  return [
    { from: u, to: u + width * 0.9, v: v - below, serves: (label) => label.v < middle },
    { from: u, to: u + width * 0.9, v: v + height + below, serves: () => true },
  ]
}
