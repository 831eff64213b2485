import { readFileSync } from 'node:fs'
import { create, type Font } from '@cantoo/fontkit'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bodyPlan } from '../../electron/figures/body-plan.ts'
import { groundOf } from '../../electron/figures/callout-ground.ts'
import type { CalloutWish } from '../../electron/figures/callout-wish.ts'
import { callouts } from '../../electron/figures/callouts.ts'
import { distanceToChord, flattened, isInside, type Point } from '../../electron/figures/cubic-path.ts'
import { readOutline, readPath } from '../../electron/figures/path-text.ts'
import { captionBox, viewCaptions } from '../../electron/figures/sheet-furniture.ts'
import { textWidthPx } from '../../electron/figures/text-room.ts'
import { panelList } from '../../electron/sheets/panel-list.ts'
import type { CalloutMark, PlanSheet } from '../../shared-types/figure.ts'
import { panelName } from '../../shared-types/panel.ts'
import { sedge } from './sedge.ts'

const definitions = panelList('coupe', 'with underneath', sedge).panels
const nameOf = new Map(definitions.map((panel) => [panel.id, panelName({ ...panel, side: null }, 'uk')]))
const SCALES = [0.087, 0.138, 0.23] as const
const everything = { inAView: 99, quiet: 0 }

/** The outside of the car with an id of its own for each outline, so that a panel can be called out in every view. */
function outsideWithOwnIds(): PlanSheet {
  const sheet = bodyPlan('coupe', 'uk').sheets.find(({ id }) => id === 'outside')
  if (sheet === undefined) throw new Error('no outside')
  return {
    ...sheet,
    views: sheet.views.map((view) => ({
      ...view,
      panels: view.panels.map((panel) => ({ ...panel, panelId: `${panel.panelId}@${view.id}` })),
    })),
  }
}
const sheet = outsideWithOwnIds()
const outlines = sheet.views.flatMap((view) => view.panels.map((panel) => ({ view, panel })))

const wishFor = (panelId: string, stop: number): CalloutWish => ({
  panelId,
  stop,
  name: nameOf.get(panelId.split('@')[0] ?? '') ?? 'Panel',
  word: stop % 4 === 0 ? 'filler in place of metal' : 'not inspected',
  quiet: false,
  inHand: false,
  hatched: stop % 4 === 0,
  at: null,
})

/** Sixty panels, evenly over the five views. */
const sixty = Array.from({ length: 60 }, (_, index) => outlines[Math.floor((index * outlines.length) / 60)]).flatMap(
  (one, index) => (one === undefined ? [] : [wishFor(one.panel.panelId, index + 1)]),
)

// Everything below looks at the finished callouts alone, in pixels, with no help from what placed them.
interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly foot: number
}
const face = create(readFileSync('resources/fonts/SourceSans3-SemiBold.ttf')) as Font
const widthOf = (text: string, size: number) => (face.layout(text).advanceWidth / face.unitsPerEm) * size

interface Drawn {
  readonly mark: CalloutMark
  readonly ring: Point
  readonly text: Box | null
  readonly leader: readonly [Point, Point] | null
}

function drawn(mark: CalloutMark, scale: number): Drawn {
  const px = ({ x, y }: { x: number; y: number }): Point => [x * scale, y * scale]
  const ring = px(mark.ring)
  const width = Math.max(widthOf(mark.name, 11.5), widthOf(mark.word, 11.5))
  const from = mark.textSide === 'right' ? ring[0] + 12.5 : ring[0] - 12.5 - width
  const [rim, end] = mark.leader
  return {
    mark,
    ring,
    text: mark.name === '' ? null : { left: from, right: from + width, top: ring[1] - 10, foot: ring[1] + 14 },
    leader: rim && end ? [px(rim), px(end)] : null,
  }
}

const distanceToBox = ([x, y]: Point, box: Box) =>
  Math.hypot(Math.max(box.left - x, 0, x - box.right), Math.max(box.top - y, 0, y - box.foot))
