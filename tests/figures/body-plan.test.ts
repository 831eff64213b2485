import { describe, expect, it } from 'vitest'
import { bodyPlan } from '../../electron/figures/body-plan.ts'
import { readBodyPlan } from '../../electron/figures/body-plan-file.ts'
import { boundsOf, type Cubic, flattened, isInside, pointAt, signedArea } from '../../electron/figures/cubic-path.ts'
import { panelAreaM2 } from '../../electron/figures/panel-areas.ts'
import { readOutline } from '../../electron/figures/path-text.ts'
import { panelList } from '../../electron/sheets/panel-list.ts'
import { plausibleAreas } from './plausible-areas.ts'
import { sedge } from './sedge.ts'

const plan = readBodyPlan('coupe')
const views = plan.sheets.flatMap((sheet) => sheet.views)
const named = (id: string) => {
  const view = views.find((one) => one.id === id)
  if (view === undefined) throw new Error(`No view ${id}`)
  return view
}
const outline = (view: string, panelId: string): Cubic[] =>
  readOutline(named(view).panels.find((panel) => panel.panelId === panelId)?.outline ?? '')
const area = (path: string) => Math.abs(signedArea(readOutline(path)))

/** Pieces as text without direction: the same edge walked either way gives the same text. */
const edgesOf = (path: readonly Cubic[]): string[] =>
  path.map((piece) => {
    const there = piece.map((point) => point.map((value) => value.toFixed(3)).join(' '))
    const back = [...there].reverse()
    return [there.join(';'), back.join(';')].sort()[0] ?? ''
  })

describe('outlines of the coupé', () => {
  it.each(views.flatMap((view) => view.panels.map((panel) => [view.id, panel.panelId, panel] as const)))(
    '%s %s is one closed path that never crosses itself, with its label well inside',
    (_view, _id, panel) => {
      const path = readOutline(panel.outline)
      path.forEach((piece, index) => {
        expect(piece[3]).toEqual(path[(index + 1) % path.length]?.[0])
      })
      const points = flattened(path, 10)
      expect(crossesItself(points)).toBe(false)
      expect(isInside(points, [panel.label.u, panel.label.v])).toBe(true)
    },
  )

  it('one panel has one outline in a view', () => {
    for (const view of views) {
      const ids = view.panels.map((panel) => panel.panelId)
      expect(new Set(ids).size).toBe(ids.length)
    }
  })

  it('every panel of the walk has an outline, and every outline is a panel of the walk', () => {
    const drawn = new Set(views.flatMap((view) => view.panels.map((panel) => panel.panelId)))
    const walk = panelList('coupe', 'with underneath', sedge).panels.map((panel) => panel.id)
    expect(walk.filter((id) => !drawn.has(id))).toEqual([])
    expect([...drawn].filter((id) => !walk.includes(id))).toEqual([])
  })
})

describe('panels of a view tile its silhouette', () => {
  const tiled = views.filter((view) => ['left', 'right', 'roof', 'front', 'rear', 'bay', 'floor'].includes(view.id))
  it.each(tiled.map((view) => [view.id, view] as const))('%s: area error under 0.1 per cent', (_id, view) => {
    const set = new Set(view.set.map(({ panelId }) => panelId))
    const panels = view.panels.filter(({ panelId }) => !set.has(panelId))
    const covered = [...panels.map((panel) => panel.outline), ...view.open].reduce((sum, path) => sum + area(path), 0)
    expect(Math.abs(covered / area(view.silhouette) - 1)).toBeLessThan(0.001)
  })

  it.each(tiled.map((view) => [view.id, view] as const))('%s: every edge is shared by exactly two', (_id, view) => {
    const set = new Set(view.set.map(({ panelId }) => panelId))
    const paths = [
      ...view.panels.filter(({ panelId }) => !set.has(panelId)).map((panel) => panel.outline),
      ...view.open,
      view.silhouette,
    ]
    const counts = new Map<string, number>()
    for (const edge of paths.flatMap((path) => edgesOf(readOutline(path))))
      counts.set(edge, (counts.get(edge) ?? 0) + 1)
    expect([...counts.values()].filter((count) => count !== 2)).toEqual([])
  })

  it('a panel set into another lies wholly within it', () => {
    for (const view of views) {
      for (const { panelId, within } of view.set) {
        const around = flattened(outline(view.id, within))
        for (const point of flattened(outline(view.id, panelId))) expect(isInside(around, point)).toBe(true)
      }
    }
  })
})

