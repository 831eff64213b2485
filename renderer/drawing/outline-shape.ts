import type { PlanPoint } from '../../shared-types/finding.ts'

/** A box in view millimetres. */
export interface ViewBox {
  readonly u: number
  readonly v: number
  readonly width: number
  readonly height: number
}

const STEPS = 12

/** Corner points of an outline (absolute M, L, C, Z), curves taken in twelve chords: close enough to hit and to measure. */
export function outlinePoints(path: string): readonly PlanPoint[] {
  const points: PlanPoint[] = []
  let from: PlanPoint = { u: 0, v: 0 }
  for (const [, letter = '', text = ''] of path.matchAll(/([MLCZ])([^MLCZ]*)/g)) {
    const figures = (text.match(/-?\d*\.?\d+(?:e-?\d+)?/g) ?? []).map(Number)
    const point = (at: number): PlanPoint => ({ u: figures[at] ?? 0, v: figures[at + 1] ?? 0 })
    if (letter === 'C') {
      for (let at = 0; at + 5 < figures.length; at += 6) {
        const [b, c, d] = [point(at), point(at + 2), point(at + 4)]
        for (let step = 1; step <= STEPS; step++) points.push(onCurve(from, b, c, d, step / STEPS))
        from = d
      }
    } else {
      for (let at = 0; at + 1 < figures.length; at += 2) {
        from = point(at)
        points.push(from)
      }
    }
  }
  return points
}

function onCurve(a: PlanPoint, b: PlanPoint, c: PlanPoint, d: PlanPoint, t: number): PlanPoint {
  const s = 1 - t
  const mix = (key: 'u' | 'v') =>
    s * s * s * a[key] + 3 * s * s * t * b[key] + 3 * s * t * t * c[key] + t * t * t * d[key]
  return { u: mix('u'), v: mix('v') }
}

/** Smallest box round some points. */
export function boxOf(points: readonly PlanPoint[]): ViewBox {
  const us = points.map((point) => point.u)
  const vs = points.map((point) => point.v)
  const [u, v] = [Math.min(...us), Math.min(...vs)]
  return { u, v, width: Math.max(...us) - u, height: Math.max(...vs) - v }
}

/** True when a point lies inside a closed outline (even-odd rule). */
export function liesInside(outline: readonly PlanPoint[], { u, v }: PlanPoint): boolean {
  let inside = false
  outline.forEach((a, index) => {
    const b = outline[(index + 1) % outline.length] ?? a
    if (a.v > v !== b.v > v && u < ((b.u - a.u) * (v - a.v)) / (b.v - a.v) + a.u) inside = !inside
  })
  return inside
}

/** Area of a closed polygon, mm² (shoelace formula). */
export function polygonAreaMm2(points: readonly PlanPoint[]): number {
  const twice = points.reduce((sum, a, index) => {
    const b = points[(index + 1) % points.length] ?? a
    return sum + a.u * b.v - b.u * a.v
  }, 0)
  return Math.abs(twice) / 2
}

/** Length of an open line, mm. */
export function lineLengthMm(points: readonly PlanPoint[]): number {
  return points.slice(1).reduce((sum, point, index) => {
    const before = points[index] ?? point
    return sum + Math.hypot(point.u - before.u, point.v - before.v)
  }, 0)
}
