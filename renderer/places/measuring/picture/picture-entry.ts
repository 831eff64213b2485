import type { Exhibit, PickedGeometry } from '../../../../shared-types/exhibit.ts'
import type { PicturePlane, PicturePoint, WantedMeasure } from '../../../../shared-types/measuring.ts'
import { choiceOf, wholeCar } from '../measured-panel.ts'

/** How the plane is told: a rectangle is four known points whose places follow from two sides. */
export const planeKinds = ['rectangle', 'four points', 'scale bar', 'two pairs of parallels'] as const
export type PlaneKind = (typeof planeKinds)[number]
export const wantedKinds = ['distance', 'angle', 'circle diameter', 'area'] as const satisfies WantedMeasure['kind'][]

/** A measurement on a photograph as it stands on the page. Points are pixels of the upright picture. */
export interface PictureEntry {
  /** Exhibit of the photograph; null until one is chosen. */
  readonly photograph: number | null
  readonly planeKind: PlaneKind
  readonly planePoints: readonly PicturePoint[]
  readonly firstSideMm: number | null
  readonly secondSideMm: number | null
  readonly places: readonly { readonly xMm: number | null; readonly yMm: number | null }[]
  readonly knownMm: number | null
  /** Expanded, k = 2, of the sides, coordinates or length that are known. */
  readonly knownUncertaintyMm: number | null
  readonly focalLengthPx: number | null
  readonly wanted: WantedMeasure['kind']
  readonly measured: readonly PicturePoint[]
  readonly pickPx: number | null
  readonly distortionPx: number | null
  readonly offsetMm: number | null
  readonly cameraMm: number | null
  readonly what: string
  readonly panelId: string
  readonly madeBy: string
  readonly caption: string
}

export const emptyEntry: PictureEntry = {
  photograph: null,
  planeKind: 'rectangle',
  planePoints: [],
  firstSideMm: null,
  secondSideMm: null,
  places: [0, 1, 2, 3].map(() => ({ xMm: null, yMm: null })),
  knownMm: null,
  knownUncertaintyMm: null,
  focalLengthPx: null,
  wanted: 'distance',
  measured: [],
  pickPx: 1,
  distortionPx: null,
  offsetMm: null,
  cameraMm: null,
  what: '',
  panelId: wholeCar,
  madeBy: '',
  caption: '',
}

const sameLength = (a: number, b: number) => Math.abs(a - b) < 1e-9

/** The sides of four known points that stand as the corners of a rectangle from 0, 0; null when they do not. */
function sidesOf(plane: Extract<PicturePlane, { kind: 'known points' }>): readonly [number, number] | null {
  const [a, b, c, d] = plane.points.map((point) => point.plane)
  if (a === undefined || b === undefined || c === undefined || d === undefined) return null
  const fits =
    [a.xMm, a.yMm, b.yMm, d.xMm].every((mm) => sameLength(mm, 0)) &&
    sameLength(b.xMm, c.xMm) &&
    sameLength(c.yMm, d.yMm)
  return fits ? [b.xMm, d.yMm] : null
}

function planeEntry(plane: PicturePlane): Partial<PictureEntry> {
  if (plane.kind === 'known points') {
    const sides = sidesOf(plane)
    return {
      planeKind: sides === null ? 'four points' : 'rectangle',
      planePoints: plane.points.map(({ picture }) => picture),
      places: plane.points.map((point) => point.plane),
      firstSideMm: sides?.[0] ?? null,
      secondSideMm: sides?.[1] ?? null,
      knownUncertaintyMm: tidy(2 * plane.uMm * (sides === null ? 1 : Math.SQRT2)),
    }
  }
  const known = plane.kind === 'scale bar' ? plane.bar : plane.known
  return {
    planeKind: plane.kind,
    planePoints: [...(plane.kind === 'scale bar' ? [] : plane.corners), known.from, known.to],
    knownMm: known.lengthMm,
    knownUncertaintyMm: tidy(2 * known.uMm),
    focalLengthPx: plane.kind === 'scale bar' ? null : plane.focalLengthPx,
  }
}

/** Without the dust of a root taken and squared again. */
const tidy = (value: number): number => Number(value.toPrecision(12))

/** A kept measurement opened again, with everything that was picked. */
export function entryOf({ measurement, ...exhibit }: Exhibit, picked: PickedGeometry): PictureEntry {
  return {
    ...emptyEntry,
    ...planeEntry(picked.plane),
    photograph: picked.photograph,
    wanted: picked.wanted.kind,
    measured: picked.wanted.points,
    pickPx: picked.pickPx,
    distortionPx: picked.distortionPx,
    offsetMm: picked.offPlane?.offsetMm ?? null,
    cameraMm: picked.offPlane?.cameraMm ?? null,
    what: measurement?.what ?? '',
    panelId: choiceOf(exhibit.panelId),
    madeBy: exhibit.madeBy,
    caption: exhibit.caption,
  }
}