describe('the two sides mirror exactly', () => {
  it('left and right elevation have the same outlines under exchanged names', () => {
    const right = new Map(named('right').panels.map((panel) => [panel.panelId, panel.outline]))
    for (const panel of named('left').panels) expect(right.get(panel.panelId.replace(/L$/, 'R'))).toBe(panel.outline)
  })

  it.each(['roof', 'front', 'rear', 'bay', 'floor', 'under'])('%s mirrors about its middle', (id) => {
    const axis = id === 'front' || id === 'rear' ? 0 : 1
    for (const panel of named(id).panels.filter(({ panelId }) => panelId.endsWith('.L'))) {
      const there = edgesOf(
        readOutline(panel.outline).map(
          (piece) => piece.map(([u, v]) => (axis === 0 ? [-u, v] : [u, -v])) as unknown as Cubic,
        ),
      )
      expect(
        edgesOf(outline(id, panel.panelId.replace(/L$/, 'R')))
          .sort()
          .map(plain),
      ).toEqual(there.sort().map(plain))
    }
  })
})

describe('views register', () => {
  const bounds = (view: string, panelId: string) => boundsOf(flattened(outline(view, panelId), 40))

  it('wheelbase, length, width and height are as stated', () => {
    expect(plan.dimensions).toEqual({ lengthMm: 4250, wheelbaseMm: 2500, widthMm: 1616, heightMm: 1350 })
    const side = boundsOf(flattened(readOutline(named('left').silhouette), 40))
    const above = boundsOf(flattened(readOutline(named('roof').silhouette), 40))
    expect(-side.v).toBeCloseTo(1350, -1)
    expect(above.height).toBeCloseTo(1616, -1)
    const tyres = named('left')
      .ink.filter(({ occlude }) => occlude)
      .map(({ path }) => boundsOf(flattened(readOutline(path), 40)))
    const wheels = tyres.filter((box) => Math.abs(box.width - 632) < 1)
    expect(wheels).toHaveLength(2)
    expect(Math.abs((wheels[0]?.u ?? 0) - (wheels[1]?.u ?? 0))).toBeCloseTo(2500, 3)
  })

  it.each(['front-lid', 'front-side.L', 'roof-skin', 'rear-post.L', 'air-chamber', 'rear-lamp-housing.L'])(
    '%s begins and ends at the same stations in side and plan',
    (panelId) => {
      const side = bounds('left', panelId)
      const above = bounds('roof', panelId)
      // The side elevation hides what lies behind the wing, so its panels may be shorter, never longer.
      expect(side.u).toBeGreaterThan(above.u - 25)
      expect(side.u + side.width).toBeLessThan(above.u + above.width + 25)
    },
  )

  it('door gaps stand at the same stations in side and plan', () => {
    const crestOf = (view: string) => bounds(view, 'rear-side.L').u
    expect(Math.abs(crestOf('left') - 2452)).toBeLessThan(1)
    expect(Math.abs(bounds('roof', 'front-door.L').u - 1564)).toBeLessThan(8)
  })

  it('the shoulder of the wings has one height in side, front and rear', () => {
    const top = (view: string, panelId: string) => -bounds(view, panelId).v
    expect(Math.abs(top('left', 'front-side.L') - top('front', 'front-side.L'))).toBeLessThan(12)
    expect(Math.abs(top('left', 'rear-side.L') - top('rear', 'rear-side.L'))).toBeLessThan(12)
  })

  it('the lamp has one height and depth in side, plan and front', () => {
    const side = bounds('left', 'lamp-housing.L')
    const front = bounds('front', 'lamp-housing.L')
    const above = bounds('roof', 'lamp-housing.L')
    expect(Math.abs(side.v + side.height / 2 - (front.v + front.height / 2))).toBeLessThan(15)
    expect(Math.abs(above.v + above.height / 2 - (front.u + front.width / 2))).toBeLessThan(15)
    expect(Math.abs(side.u + side.width - (above.u + above.width))).toBeLessThan(15)
  })

  it('the roof is as high in front and rear as at the side', () => {
    for (const id of ['left', 'front', 'rear']) expect(-bounds(id, 'roof-skin').v).toBeCloseTo(1350, -1)
  })
})

