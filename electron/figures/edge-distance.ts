import { distanceToChord, flattened, type Point } from './cubic-path.ts'
import { readOutline } from './path-text.ts'

/** Distance of a point from the outline of a panel as drawn, mm, inside and outside alike. */
export function edgeDistanceMm(outline: string, { u, v }: { readonly u: number; readonly v: number }): number {
  const points = flattened(readOutline(outline))
  return points.reduce(
    (least, from, at) => Math.min(least, distanceToChord([u, v], from, points[(at + 1) % points.length] as Point)),
    Number.POSITIVE_INFINITY,
  )
}
