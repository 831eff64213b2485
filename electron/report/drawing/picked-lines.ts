import type { PickedGeometry } from '../../../shared-types/exhibit.ts'
import type { PicturePoint } from '../../../shared-types/measuring.ts'
import { lineWeights, printedInks, printedRules } from '../../../shared-types/tokens.ts'
import type { PageCanvas } from '../document/page-canvas.ts'
import { inks } from '../layout/text-style.ts'

/** Where a photograph stands on the page, mm, and its size in its own pixels. */
export interface PrintedPicture {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
  readonly widthPx: number
  readonly heightPx: number
}

const POINT_MM = 0.7

type Run = { readonly points: readonly PicturePoint[]; readonly closed: boolean; readonly dashed: boolean }

/** The lines of a measurement: what tells the plane dashed, what was measured whole; a circle by its points alone. */
function runsOf({ plane, wanted }: PickedGeometry): readonly Run[] {
  const run = (points: readonly PicturePoint[], closed: boolean, dashed: boolean): Run => ({ points, closed, dashed })
  const measured = wanted.kind === 'circle diameter' ? [] : [run(wanted.points, wanted.kind === 'area', false)]
  if (plane.kind === 'known points') {
    const corners = plane.points.map(({ picture }) => picture)
    return [run(corners, true, true), ...measured]
  }
  const known = plane.kind === 'scale bar' ? plane.bar : plane.known
  const length = run([known.from, known.to], false, true)
  return plane.kind === 'scale bar' ? [length, ...measured] : [run(plane.corners, true, true), length, ...measured]
}

/** Draws what was picked over its printed photograph, with paper on either side of each line. */
export function drawPicked(page: PageCanvas, picked: PickedGeometry, box: PrintedPicture): void {
  const at = ({ x, y }: PicturePoint) =>
    [box.left + (x / box.widthPx) * box.width, box.top + (y / box.heightPx) * box.height] as const
  for (const { points, closed, dashed } of runsOf(picked)) {
    const ends = points.map((from, index) => [from, points[index + 1] ?? (closed ? points[0] : undefined)] as const)
    for (const ink of [false, true]) {
      for (const [from, to] of ends) {
        if (to === undefined) continue
        page.line(...at(from), ...at(to), {
          weightMm: ink ? printedRules.thin : lineWeights.inHand.mm,
          colour: ink ? inks.ink : printedInks.paper,
          dashMm: ink && dashed ? [1, 0.6] : undefined,
        })
      }
    }
  }
  for (const point of picked.wanted.points) {
    page.circle(...at(point), POINT_MM, { weightMm: lineWeights.inHand.mm, colour: printedInks.paper })
    page.circle(...at(point), POINT_MM, { weightMm: printedRules.thin, colour: inks.ink })
  }
}
