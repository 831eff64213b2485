import { type Cubic, type Point, reversed, signedArea } from '../cubic-path.ts'
import type { Curve } from '../curve.ts'
import { labelPoint, shapeOf } from '../label-point.ts'
import { pathText } from '../path-text.ts'
import type { PlanViewFile } from '../plan-sheet-file.ts'
import type { OutsideWork } from './outside-work.ts'
import type { OutsideView } from './space.ts'
import { imageOf, type ViewLines } from './view-lines.ts'

type Place = { readonly x: number; readonly y: number }

const names: Readonly<Record<OutsideView, string>> = {
  left: 'Left side',
  right: 'Right side, mirrored',
  roof: 'Roof, in plan',
  front: 'Front',
  rear: 'Rear',
}

/**
 * One view of the outside from its lines: panels with their outlines, windows and ink, and the silhouette. Labels stand
 * where those of the other side stand, in this view or in one already drawn.
 */
export function outsideView(
  work: OutsideWork,
  view: OutsideView,
  at: Place,
  { outlines, holes, silhouette, glass, ink, hiding }: ViewLines,
  drawn: readonly PlanViewFile[],
): PlanViewFile {
  const set = work.set
    .filter(({ views }) => (views as readonly string[]).includes(view))
    .map(({ panelId, within, edge }) => {
      const path = clockwise(imageOf(view, edge))
      return { panelId, within, path, text: pathText(path, true), shape: shapeOf(path) }
    })
  const labels = new Map<string, readonly [number, number]>()
  for (const { panelId, label } of drawn.find(({ id }) => view === 'right' && id === 'left')?.panels ?? []) {
    labels.set(panelId, [label.u, label.v])
  }
  const written = ({ panelId, path, text, shape }: Omit<(typeof set)[number], 'within'>) => {
    const cut = glass.filter((one) => one.panelId === panelId)
    const off = [...cut, ...set.filter(({ within }) => within === panelId)]
    const taken = off.reduce((sum, one) => sum + Math.abs(signedArea(one.path)), 0)
    const cover = [...off.map((one) => one.shape), ...hiding]
    const like = labels.get(panelId.replace(/\.R$/, '.L')) ?? null
    const label = labelPoint(shape, cover, like && (view === 'right' ? like : acrossIn(view, like)))
    labels.set(panelId, [label.u, label.v])
    return { panelId, outline: text, label, areaMm2: Math.round(Math.abs(signedArea(path)) - taken) }
  }
  return {
    id: view,
    name: names[view],
    box: boundsIn(work, view),
    at,
    panels: [...outlines.map(written), ...set.map(written)],
    ink: [...glass.map(({ text }) => ({ weight: 'shut' as const, path: text, occlude: true })), ...ink],
    silhouette,
    open: holes,
    set: set.map(({ panelId, within }) => ({ panelId, within })),
  }
}

const acrossIn = (view: OutsideView, [u, v]: Point): Point => (view === 'roof' ? [u, -v] : [-u, v])

const clockwise = (path: readonly Cubic[]): Curve => (signedArea(path) >= 0 ? path : [...path].reverse().map(reversed))

function boundsIn({ form }: OutsideWork, view: OutsideView) {
  const { lengthMm, widthMm, heightMm } = form.dimensions
  if (view === 'roof') return { u: 0, v: -widthMm / 2, width: lengthMm, height: widthMm }
  if (view === 'left' || view === 'right') return { u: 0, v: -heightMm, width: lengthMm, height: heightMm }
  return { u: -widthMm / 2, v: -heightMm, width: widthMm, height: heightMm }
}
