import { type Cubic, type Point, reversed, signedArea } from '../cubic-path.ts'
import { type Curve, mirroredDown } from '../curve.ts'
import type { InkCurve } from '../ink-curve.ts'
import { labelPoint, shapeOf } from '../label-point.ts'
import { pathText } from '../path-text.ts'
import type { PlanViewFile } from '../plan-sheet-file.ts'
import type { Face, Facing } from './face.ts'
import { aboveInk, type StationReach } from './ink-above.ts'
import { frontInk, rearInk } from './ink-ends.ts'
import { sideInk } from './ink-side.ts'
import { type Half, outlineIn } from './joined-faces.ts'
import type { OutsideWork } from './outside-work.ts'
import { otherSide, panelOf } from './part-names.ts'
import { type Cubic3, cubicAcross, cubicImage, type OutsideView } from './space.ts'

type Place = { readonly x: number; readonly y: number }
interface Cut {
  readonly panelId: string
  readonly curve: Curve
}

const names: Readonly<Record<OutsideView, string>> = {
  left: 'Left side',
  right: 'Right side, mirrored',
  roof: 'Roof, in plan',
  front: 'Front',
  rear: 'Rear',
}
const facing: Readonly<Record<OutsideView, Facing>> = {
  left: 'side',
  right: 'side',
  roof: 'above',
  front: 'front',
  rear: 'back',
}

/**
 * One view of the outside: panels with their outlines, windows and ink, and the silhouette. Labels stand where those of
 * the other side stand, in this view or in one already drawn.
 */
export function outsideView(
  work: OutsideWork,
  view: OutsideView,
  at: Place,
  reach: StationReach,
  drawn: readonly PlanViewFile[],
): PlanViewFile {
  const { form, conditions } = work
  const turned = work.faces.filter((face) => face.facing.includes(facing[view]))
  const halves: readonly Half[] = view === 'left' || view === 'right' ? ['left'] : ['left', 'right']
  const placed = turned.flatMap((face) => halves.map((half): [Face, Half] => [face, half]))
  const panels = new Map<string, [Face, Half][]>()
  for (const [face, half] of placed) {
    const left = panelOf(face.part, form.body, conditions)
    const panelId = half === 'right' || view === 'right' ? otherSide(left) : left
    panels.set(panelId, [...(panels.get(panelId) ?? []), [face, half]])
  }
  const outlines = [...panels].map(([panelId, faces]) => ({ panelId, path: outlineIn(view, faces, panelId) }))
  const cuts = glassIn(work, view)
  const set = work.set.filter(({ views }) => (views as readonly string[]).includes(view))
  const setPaths = set.map(({ panelId, within, edge }) => ({ panelId, within, path: clockwise(imageOf(view, edge)) }))
  const ink = inkOf(work, view, reach)
  const hiding = ink.filter(({ occlude }) => occlude).map(({ curve }) => shapeOf(curve))
  const labels = new Map<string, readonly [number, number]>()
  for (const { panelId, label } of drawn.find(({ id }) => view === 'right' && id === 'left')?.panels ?? []) {
    labels.set(panelId, [label.u, label.v])
  }
  const written = (panelId: string, path: readonly Cubic[]) => {
    const own = cuts.filter((cut) => cut.panelId === panelId).map(({ curve }) => curve)
    const inside = setPaths.filter(({ within }) => within === panelId).map((one) => one.path)
    const taken = [...own, ...inside].reduce((sum, curve) => sum + Math.abs(signedArea(curve)), 0)
    const cover = [...[...own, ...inside].map((curve) => shapeOf(curve)), ...hiding]
    const like = labels.get(panelId.replace(/\.R$/, '.L')) ?? null
    const label = labelPoint(shapeOf(path), cover, like && (view === 'right' ? like : acrossIn(view, like)))
    labels.set(panelId, [label.u, label.v])
    return {
      panelId,
      outline: pathText(path, true),
      label,
      areaMm2: Math.round(Math.abs(signedArea(path)) - taken),
    }
  }
  const solidPanels = outlines.filter(({ panelId }) => !panelId.startsWith('open '))
  const holes = outlines.filter(({ panelId }) => panelId.startsWith('open '))
  const silhouette = outlineIn(view, placed, `the ${view} view`)
  const box = boundsIn(work, view)
  return {
    id: view,
    name: names[view],
    box,
    at,
    panels: [
      ...solidPanels.map(({ panelId, path }) => written(panelId, path)),
      ...setPaths.map(({ panelId, path }) => written(panelId, path)),
    ],
    ink: [
      ...cuts.map(({ curve }) => ({ weight: 'shut' as const, path: pathText(curve, true), occlude: true })),
      ...ink.map(({ weight, curve, closed, occlude }) => ({ weight, path: pathText(curve, closed), occlude })),
    ],
    silhouette: pathText(silhouette, true),
    open: holes.map(({ path }) => pathText(path, true)),
    set: setPaths.map(({ panelId, within }) => ({ panelId, within })),
  }
}

const acrossIn = (view: OutsideView, [u, v]: Point): Point => (view === 'roof' ? [u, -v] : [-u, v])

function inkOf(work: OutsideWork, view: OutsideView, reach: StationReach): InkCurve[] {
  if (view === 'roof') return aboveInk(work, reach)
  if (view === 'front') return frontInk(work)
  return view === 'rear' ? rearInk(work) : sideInk(work)
}

const clockwise = (path: Curve): Curve => (signedArea(path) >= 0 ? path : [...path].reverse().map(reversed))
const imageOf = (view: OutsideView, edge: readonly Cubic3[]): Curve => edge.map((piece) => cubicImage(view, piece))

/** Windows as a view shows them, each with the panel it is cut out of. */
function glassIn({ glass, form, conditions }: OutsideWork, view: OutsideView): Cut[] {
  const shown = (part: string) => {
    const screen = part === 'front-glass-surround'
    const back = part === 'rear-glass-surround' || part === 'tail-door' || part === 'rear-cargo-door.L'
    if (view === 'front') return screen
    if (view === 'rear') return back
    return view === 'roof' || part !== 'rear-glass-surround' || form.description.tail !== 'bed'
  }
  return glass
    .filter(({ part }) => shown(part))
    .flatMap(({ part, middle, edge, half }): Cut[] => {
      const panelId = panelOf(part, form.body, conditions)
      if (view === 'left' || view === 'right') {
        return [
          { panelId: view === 'right' ? otherSide(panelId) : panelId, curve: imageOf(view, middle ? half : edge) },
        ]
      }
      const curve = imageOf(view, edge)
      if (middle) return [{ panelId, curve }]
      const other = view === 'roof' ? mirroredDown(curve) : imageOf(view, edge.map(cubicAcross))
      return [
        { panelId, curve },
        { panelId: otherSide(panelId), curve: other },
      ]
    })
}

function boundsIn({ form }: OutsideWork, view: OutsideView) {
  const { lengthMm, widthMm, heightMm } = form.dimensions
  if (view === 'roof') return { u: 0, v: -widthMm / 2, width: lengthMm, height: widthMm }
  if (view === 'left' || view === 'right') return { u: 0, v: -heightMm, width: lengthMm, height: heightMm }
  return { u: -widthMm / 2, v: -heightMm, width: widthMm, height: heightMm }
}
