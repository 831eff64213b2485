import { type Cubic, distance, signedArea } from '../cubic-path.ts'
import type { Face } from './face.ts'
import { type Step, walked } from './line-net.ts'
import { type Cubic3, cubicAcross, cubicImage, cubicReversed, type OutsideView, type Point3 } from './space.ts'

/** An edge as it borders on one panel, on the left half, its mirror image, or the plane of symmetry. */
interface Border {
  readonly key: string
  readonly start: string
  readonly end: string
  readonly pieces: readonly Cubic3[]
}

/** Which half a set of faces lies on. */
export type Half = 'left' | 'right'

function borderOf({ edge, backwards }: Step, half: Half): Border {
  const side = edge.centre ? 'middle' : half
  const pieces = half === 'right' && !edge.centre ? edge.pieces.map(cubicAcross) : edge.pieces
  const onMiddle = ([, y]: Point3) => Math.abs(y) < 1e-6
  const node = (name: string, point: Point3 | undefined) =>
    `${name} ${edge.centre || (point && onMiddle(point)) ? 'middle' : half}`
  const start = node(edge.start, pieces[0]?.[0])
  const end = node(edge.end, pieces.at(-1)?.[3])
  return backwards
    ? { key: `${edge.id} ${side}`, start: end, end: start, pieces: [...pieces].reverse().map(cubicReversed) }
    : { key: `${edge.id} ${side}`, start, end, pieces }
}

/** Edges of a set of faces that border on nothing of the set: those walked twice lie within it and fall away. */
function outerBorders(faces: readonly (readonly [Face, Half])[]): Border[] {
  const found = new Map<string, Border>()
  for (const [face, half] of faces) {
    for (const border of face.steps.map((step) => borderOf(step, half))) {
      if (found.has(border.key)) found.delete(border.key)
      else found.set(border.key, border)
    }
  }
  return [...found.values()]
}

/** The one closed line round a set of faces in a view, clockwise. Throws where they do not hang together. */
export function outlineIn(view: OutsideView, faces: readonly (readonly [Face, Half])[], name: string): Cubic[] {
  const borders = outerBorders(faces)
  const meeting = new Map<string, Border[]>()
  for (const border of borders) {
    for (const node of [border.start, border.end]) meeting.set(node, [...(meeting.get(node) ?? []), border])
  }
  const [first] = borders
  if (!first) throw new Error(`${name} has no outline.`)
  const path: Cubic3[] = [...first.pieces]
  const used = new Set([first.key])
  let here = first.end
  while (here !== first.start) {
    const next = meeting.get(here)?.find(({ key }) => !used.has(key))
    if (!next) throw new Error(`${name} is not closed at ${here}.`)
    used.add(next.key)
    const turned = next.start !== here
    path.push(...(turned ? [...next.pieces].reverse().map(cubicReversed) : next.pieces))
    here = turned ? next.start : next.end
  }
  if (used.size !== borders.length) throw new Error(`${name} falls into pieces in the ${view} view.`)
  const image = path.map((piece) => cubicImage(view, piece)).filter((piece) => !isPoint(piece))
  return signedArea(image) >= 0 ? image : [...image].reverse().map(([a, b, c, d]) => [d, c, b, a] as const)
}

/** Whether a piece runs straight towards the eye, so that its image is one point, to a few micrometres. */
const isPoint = ([a, b, c, d]: Cubic): boolean =>
  d[0] === a[0] && d[1] === a[1] && [b, c].every((handle) => distance(handle, a) < 0.005)

/** Image of steps in a view as one open line. */
export const lineIn = (view: OutsideView, steps: readonly Step[]): Cubic[] =>
  steps.flatMap(walked).map((piece) => cubicImage(view, piece))
