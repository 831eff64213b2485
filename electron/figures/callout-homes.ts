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
 * width a callout takes, `below` the distance of a row from the edge of the view, mm. A callout for which no row has
 * room left is dropped; the last wishes go first.
 */
export function homesFor(
  view: PlanView,
  wanted: readonly CalledPanel[],
  room: (wish: CalloutWish) => number,
  below: number,
): { served: CalledPanel[]; homes: PlanPoint[] } {
  const rows = railsOf(view, below).map((rail) => ({ rail, group: [] as CalledPanel[] }))
  const pitchOf = (group: readonly CalledPanel[]) => Math.max(...group.map(({ wish }) => room(wish)))
  for (const one of wanted) {
    const row = rows.find(({ rail, group }) => {
      const together = [...group, one]
      return rail.serves(one.panel.label) && together.length * pitchOf(together) <= rail.to - rail.from
    })
    row?.group.push(one)
  }
  const filled = rows.filter(({ group }) => group.length > 0)
  return {
    served: filled.flatMap(({ group }) => group),
    homes: filled.flatMap(({ rail, group }) => {
      const wished = group.map(({ panel }) => panel.label.u).sort((a, b) => a - b)
      return spread(wished, pitchOf(group), rail).map((u) => ({ u, v: rail.v }))
    }),
  }
}

/**
 * Places a pitch apart that lie as near as can be, by least squares, to the wished ones: isotonic regression by
 * pooling adjacent violators (Ayer and others, Annals of Mathematical Statistics 26, 1955), clipped to the row.
 */
function spread(wished: readonly number[], pitch: number, { from, to }: Rail): number[] {
  const pools: { sum: number; count: number }[] = []
  for (const [index, u] of wished.entries()) {
    pools.push({ sum: u - index * pitch, count: 1 })
    for (;;) {
      const last = pools.at(-1)
      const before = pools.at(-2)
      if (!last || !before || before.sum / before.count <= last.sum / last.count) break
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count })
    }
  }
  const most = to - wished.length * pitch
  return pools
    .flatMap(({ sum, count }) => new Array<number>(count).fill(sum / count))
    .map((start, index) => Math.max(from, Math.min(most, start)) + index * pitch)
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
