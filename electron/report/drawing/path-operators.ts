import { POINTS_PER_MM, type StrokeStyle } from '../document/page-canvas.ts'
import { inks } from '../layout/text-style.ts'

/** For a path that cuts or is filled, and is not stroked. */
export const UNSTROKED: StrokeStyle = { weightMm: 0, colour: inks.ink }

/** Where view millimetres come to stand: page millimetres for `u`, `v` and the factor of size. */
export interface Placement {
  readonly leftMm: number
  readonly topMm: number
  readonly scale: number
  /** View coordinates of the left upper corner. */
  readonly u: number
  readonly v: number
  readonly pageHeightMm: number
}

export const onPage = (placement: Placement, u: number, v: number): { readonly x: number; readonly y: number } => ({
  x: placement.leftMm + (u - placement.u) * placement.scale,
  y: placement.topMm + (v - placement.v) * placement.scale,
})

const operator = { M: 'm', L: 'l', C: 'c' } as const
const pointsEach = { M: 1, L: 1, C: 3 } as const

const coordinate = (value: number): string => String(Math.round(value * 100) / 100)

/** Path text of the plan (absolute M, L, C, Z) as PDF path operators in the page's points. */
export function pathOperators(path: string, placement: Placement): string {
  const parts: string[] = []
  for (const [, command, numbers] of path.matchAll(/([MLCZ])([^MLCZ]*)/g)) {
    if (command === 'Z') {
      parts.push('h')
      continue
    }
    const kind = command as keyof typeof operator
    const values = (numbers ?? '')
      .trim()
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number)
    const points: string[] = []
    for (let at = 0; at + 1 < values.length; at += 2) {
      const { x, y } = onPage(placement, values[at] ?? 0, values[at + 1] ?? 0)
      points.push(`${coordinate(x * POINTS_PER_MM)} ${coordinate((placement.pageHeightMm - y) * POINTS_PER_MM)}`)
    }
    const each = pointsEach[kind]
    for (let at = 0; at + each <= points.length; at += each) {
      parts.push(`${points.slice(at, at + each).join(' ')} ${kind === 'M' && at > 0 ? 'l' : operator[kind]}`)
    }
  }
  return parts.join(' ')
}

/** Box around every point of a path, control points included, in page mm. */
export function pathBox(
  path: string,
  placement: Placement,
): { left: number; top: number; right: number; bottom: number } {
  const values = [...path.matchAll(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g)].map(([text]) => Number(text))
  const box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity }
  for (let at = 0; at + 1 < values.length; at += 2) {
    const { x, y } = onPage(placement, values[at] ?? 0, values[at + 1] ?? 0)
    box.left = Math.min(box.left, x)
    box.right = Math.max(box.right, x)
    box.top = Math.min(box.top, y)
    box.bottom = Math.max(box.bottom, y)
  }
  return box
}
