import type { PicturePoint, PictureQuestion } from '../../../shared-types/measuring.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'

function refuse(message: string, field: string): never {
  throw new ProblemError('input-refused', message, { field })
}

/** Twice the area of three points beside the square of their longest side, below which they count as on one line. */
const FLAT = 1e-4

/**
 * Refuses picks that cannot give a measurement, each with its cure: points outside the picture, three corners on one line,
 * lengths of nothing, points that coincide.
 */
export function checkPicture({ picture, plane, wanted }: PictureQuestion): void {
  const inside = ({ x, y }: PicturePoint) => x >= 0 && y >= 0 && x <= picture.widthPx && y <= picture.heightPx
  if (!wanted.points.every(inside)) refuse('A measured point lies outside the picture: pick it again.', 'wanted')
  if (!planePicks(plane).every(inside)) refuse('A point of the plane lies outside the picture: pick it again.', 'plane')
  if (plane.kind === 'known points') {
    checkCorners(plane.points.map(({ picture: point }) => point))
    checkCorners(plane.points.map(({ plane: { xMm, yMm } }) => ({ x: xMm, y: yMm })))
  } else {
    const known = plane.kind === 'scale bar' ? plane.bar : plane.known
    if (!(known.lengthMm > 0))
      refuse('The known length must be greater than nothing: enter it in millimetres.', 'plane')
    if (same(known.from, known.to))
      refuse('Both ends of the known length are the same point: pick the other end.', 'plane')
    if (plane.kind === 'two pairs of parallels') checkCorners(plane.corners)
  }
  checkMeasured(wanted)
}

function checkMeasured({ kind, points }: PictureQuestion['wanted']): void {
  if (kind === 'circle diameter') {
    if (everyTripleFlat(points)) refuse('The points lie on one line: pick three that go round the circle.', 'wanted')
    return
  }
  const twice = points.some((point, at) => at > 0 && same(point, points[at - 1] ?? point))
  if (twice) refuse('Two points measured are the same: pick one of them again.', 'wanted')
}

const planePicks = (plane: PictureQuestion['plane']): readonly PicturePoint[] => {
  if (plane.kind === 'known points') return plane.points.map(({ picture }) => picture)
  if (plane.kind === 'scale bar') return [plane.bar.from, plane.bar.to]
  return [...plane.corners, plane.known.from, plane.known.to]
}

const same = (one: PicturePoint, other: PicturePoint): boolean => one.x === other.x && one.y === other.y

function flat(a: PicturePoint, b: PicturePoint, c: PicturePoint): boolean {
  const twice = Math.abs((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y))
  const longest = Math.max(
    Math.hypot(b.x - a.x, b.y - a.y),
    Math.hypot(c.x - a.x, c.y - a.y),
    Math.hypot(c.x - b.x, c.y - b.y),
  )
  return !(twice > FLAT * longest * longest)
}

const everyTripleFlat = (points: readonly PicturePoint[]): boolean => {
  const [a, ...rest] = points
  const b = rest.find((point) => a !== undefined && !same(point, a))
  return a === undefined || b === undefined || points.every((point) => flat(a, b, point))
}

/** Four points need that no three lie on a line; more need four such among them, told by the fit itself. */
function checkCorners(points: readonly PicturePoint[]): void {
  const triples = points.flatMap((a, i) =>
    points.slice(i + 1).flatMap((b, j) => points.slice(i + j + 2).map((c) => flat(a, b, c))),
  )
  const bad = points.length === 4 ? triples.some(Boolean) : triples.every(Boolean)
  if (bad) refuse('Three of the points of the plane lie on one line: choose four that span it, as corners do.', 'plane')
}
