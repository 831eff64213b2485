import type { PicturePoint, WantedMeasure } from '../../../../shared-types/measuring.ts'
import type { PictureEntry, PlaneKind } from './picture-entry.ts'

const planePointsOf: { readonly [K in PlaneKind]: number } = {
  rectangle: 4,
  'four points': 4,
  'scale bar': 2,
  'two pairs of parallels': 6,
}
/** Fewest and most points of each measure. */
const measuredPoints: { readonly [K in WantedMeasure['kind']]: readonly [number, number] } = {
  distance: [2, 2],
  angle: [3, 3],
  'circle diameter': [3, 40],
  area: [3, 40],
}

/** How many points settle the plane. */
export const pointsOfPlane = (kind: PlaneKind): number => planePointsOf[kind]

/** Points are named by letters in the order they are picked: A to Z, then A2 and on. */
export function letterOf(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26))
  const round = Math.floor(index / 26)
  return round === 0 ? letter : `${letter}${round + 1}`
}

export interface PickedPoint {
  /** Place among all points; its letter follows from it, also while the plane still lacks some of its own. */
  readonly index: number
  readonly point: PicturePoint
}

/** All points as picked, those of the plane first. */
export function allPoints({ planeKind, planePoints, measured }: PictureEntry): readonly PickedPoint[] {
  return [
    ...planePoints.map((point, index) => ({ index, point })),
    ...measured.map((point, at) => ({ index: planePointsOf[planeKind] + at, point })),
  ]
}

/** Index of the point that is picked next; null when all are. */
export function nextPoint({ planeKind, planePoints, wanted, measured }: PictureEntry): number | null {
  if (planePoints.length < planePointsOf[planeKind]) return planePoints.length
  return measured.length < measuredPoints[wanted][1] ? planePointsOf[planeKind] + measured.length : null
}

export const planeComplete = ({ planeKind, planePoints }: PictureEntry): boolean =>
  planePoints.length === planePointsOf[planeKind]
export const measureComplete = ({ wanted, measured }: PictureEntry): boolean =>
  measured.length >= measuredPoints[wanted][0]

type Points = Pick<PictureEntry, 'planePoints' | 'measured'>

/** The points with one of them set or moved; an index one past the last of its group adds it. */
export function withPoint(entry: PictureEntry, index: number, point: PicturePoint): Points {
  const { planePoints, measured } = entry
  const own = index < planePointsOf[entry.planeKind]
  const put = (points: readonly PicturePoint[], at: number) => [...points.slice(0, at), point, ...points.slice(at + 1)]
  return {
    planePoints: own ? put(planePoints, index) : planePoints,
    measured: own ? measured : put(measured, index - planePointsOf[entry.planeKind]),
  }
}

/** The points without the one picked last. */
export function withoutLast({ planePoints, measured }: PictureEntry): Points {
  return measured.length > 0
    ? { planePoints, measured: measured.slice(0, -1) }
    : { planePoints: planePoints.slice(0, -1), measured }
}

/** The points that still fit after the plane is told in another way or another thing is measured. */
export function pointsFor(entry: PictureEntry, change: Partial<Pick<PictureEntry, 'planeKind' | 'wanted'>>): Points {
  const { planeKind, wanted } = { ...entry, ...change }
  return {
    planePoints: entry.planePoints.slice(0, planePointsOf[planeKind]),
    measured: entry.measured.slice(0, measuredPoints[wanted][1]),
  }
}

/** What a point stands for: "corner", "end of the known length". */
export function roleOf({ planeKind, wanted }: PictureEntry, index: number): string {
  const ofPlane = planePointsOf[planeKind]
  if (index >= ofPlane) {
    const at = index - ofPlane
    if (wanted === 'distance') return at === 0 ? 'from' : 'to'
    if (wanted === 'angle') return at === 1 ? 'where the sides meet' : 'end of a side'
    return wanted === 'area' ? 'corner of the area' : 'on the circle'
  }
  if (planeKind === 'four points') return 'known point'
  if (planeKind === 'scale bar' || index >= 4) return 'end of the known length'
  return 'corner, in order round'
}
