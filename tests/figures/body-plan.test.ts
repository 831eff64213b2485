import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bodyPlan } from '../../electron/figures/body-plan.ts'
import { describedBody } from '../../electron/figures/body-shape/body-description.ts'
import { outsideSheet, outsideWork } from '../../electron/figures/body-shape/outside-sheet.ts'
import type { PlanViewFile } from '../../electron/figures/body-trays/plan-sheet-file.ts'
import { boundsOf, type Cubic, flattened, isInside, signedArea } from '../../electron/figures/cubic-path.ts'
import { panelAreaM2 } from '../../electron/figures/panel-areas.ts'
import { readOutline } from '../../electron/figures/path-text.ts'
import { drawnBody } from '../../electron/figures/plan-sheets.ts'
import { dimensionsOf } from '../../electron/sheets/dimension-list.ts'
import { jointBetween } from '../../electron/sheets/joint-list.ts'
import { panelConditions, panelList } from '../../electron/sheets/panel-list.ts'
import type { BodyStyle } from '../../shared-types/words.ts'
import { anyDimensions, bodies } from './body-trays/test-frames.ts'
import { plausibleAreas } from './plausible-areas.ts'
import { sedge } from './sedge.ts'

const everything = Object.keys(panelConditions()).flatMap((name) =>
  name === 'filler-flap' ? ['filler-flap.R'] : name === 'side-loading-door' ? ['side-loading-door.L'] : [name],
)
const plans = bodies.map((body) => [body, drawnBody(body, dimensionsOf(body, {}), sedge)] as const)
const outsideOf = (body: BodyStyle): readonly PlanViewFile[] => {
  const sheet = plans.find(([name]) => name === body)?.[1].sheets.find(({ id }) => id === 'outside')
  if (!sheet) throw new Error(`No outside of ${body}`)
  return sheet.views
}
const named = (views: readonly PlanViewFile[], id: string): PlanViewFile => {
  const view = views.find((one) => one.id === id)
  if (!view) throw new Error(`No view ${id}`)
  return view
}
const area = (path: string) => Math.abs(signedArea(readOutline(path)))

/** Pieces as text without direction: the same edge walked either way gives the same text. */
const edgesOf = (path: readonly Cubic[]): string[] =>
  path.map((piece) => {
    const there = piece.map((point) => point.map((value) => (value + 0).toFixed(3)).join(' '))
    return [there.join(';'), [...there].reverse().join(';')].sort()[0] ?? ''
  })

describe.each(plans)('the plan of a %s', (body, plan) => {
  it('draws every panel of the walk and no other, whatever the car has', () => {
    for (const conditions of [[], sedge, everything]) {
      const { sheets } = drawnBody(body, dimensionsOf(body, {}), conditions)
      const drawn = new Set(sheets.flatMap(({ views }) => views.flatMap((view) => view.panels.map((p) => p.panelId))))
      const walk = panelList(body, 'with underneath', conditions).panels.map((panel) => panel.id)
      expect(walk.filter((id) => !drawn.has(id))).toEqual([])
      expect([...drawn].filter((id) => !walk.includes(id))).toEqual([])
    }
  })

  it('has the length, width, height and wheelbase it states', () => {
    const { lengthMm, widthMm, heightMm, wheelbaseMm } = plan.dimensions
    const left = named(outsideOf(body), 'left')
    const side = boundsOf(flattened(readOutline(left.silhouette), 30))
    expect(Math.abs(-side.v - heightMm)).toBeLessThan(1)
    const above = boundsOf(flattened(readOutline(named(outsideOf(body), 'roof').silhouette), 30))
    expect(Math.abs(above.height - widthMm)).toBeLessThan(2)
    const inked = left.ink
      .filter(({ occlude }) => occlude)
      .map(({ path }) => boundsOf(flattened(readOutline(path), 20)))
    const ends = inked.map((box) => [box.u, box.u + box.width] as const)
    expect(Math.abs(Math.min(...ends.map(([from]) => from)))).toBeLessThan(6)
    expect(Math.abs(Math.max(...ends.map(([, to]) => to)) - lengthMm)).toBeLessThan(6)
    const tyres = inked.filter((box) => Math.abs(box.width - 2 * plan.dimensions.tyreRadiusMm) < 1)
    expect(Math.abs((tyres[0]?.u ?? 0) - (tyres[1]?.u ?? 0))).toBeCloseTo(wheelbaseMm, 1)
  })

  it('outlines closed, simple, clockwise, with their label inside; tiled and mirrored to the micrometre', () => {
    for (const view of outsideOf(body)) expect(faultsOf(view)).toEqual([])
    expect(mirrorFaults(outsideOf(body))).toEqual([])
  })

  it('shows the same point at one station, breadth and height in every view', () => {
    expect(registrationFaults(outsideOf(body))).toEqual([])
  })

  it('neighbours meet by a joint that has a name', () => {
    expect(unnamedSeams(body, outsideOf(body))).toEqual([])
  })

  it('has developed areas within what is plausible', () => {
    const faults = Object.entries(plausibleAreas(body)).flatMap(([id, [least, most]]) => {
      const drawn = panelAreaM2(body, id) ?? panelAreaM2(body, `${id}.L`)
      return drawn !== null && (drawn < least || drawn > most) ? [`${id}: ${drawn} not in ${least} to ${most}`] : []
    })
    expect(faults).toEqual([])
    for (const id of ['front-side.L', 'front-door.R', 'front-lid', 'lower-rail-outer.L']) {
      expect(panelAreaM2(body, id)).not.toBeNull()
    }
  })
})