function cross([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean {
  const turn = (p: Point, q: Point, r: Point) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0
}
const sidesOf = ({ left, top, right, foot }: Box): [Point, Point][] => [
  [
    [left, top],
    [right, foot],
  ],
  [
    [left, foot],
    [right, top],
  ],
]

/** What is wrong between two callouts, in words; empty where nothing is. */
function faultsBetween(one: Drawn, other: Drawn): string[] {
  const faults: string[] = []
  const names = `${one.mark.figure} and ${other.mark.figure}`
  if (Math.hypot(one.ring[0] - other.ring[0], one.ring[1] - other.ring[1]) < 18) faults.push(`rings of ${names}`)
  if (one.leader && other.leader && cross(one.leader, other.leader)) faults.push(`leaders of ${names}`)
  if (one.text && other.text) {
    const [a, b] = [one.text, other.text]
    if (a.left < b.right && b.left < a.right && a.top < b.foot && b.top < a.foot) faults.push(`texts of ${names}`)
  }
  for (const [a, b] of [
    [one, other],
    [other, one],
  ] as const) {
    if (a.text && distanceToBox(b.ring, a.text) < 9) faults.push(`ring ${b.mark.figure} on text ${a.mark.figure}`)
    if (b.leader && distanceToChord(a.ring, b.leader[0], b.leader[1]) < 9.5) faults.push(`leader over a ring: ${names}`)
    const { leader } = b
    if (a.text && leader && sidesOf(a.text).some((side) => cross(side, leader)))
      faults.push(`leader over text: ${names}`)
  }
  return faults
}
const faultsAmong = (marks: readonly CalloutMark[], scale: number): string[] => {
  const all = marks.map((mark) => drawn(mark, scale))
  return all.flatMap((one, index) => all.slice(index + 1).flatMap((other) => faultsBetween(one, other)))
}

/** Points of a path on the sheet, px. */
const onSheet = (view: PlanSheet['views'][number], text: string, scale: number): Point[][] =>
  readPath(text).map((path) =>
    [...flattened(path, 10), ...path.slice(-1).map((piece) => piece[3])].map(
      ([u, v]): Point => [(view.at.x + u - view.box.u) * scale, (view.at.y + v - view.box.v) * scale],
    ),
  )
const nearest = (path: readonly Point[], point: Point) =>
  Math.min(...path.slice(1).map((to, index) => distanceToChord(point, path[index] ?? to, to)))

describe('sixty callouts on one sheet', () => {
  it.each(SCALES)('all are placed at %f px/mm; no leader, ring or text touches another', (scale) => {
    const marks = callouts(sheet, sixty, scale, [], everything)
    expect(marks).toHaveLength(60)
    expect(faultsAmong(marks, scale)).toEqual([])
  })

  it.each(SCALES)(
    'every leader ends inside its panel, every ring without one stands inside it, at %f px/mm',
    (scale) => {
      for (const mark of callouts(sheet, sixty, scale, [], everything)) {
        const view = sheet.views.find(({ id }) => id === mark.view)
        const panel = view?.panels.find(({ panelId }) => panelId === mark.panelId)
        if (view === undefined || panel === undefined) throw new Error(`no ${mark.panelId}`)
        const { x, y } = mark.leader.at(-1) ?? mark.ring
        const outline = flattened(readOutline(panel.outline), 24)
        expect(isInside(outline, [x - view.at.x + view.box.u, y - view.at.y + view.box.v])).toBe(true)
      }
    },
  )

  it.each(SCALES)('no ring covers a line, a tyre, a bumper, a lamp or the name of a view, at %f px/mm', (scale) => {
    const ground = groundOf(sheet, scale)
    const captions = viewCaptions(sheet, ground, scale).map((caption) => captionBox(caption, scale))
    const faults: string[] = []
    const inkOf = sheet.views.flatMap((view) => [
      ...view.ink
        .filter(({ weight }) => weight !== 'station' && weight !== 'centre')
        .flatMap(({ path, occlude }) => onSheet(view, path, scale).map((points) => ({ points, occlude }))),
      ...view.panels.flatMap(({ outline }) =>
        onSheet(view, outline, scale).map((points) => ({ points, occlude: false })),
      ),
    ])
    for (const { mark, ring } of callouts(sheet, sixty, scale, [], everything).map((mark) => drawn(mark, scale))) {
      if (inkOf.some(({ points }) => nearest(points, ring) < 8.5)) faults.push(`${mark.figure} on a line`)
      if (inkOf.some(({ points, occlude }) => occlude && isInside(points, ring)))
        faults.push(`${mark.figure} on a part`)
      for (const { left, right, top, foot } of captions) {
        const box = { left: left * scale, right: right * scale, top: top * scale, foot: foot * scale }
        if (distanceToBox(ring, box) < 8.5) faults.push(`${mark.figure} on the name of a view`)
      }
    }
    expect(faults).toEqual([])
  })

  it('names fold where room lacks: none under 0.11 px/mm, more the larger the scale', () => {
    const named = SCALES.map((scale) => callouts(sheet, sixty, scale, [], everything).filter(({ name }) => name !== ''))
    expect(named[0]).toEqual([])
    expect(named[1]?.length).toBeGreaterThan(10)
    expect(named[2]?.length).toBeGreaterThan(named[1]?.length ?? 0)
  })

  it('the look at the finished drawing finds what is planted', () => {
    const [mark] = callouts(sheet, sixty, 0.138, [], everything)
    if (mark === undefined) throw new Error('no callout')
    expect(faultsAmong([mark, { ...mark, figure: '99' }], 0.138).length).toBeGreaterThan(0)
    const led = (figure: string, x: number, y: number, endX: number, endY: number): CalloutMark => ({
      ...mark,
      ...{ figure, name: '', word: '', ring: { x, y } },
      leader: [
        { x: x + (endX - x) / 20, y: y + (endY - y) / 20 },
        { x: endX, y: endY },
      ],
    })
    expect(faultsAmong([led('1', 0, 0, 4000, 4000), led('2', 4000, 0, 0, 4000)], 0.138)).toEqual(['leaders of 1 and 2'])
  })
})

describe('any callouts', () => {
  it('never touch one another, whatever is called out, at any scale', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray(outlines, { minLength: 1, maxLength: 40 }),
        fc.constantFrom(...SCALES, 0.11, 0.3),
        (some, scale) => {
          const wishes = some.map(({ panel }, index) => wishFor(panel.panelId, index + 1))
          expect(faultsAmong(callouts(sheet, wishes, scale, [], everything), scale)).toEqual([])
        },
      ),
      { numRuns: 40, seed: 1960 },
    )
  })

  it('one more moves no other as a rule, and never more than three of thirty', () => {
    const moved = (before: readonly CalloutMark[], after: readonly CalloutMark[]) =>
      before.filter((mark) => {
        const now = after.find(({ panelId }) => panelId === mark.panelId)
        return now === undefined || now.ring.x !== mark.ring.x || now.ring.y !== mark.ring.y
      }).length
    for (const scale of SCALES) {
      const thirty = sixty.filter((_, index) => index % 2 === 0)
      const before = callouts(sheet, thirty, scale, [], everything)
      const counts = sixty
        .filter((_, index) => index % 2 === 1)
        .map((more) => moved(before, callouts(sheet, [...thirty, more], scale, [], everything)))
      expect(counts.reduce((sum, count) => sum + count, 0) / counts.length).toBeLessThan(0.5)
      expect(Math.max(...counts)).toBeLessThanOrEqual(3)
    }
  })
})

describe('room for text', () => {
  it('is never less than the face needs, and seldom a quarter more', () => {
    const texts = [...nameOf.values(), 'filler in place of metal', 'looked at, metal not entered; F 12, F 14']
    const shares = texts.map((text) => textWidthPx(text, 11.5) / widthOf(text, 11.5))
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(1)
    expect(shares.reduce((sum, share) => sum + share, 0) / shares.length).toBeLessThan(1.15)
  })
})
