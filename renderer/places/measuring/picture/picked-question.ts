import type { PickedGeometry } from '../../../../shared-types/exhibit.ts'
import type { PicturePlane } from '../../../../shared-types/measuring.ts'
import type { LengthUnit } from '../../../../shared-types/units.ts'
import { letterOf, measureComplete, nextPoint, planeComplete, roleOf } from './picked-points.ts'
import type { PictureEntry } from './picture-entry.ts'

type Plane = { readonly plane: PicturePlane } | { readonly missing: string }

const missing = (words: string) => ({ missing: words })

/** "in in" would be read twice. */
const wordsOfUnit: { readonly [U in LengthUnit]: string } = { mm: 'mm', in: 'inches' }

/**
 * A side is the difference of two coordinates of equal uncertainty, so each has that of the side over √2
 * (JCGM 100:2008, 5.1.2); U is expanded with k = 2.
 */
const coordinateOfSide = (expandedMm: number): number => expandedMm / 2 / Math.SQRT2

function knownPoints(entry: PictureEntry, uncertaintyMm: number, unit: LengthUnit): Plane {
  const { planeKind, planePoints, firstSideMm: w, secondSideMm: h, places } = entry
  if (planeKind === 'rectangle' && (w === null || h === null))
    return missing(`Enter both sides of the rectangle, in ${wordsOfUnit[unit]}.`)
  const corners = [
    [0, 0],
    [w ?? 0, 0],
    [w ?? 0, h ?? 0],
    [0, h ?? 0],
  ] as const
  const told =
    planeKind === 'rectangle'
      ? corners.map(([xMm, yMm]) => ({ xMm, yMm }))
      : places.flatMap(({ xMm, yMm }) => (xMm === null || yMm === null ? [] : [{ xMm, yMm }]))
  if (told.length < 4) return missing(`Enter where each of the four points lies on the plane, in ${wordsOfUnit[unit]}.`)
  const points = planePoints.map((picture, at) => ({ picture, plane: told[at] ?? { xMm: 0, yMm: 0 } }))
  const uMm = planeKind === 'rectangle' ? coordinateOfSide(uncertaintyMm) : uncertaintyMm / 2
  return { plane: { kind: 'known points', points, uMm } }
}

function planeOf(entry: PictureEntry, unit: LengthUnit): Plane {
  const { planeKind, planePoints, knownMm, knownUncertaintyMm, focalLengthPx } = entry
  if (knownUncertaintyMm === null)
    return missing(`Enter how exactly the known length is known: expanded uncertainty, k = 2, in ${wordsOfUnit[unit]}.`)
  if (planeKind === 'rectangle' || planeKind === 'four points') return knownPoints(entry, knownUncertaintyMm, unit)
  if (knownMm === null) return missing(`Enter the known length, in ${wordsOfUnit[unit]}.`)
  const [from, to] = planePoints.slice(-2)
  if (from === undefined || to === undefined) return missing('Pick both ends of the known length.')
  const known = { from, to, lengthMm: knownMm, uMm: knownUncertaintyMm / 2 }
  if (planeKind === 'scale bar') return { plane: { kind: planeKind, bar: known } }
  return { plane: { kind: planeKind, corners: planePoints.slice(0, 4), known, focalLengthPx } }
}

/** What was picked, ready to be measured; or what is still missing, as the next thing to do, with the unit to type in. */
export function pickedOf(
  entry: PictureEntry,
  unit: LengthUnit,
): { readonly picked: PickedGeometry } | { readonly missing: string } {
  const { photograph, wanted, measured, pickPx, distortionPx, offsetMm, cameraMm } = entry
  if (photograph === null) return missing('Choose the photograph to measure on.')
  const next = nextPoint(entry)
  if (next !== null && !(planeComplete(entry) && measureComplete(entry)))
    return missing(`Pick ${letterOf(next)}: ${roleOf(entry, next)}.`)
  const told = planeOf(entry, unit)
  if ('missing' in told) return told
  if (pickPx === null) return missing('Enter how closely points are picked, in dots of the picture.')
  if ((offsetMm === null) !== (cameraMm === null))
    return missing('Off the plane: enter both how far off, and how far the camera was.')
  return {
    picked: {
      photograph,
      plane: told.plane,
      wanted: { kind: wanted, points: [...measured] },
      pickPx,
      distortionPx,
      offPlane: offsetMm === null || cameraMm === null ? null : { offsetMm, cameraMm },
    },
  }
}
