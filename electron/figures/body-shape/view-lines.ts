import type { InkLine } from '../../../shared-types/figure.ts'
import { type Curve, mirroredDown } from '../curve.ts'
import type { InkCurve } from '../ink-curve.ts'
import { type Shape, shapeOf } from '../label-point.ts'
import { pathText } from '../path-text.ts'
import type { Face, Facing } from './face.ts'
import { aboveInk, type StationReach } from './ink-above.ts'
import { frontInk, rearInk } from './ink-ends.ts'
import { sideInk } from './ink-side.ts'
import { type Half, outlineIn } from './joined-faces.ts'
import type { OutsideWork } from './outside-work.ts'
import { otherSide, panelOf } from './part-names.ts'
import { type Cubic3, cubicAcross, cubicImage, type OutsideView } from './space.ts'

/** A closed line that belongs to a panel: its outline, or a window that is cut out of it. */
interface Closed {
  readonly panelId: string
  readonly path: Curve
  readonly text: string
  readonly shape: Shape
}

/** What a view of the outside draws before labels are set and other panels laid in. */
export interface ViewLines {
  readonly outlines: readonly Closed[]
  readonly holes: readonly string[]
  readonly silhouette: string
  readonly glass: readonly Closed[]
  readonly ink: readonly InkLine[]
  /** What hides a label that would stand under it. */
  readonly hiding: readonly Shape[]
}

const facing: Readonly<Record<OutsideView, Facing>> = {
  left: 'side',
  right: 'side',
  roof: 'above',
  front: 'front',
  rear: 'back',
}

/** The lines of a view; those of the right side are those of the left under exchanged names. */
export function viewLines(work: OutsideWork, view: Exclude<OutsideView, 'right'>, reach: StationReach): ViewLines {
  const { form, conditions } = work
  const turned = work.faces.filter((face) => face.facing.includes(facing[view]))
  const halves: readonly Half[] = view === 'left' ? ['left'] : ['left', 'right']
  const placed = turned.flatMap((face) => halves.map((half): [Face, Half] => [face, half]))
  const panels = new Map<string, [Face, Half][]>()
  for (const [face, half] of placed) {
    const left = panelOf(face.part, form.body, conditions)
    const panelId = half === 'right' ? otherSide(left) : left
    const faces = panels.get(panelId)
    if (faces) faces.push([face, half])
    else panels.set(panelId, [[face, half]])
  }
  const outlines = [...panels].map(([panelId, faces]) => closed(panelId, outlineIn(view, faces, panelId)))
  const ink = inkOf(work, view, reach)
  return {
    outlines: outlines.filter(({ panelId }) => !panelId.startsWith('open ')),
    holes: outlines.filter(({ panelId }) => panelId.startsWith('open ')).map(({ text }) => text),
    silhouette: pathText(outlineIn(view, placed, `the ${view} view`), true),
    glass: glassIn(work, view),
    ink: ink.map(({ weight, curve, closed, occlude }) => ({ weight, path: pathText(curve, closed), occlude })),
    hiding: ink.filter(({ occlude }) => occlude).map(({ curve }) => shapeOf(curve)),
  }
}

/** The same lines as they belong to the panels of the other side. */
export function ofOtherSide(lines: ViewLines): ViewLines {
  const renamed = (own: Closed): Closed => ({ ...own, panelId: otherSide(own.panelId) })
  return { ...lines, outlines: lines.outlines.map(renamed), glass: lines.glass.map(renamed) }
}

const closed = (panelId: string, path: Curve): Closed => ({
  panelId,
  path,
  text: pathText(path, true),
  shape: shapeOf(path),
})

function inkOf(work: OutsideWork, view: OutsideView, reach: StationReach): InkCurve[] {
  if (view === 'roof') return aboveInk(work, reach)
  if (view === 'front') return frontInk(work)
  return view === 'rear' ? rearInk(work) : sideInk(work)
}

export const imageOf = (view: OutsideView, edge: readonly Cubic3[]): Curve =>
  edge.map((piece) => cubicImage(view, piece))

/** Windows as a view shows them, each with the panel it is cut out of. */
function glassIn({ glass, form, conditions }: OutsideWork, view: OutsideView): Closed[] {
  const shown = (part: string) => {
    const screen = part === 'front-glass-surround'
    const back = part === 'rear-glass-surround' || part === 'tail-door' || part === 'rear-cargo-door.L'
    if (view === 'front') return screen
    if (view === 'rear') return back
    return view === 'roof' || part !== 'rear-glass-surround' || form.description.tail !== 'bed'
  }
  return glass
    .filter(({ part }) => shown(part))
    .flatMap(({ part, middle, edge, half }): Closed[] => {
      const panelId = panelOf(part, form.body, conditions)
      if (view === 'left') return [closed(panelId, imageOf(view, middle ? half : edge))]
      const curve = imageOf(view, edge)
      if (middle) return [closed(panelId, curve)]
      const other = view === 'roof' ? mirroredDown(curve) : imageOf(view, edge.map(cubicAcross))
      return [closed(panelId, curve), closed(otherSide(panelId), other)]
    })
}