describe('a car of its own dimensions', () => {
  it.each(bodies)('%s: two hundred dimension sets tile, mirror, register and keep their labels inside', (body) => {
    const description = describedBody(body)
    const conditions = new Set(sedge)
    fc.assert(
      fc.property(anyDimensions(body), (dimensions) => {
        const { views } = outsideSheet(outsideWork(description, dimensions, conditions))
        expect([...views.flatMap(faultsOf), ...mirrorFaults(views), ...registrationFaults(views)]).toEqual([])
      }),
      { numRuns: 200, seed: 20260514 },
    )
  })

  it('is drawn with them', () => {
    const own = bodyPlan('coupe', 'uk', { wheelbaseMm: 2600, heightMm: 1400 }, sedge)
    expect(own.dimensions).toMatchObject({ wheelbaseMm: 2600, heightMm: 1400, lengthMm: 4250 })
    expect(own.sheets[0]?.views[0]?.silhouette).not.toBe(
      bodyPlan('coupe', 'uk', {}, sedge).sheets[0]?.views[0]?.silhouette,
    )
  })
})

describe('the figure handed out', () => {
  it('is the same object each time and names its panels in the chosen English', () => {
    expect(bodyPlan('coupe', 'uk')).toBe(bodyPlan('coupe', 'uk'))
    expect(bodyPlan('coupe', 'us').textAlternative).toContain('Left front fender')
    expect(bodyPlan('coupe', 'uk').textAlternative).toContain('Left front wing')
  })
})

/** What is wrong with one view, in words; empty when nothing is. */
function faultsOf(view: PlanViewFile): string[] {
  const faults: string[] = []
  const set = new Set(view.set.map(({ panelId }) => panelId))
  const ids = view.panels.map(({ panelId }) => panelId)
  if (new Set(ids).size !== ids.length) faults.push(`${view.id}: a panel has two outlines`)
  for (const { panelId, outline, label } of view.panels) {
    const path = readOutline(outline)
    const points = flattened(path, 6)
    if (path.some((piece, index) => String(piece[3]) !== String(path[(index + 1) % path.length]?.[0]))) {
      faults.push(`${view.id} ${panelId} is not closed`)
    }
    if (signedArea(path) <= 0) faults.push(`${view.id} ${panelId} runs the wrong way`)
    if (crossesItself(points)) faults.push(`${view.id} ${panelId} crosses itself`)
    if (!isInside(points, [label.u, label.v])) faults.push(`${view.id} ${panelId}: label outside`)
  }
  const tiles = [...view.panels.filter(({ panelId }) => !set.has(panelId)).map(({ outline }) => outline), ...view.open]
  const covered = tiles.reduce((sum, path) => sum + area(path), 0)
  if (Math.abs(covered / area(view.silhouette) - 1) >= 0.001)
    faults.push(`${view.id}: panels do not fill the silhouette`)
  const counts = new Map<string, number>()
  for (const edge of [...tiles, view.silhouette].flatMap((path) => edgesOf(readOutline(path)))) {
    counts.set(edge, (counts.get(edge) ?? 0) + 1)
  }
  const odd = [...counts].filter(([, count]) => count !== 2)
  if (odd.length > 0) faults.push(`${view.id}: ${odd.length} edges are not shared by exactly two`)
  for (const { panelId, within } of view.set) {
    const [inner, outer] = [panelId, within].map(
      (id) => view.panels.find((panel) => panel.panelId === id)?.outline ?? '',
    )
    const around = flattened(readOutline(outer ?? ''), 10)
    if (flattened(readOutline(inner ?? '')).some((point) => !isInside(around, point))) {
      faults.push(`${view.id}: ${panelId} is not within ${within}`)
    }
  }
  return faults
}

