import type { CutLine } from '../../shared-types/coating-cut.ts'
import type { CoatingMap, MapLayer } from '../../shared-types/coating-map.ts'
import type { PlanPoint } from '../../shared-types/finding.ts'
import { type Box, FIGURE_PX, LINE_PX, labelBox, meets, type SpotLabel, spotBox } from './spot-labels.ts'

/** The figure of a contour and where its middle stands, px. */
export interface ContourFigure {
  readonly level: number
  readonly text: string
  readonly x: number
  readonly y: number
}

/** Half the room of a cross or an end of the cut, and how far its sign reaches from it, px. */
const MARK_PX = 6
const SIGN_PX = 16

type Place = (point: PlanPoint) => { readonly x: number; readonly y: number }

/** Room of a mark with its sign to the right, above it or below. */
function signedBox({ x, y }: ReturnType<Place>, letterScale: number, sign: 'above' | 'below'): Box {
  const far = SIGN_PX * letterScale
  const [up, down] = sign === 'above' ? [far, MARK_PX] : [MARK_PX, far]
  return { left: x - MARK_PX, right: x + far, top: y - up, foot: y + down }
}

/** Room of the crosses where to read next, each with its letter below. */
export const crossBoxes = (next: CoatingMap['next'], place: Place, letterScale: number): readonly Box[] =>
  next.map(({ at }) => signedBox(place(at), letterScale, 'below'))

/** Room of the ends of a cut, each with its number above. */
export const endBoxes = (line: CutLine | null, place: Place, letterScale: number): readonly Box[] =>
  line === null ? [] : [line.from, line.to].map((end) => signedBox(place(end), letterScale, 'above'))

/**
 * Sets the figures of contours where none covers a spot, its label, another figure or what `besides` is drawn there;
 * where a contour has no such place its figure is left out: the legend tells the level.
 */
export function contourFigures(
  layer: MapLayer,
  labels: readonly SpotLabel[],
  place: Place,
  widthPx: number,
  letterScale = 1,
  besides: readonly Box[] = [],
): readonly ContourFigure[] {
  const taken: Box[] = [
    ...labels.map(spotBox),
    ...labels.filter(({ text }) => text !== '').map((label) => labelBox(label, letterScale)),
    ...besides,
  ]
  return layer.bands.flatMap(({ level, places }) => {
    const text = layer.printed.limits[level - 1]
    if (text === undefined) return []
    const half = { x: (text.length * FIGURE_PX * letterScale) / 2, y: (LINE_PX * letterScale) / 2 }
    for (const point of places) {
      const { x, y } = place(point)
      const box = { left: x - half.x, right: x + half.x, top: y - half.y, foot: y + half.y }
      if (box.left < 0 || box.right > widthPx || taken.some((other) => meets(other, box))) continue
      taken.push(box)
      return [{ level, text, x, y }]
    }
    return []
  })
}