describe('developed areas', () => {
  const areas = Object.entries(plausibleAreas)
  it.each(areas)('%s lies within its plausible range', (id, [least, most]) => {
    for (const panelId of [id, `${id}.L`, `${id}.R`]) {
      const drawn = panelAreaM2('coupe', panelId)
      if (drawn === null) continue
      expect(drawn).toBeGreaterThanOrEqual(least)
      expect(drawn).toBeLessThanOrEqual(most)
    }
  })

  it('is known for all large outside panels, and null for another body or a panel seen edge on', () => {
    for (const id of ['front-side.L', 'front-door.R', 'rear-side.L', 'front-lid', 'rear-lid', 'roof-skin']) {
      expect(panelAreaM2('coupe', id)).not.toBeNull()
    }
    expect(panelAreaM2('coupe', 'front-post-upper.L')).toBeNull()
    expect(panelAreaM2('van', 'front-lid')).toBeNull()
  })
})

describe('the figure handed out', () => {
  it('is the same object each time and names its panels in the chosen English', () => {
    expect(bodyPlan('coupe', 'uk')).toBe(bodyPlan('coupe', 'uk'))
    expect(bodyPlan('coupe', 'us').textAlternative).toContain('Left front fender')
    expect(bodyPlan('coupe', 'uk').textAlternative).toContain('Left front wing')
  })

  it('says what to do where a body is not drawn yet', () => {
    expect(() => bodyPlan('van', 'uk')).toThrow(/list of panels/)
  })
})

const plain = (edge: string) => edge.replaceAll('-0.000', '0.000')

function crossesItself(points: readonly (readonly [number, number])[]): boolean {
  const turn = (a: readonly number[], b: readonly number[], c: readonly number[]) =>
    ((b[0] ?? 0) - (a[0] ?? 0)) * ((c[1] ?? 0) - (a[1] ?? 0)) -
    ((b[1] ?? 0) - (a[1] ?? 0)) * ((c[0] ?? 0) - (a[0] ?? 0))
  const count = points.length
  for (let i = 0; i < count; i++) {
    const [a, b] = [points[i] ?? [], points[(i + 1) % count] ?? []]
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue
      const [c, d] = [points[j] ?? [], points[(j + 1) % count] ?? []]
      if (turn(a, b, c) * turn(a, b, d) < -1e-6 && turn(c, d, a) * turn(c, d, b) < -1e-6) return true
    }
  }
  return false
}

it('a closed form of the area agrees with a fine polygon', () => {
  const path = outline('left', 'front-side.L')
  const points = path.flatMap((piece) => Array.from({ length: 400 }, (_, i) => pointAt(piece, i / 400)))
  const polygon = points.reduce((sum, [x, y], i) => {
    const [x2, y2] = points[(i + 1) % points.length] ?? [0, 0]
    return sum + (x * y2 - x2 * y) / 2
  }, 0)
  expect(Math.abs(signedArea(path) / polygon - 1)).toBeLessThan(1e-5)
})
