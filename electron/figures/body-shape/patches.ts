import type { Point } from '../cubic-path.ts'
import { rounded } from '../curve.ts'
import type { BodyForm } from './body-form.ts'
import type { WindowLine } from './glasshouse-lines.ts'
import type { LineNet } from './line-net.ts'
import { type Cubic3, mixed, type Point3, toward } from './space.ts'

/** A piece of surface by two parameters: across it, and from its foot (0) to its head (1). */
export type Patch = (across: number, up: number) => Point3

const LONGEST_MM = 240

/** A closed line on a patch: a box with rounded corners in the parameters, its long edges cut so that they follow it. */
export function patchLine(patch: Patch, corners: readonly Point[], radius: number | readonly number[]): Cubic3[] {
  return rounded(corners, radius).flatMap((piece) => {
    const [a, b, c, d] = piece
    const length = Math.hypot(...[0, 1, 2].map((i) => (patch(...d)[i] ?? 0) - (patch(...a)[i] ?? 0)))
    const straight = Math.abs((b[0] - a[0]) * (d[1] - a[1]) - (b[1] - a[1]) * (d[0] - a[0])) < 1e-9
    const count = straight ? Math.max(1, Math.ceil(length / LONGEST_MM)) : 1
    if (!straight) return [[patch(...a), patch(...b), patch(...c), patch(...d)] as const]
    return Array.from({ length: count }, (_, index) => {
      const at = (t: number): Point3 => patch(mixed(a[0], d[0], t), mixed(a[1], d[1], t))
      const [from, to] = [index / count, (index + 1) / count]
      return chordal(at, from, to)
    })
  })
}

/** Cubic through four points of a curve at thirds of a stretch. */
function chordal(at: (t: number) => Point3, from: number, to: number): Cubic3 {
  const [a, p, q, d] = [at(from), at(mixed(from, to, 1 / 3)), at(mixed(from, to, 2 / 3)), at(to)]
  const handle = (near: Point3, next: Point3, after: Point3, far: Point3, i: 0 | 1 | 2) =>
    (-5 * near[i] + 18 * next[i] - 9 * after[i] + 2 * far[i]) / 6
  const one: Point3 = [handle(a, p, q, d, 0), handle(a, p, q, d, 1), handle(a, p, q, d, 2)]
  const other: Point3 = [handle(d, q, p, a, 0), handle(d, q, p, a, 1), handle(d, q, p, a, 2)]
  return [a, one, other, d]
}

/** The windscreen: across from -1 to 1, up from scuttle to header. */
export function windscreen({ upper }: BodyForm, net: LineNet): Patch {
  const corner = upper.screenCorner
  const head = net.node('gutter front')
  return (share, up) => {
    const y = share * corner[1]
    const foot = upper.onTop(upper.screenFootAt(y), y)
    const top = upper.onRoof(mixed(upper.header[0], head[0], share ** 2), share * head[1])
    return toward(foot, top, up)
  }
}

/** Rear screen, window of a tail door or back of a cab: across from -1 to 1, up from its foot to the roof. */
export function rearScreen({ upper, lower, description }: BodyForm, net: LineNet): Patch {
  const head = net.node('gutter rear')
  const corner = upper.rearCorner
  return (share, up) => {
    const y = share * corner[1]
    const foot = {
      deck: () => upper.onTop(upper.rearScreenFootAt(y), y),
      upright: (): Point3 => {
        const [x, , z] = lower.crest(lower.roundAcross('crest', 'tail', Math.abs(y)))
        return [x, y, z]
      },
      bed: (): Point3 => [corner[0], y, corner[2]],
    }[description.tail]()
    const top = upper.onRoof(mixed(upper.roofRear[0], head[0], share ** 2), share * head[1])
    return toward(foot, top, up)
  }
}

/** A side window between two upright lines, by their foot and head nodes: across from 0 to 1, up from crest to frame. */
export function sideWindow({ upper }: BodyForm, net: LineNet, ahead: NodePair, behind: NodePair): Patch {
  const [foot, head, nextFoot, nextHead] = [...ahead, ...behind].map((node) => net.node(node)) as [
    Point3,
    Point3,
    Point3,
    Point3,
  ]
  return (share, up) => {
    const swell = ahead[0] === 'frame foot' ? 0.045 * (head[2] - foot[2]) * 4 * up * (1 - up) * (1 - share) : 0
    const front = mixed(foot[0], head[0], up) - swell
    const x = mixed(front, mixed(nextFoot[0], nextHead[0], up), share)
    const top = upper.frameTop(x)[2]
    return upper.onSideGlass(x, mixed(mixed(foot[2], nextFoot[2], share), top, up))
  }
}
type NodePair = readonly [foot: string, head: string]

/** Foot and head nodes of a window line; the last line ends at the rear end of the frame. */
export const nodesOf = (line: WindowLine | 'frame front', last: boolean): NodePair =>
  line === 'frame front' ? ['frame foot', 'frame front'] : [`${line} foot`, last ? 'frame rear' : `${line} head`]

/** A box on a patch whose margins are millimetres. */
export function boxOn(patch: Patch, marginMm: { side: number; foot: number; head: number }, from = 0, to = 1): Point[] {
  const width = (up: number) =>
    Math.max(1, Math.abs(patch(to, up)[0] - patch(from, up)[0]) + Math.abs(patch(to, up)[1] - patch(from, up)[1]))
  const middle = (from + to) / 2
  const height = Math.max(
    1,
    Math.hypot(...[0, 1, 2].map((i) => (patch(middle, 1)[i] ?? 0) - (patch(middle, 0)[i] ?? 0))),
  )
  const [low, high] = [marginMm.foot / height, 1 - marginMm.head / height]
  const inset = (up: number) => Math.min(0.42, marginMm.side / width(up)) * (to - from)
  return [
    [from + inset(low), low],
    [to - inset(low), low],
    [to - inset(high), high],
    [from + inset(high), high],
  ]
}
