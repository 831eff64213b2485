import type { SheetBox } from './callout-ground.ts'

interface SheetPoint {
  readonly x: number
  readonly y: number
}

/** A callout as it might stand: everything in pixels of the sheet, so that sizes of type and ring are what they are. */
export interface StandingCallout {
  readonly ring: SheetPoint
  readonly text: SheetBox | null
  /** From the middle of the ring to its end inside the panel; null where the ring stands in the panel itself. */
  readonly end: SheetPoint | null
}

export const RING_PX = 8.5
/** Paper kept between two rings, and between a leader and anything it must not touch. */
const BETWEEN_RINGS_PX = 3
const BESIDE_LEADER_PX = 3

/** Whether two callouts touch: ring, text or leader of the one with ring, text or leader of the other. */
export function inConflict(one: StandingCallout, other: StandingCallout): boolean {
  if (Math.hypot(one.ring.x - other.ring.x, one.ring.y - other.ring.y) < 2 * RING_PX + BETWEEN_RINGS_PX) return true
  if (one.text && other.text && boxesMeet(one.text, other.text)) return true
  if ((one.text && ringMeets(other.ring, one.text)) || (other.text && ringMeets(one.ring, other.text))) return true
  if ((one.end && leaderMeets(one.ring, one.end, other)) || (other.end && leaderMeets(other.ring, other.end, one))) {
    return true
  }
  return one.end !== null && other.end !== null && leadersMeet(one.ring, one.end, other.ring, other.end)
}

const boxesMeet = (one: SheetBox, other: SheetBox): boolean =>
  one.left < other.right && other.left < one.right && one.top < other.foot && other.top < one.foot

function ringMeets(ring: SheetPoint, box: SheetBox): boolean {
  const x = Math.max(box.left, Math.min(box.right, ring.x))
  const y = Math.max(box.top, Math.min(box.foot, ring.y))
  return Math.hypot(ring.x - x, ring.y - y) < RING_PX + 1
}

function leaderMeets(from: SheetPoint, to: SheetPoint, { ring, text }: StandingCallout): boolean {
  if (distanceToLeader(ring, from, to) < RING_PX + BESIDE_LEADER_PX) return true
  return text !== null && leaderMeetsBox(from, to, text)
}

/** Whether a straight leader runs through a box (Liang and Barsky, ACM Transactions on Graphics 3, 1984). */
export function leaderMeetsBox(from: SheetPoint, to: SheetPoint, box: SheetBox): boolean {
  let [enter, leave] = [0, 1]
  const sides = [
    [from.x - to.x, from.x - box.left],
    [to.x - from.x, box.right - from.x],
    [from.y - to.y, from.y - box.top],
    [to.y - from.y, box.foot - from.y],
  ] as const
  for (const [step, room] of sides) {
    if (step === 0) {
      if (room < 0) return false
    } else if (step < 0) enter = Math.max(enter, room / step)
    else leave = Math.min(leave, room / step)
  }
  return enter <= leave
}

/** Distance of a point from a straight leader, px. */
export function distanceToLeader(point: SheetPoint, from: SheetPoint, to: SheetPoint): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  const squared = dx * dx + dy * dy
  const along = squared === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / squared
  const share = Math.max(0, Math.min(1, along))
  return Math.hypot(point.x - from.x - share * dx, point.y - from.y - share * dy)
}

function leadersMeet(a: SheetPoint, b: SheetPoint, c: SheetPoint, d: SheetPoint): boolean {
  const turn = (p: SheetPoint, q: SheetPoint, r: SheetPoint) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)
  if (turn(a, b, c) * turn(a, b, d) <= 0 && turn(c, d, a) * turn(c, d, b) <= 0) return true
  const nearest = Math.min(
    distanceToLeader(a, c, d),
    distanceToLeader(b, c, d),
    distanceToLeader(c, a, b),
    distanceToLeader(d, a, b),
  )
  return nearest < BESIDE_LEADER_PX
}