/** Lines may touch within the breadth of a hair; a crossing counts where both lie this far on either side, mm. */
const HAIR_MM = 0.05

function crossesItself(points: readonly (readonly [number, number])[]): boolean {
  type At = readonly [number, number]
  const off = (a: At, b: At, c: At) =>
    ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / (Math.hypot(b[0] - a[0], b[1] - a[1]) || 1)
  const apart = (one: number, other: number) => one * other < 0 && Math.abs(one) > HAIR_MM && Math.abs(other) > HAIR_MM
  return points.some((a, i) => {
    const b = points[(i + 1) % points.length] ?? a
    return points.slice(i + 2).some((c, k) => {
      const j = i + 2 + k
      const d = points[(j + 1) % points.length] ?? c
      if (i === 0 && j === points.length - 1) return false
      if (Math.max(a[0], b[0]) < Math.min(c[0], d[0]) || Math.max(c[0], d[0]) < Math.min(a[0], b[0])) return false
      return apart(off(a, b, c), off(a, b, d)) && apart(off(c, d, a), off(c, d, b))
    })
  })
}

/** The two elevations are one drawing under exchanged names; plan and ends are their own mirror images. */
function mirrorFaults(views: readonly PlanViewFile[]): string[] {
  const sides = (id: string) => {
    const view = named(views, id)
    const set = new Set(view.set.map(({ panelId }) => panelId))
    return view.panels.filter(({ panelId }) => !set.has(panelId))
  }
  const right = new Map(sides('right').map((panel) => [panel.panelId, panel.outline]))
  const faults = sides('left').flatMap(({ panelId, outline }) =>
    right.get(panelId.replace(/L$/, 'R')) === outline ? [] : [`right ${panelId}`],
  )
  for (const id of ['roof', 'front', 'rear']) {
    const panels = new Map(sides(id).map((panel) => [panel.panelId, readOutline(panel.outline)]))
    for (const [panelId, path] of panels) {
      const other = panels.get(panelId.replace(/L$/, 'R'))
      const flipped = path.map(
        (piece) => piece.map(([u, v]) => (id === 'roof' ? [u, -v] : [-u, v])) as unknown as Cubic,
      )
      if (!panelId.endsWith('R') && (!other || String(edgesOf(flipped).sort()) !== String(edgesOf(other).sort()))) {
        faults.push(`${id} ${panelId}`)
      }
    }
  }
  return faults
}

/**
 * Corners of a panel that side, plan and an end all show must be one point in space: the stations of the side and of
 * the plan, the heights of the side and of the end, the breadths of plan and end.
 */
function registrationFaults(views: readonly PlanViewFile[]): string[] {
  const corners = (id: string, panelId: string) =>
    readOutline(named(views, id).panels.find((panel) => panel.panelId === panelId)?.outline ?? '').map(
      ([start]) => start,
    )
  const faults: string[] = []
  for (const [panelId, end] of [
    ['front-post-upper.L', 'front'],
    ['lamp-housing.L', 'front'],
    ['rear-lamp-housing.L', 'rear'],
  ] as const) {
    const [side, above, ahead] = [corners('left', panelId), corners('roof', panelId), corners(end, panelId)]
    if (side.length === 0) continue
    const sign = end === 'rear' ? -1 : 1
    const inSpace = side.filter(([x, v]) =>
      above.some(
        ([u, y]) =>
          Math.abs(u - x) < 0.0011 &&
          ahead.some(([w, z]) => Math.abs(sign * w - y) < 0.0011 && Math.abs(z - v) < 0.0011),
      ),
    )
    if (inSpace.length !== side.length) {
      faults.push(
        `${panelId}: ${side.length - inSpace.length} of ${side.length} corners stand elsewhere in another view`,
      )
    }
  }
  return faults
}

/** Pairs of panels that share an edge in a view although no joint of the list joins them. */
function unnamedSeams(body: BodyStyle, views: readonly PlanViewFile[]): string[] {
  const seams = new Set<string>()
  for (const view of views) {
    const owner = new Map<string, string>()
    for (const { panelId, outline } of view.panels) {
      for (const edge of edgesOf(readOutline(outline))) {
        const other = owner.get(edge)
        if (other !== undefined && jointBetween(other, panelId, body) === null)
          seams.add([other, panelId].sort().join(' + '))
        owner.set(edge, panelId)
      }
    }
  }
  return [...seams].sort()
}
