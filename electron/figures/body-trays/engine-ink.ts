import type { BodyFrame } from '../body-shape/body-frame.ts'
import { type Curve, ellipse, joined, lines, rounded, roundedBox, smooth } from '../curve.ts'
import { block, type InkCurve, line, loop, solid } from '../ink-curve.ts'
import type { BayPlaces } from './bay-places.ts'
import { held } from './measures.ts'

/** An upright engine in line from above: four cylinders, six where the bay is long. */
export function engineInk({ body }: BodyFrame, at: BayPlaces): InkCurve[] {
  const room = at.bulkheadMm - at.radiatorMm
  const from = at.radiatorMm + held(room * 0.25, 190, 260)
  const to = at.bulkheadMm - held(room * 0.06, 30, 80)
  const cylinders = to - from > 640 || body === 'pickup' ? 6 : 4
  const pitch = (to - from - 90) / cylinders
  const bores = Array.from({ length: cylinders }, (_, index) => from + 45 + pitch * (index + 0.5))
  return [
    ...solid('detail', block(from, to, -128, 132, 30)),
    ...exhaustSide(from, bores),
    ...inletSide(from, to, bores, at),
    ...solid('detail', block(from + 22, to - 16, -74, 68, 40)),
    ...loop('form', block(from + 36, to - 30, -58, 52, 30)),
    ...loop('detail', ...bores.filter((_, index) => index % 3 === 1).map((u) => ellipse([u, -4], 11))),
    ...solid('detail', ellipse([from + 86, 18], 36)),
    ...loop('form', ellipse([from + 86, 18], 24)),
    ...frontDrive(from, at),
    ...sparks(bores, to),
  ]
}

/** Manifold with one branch for each cylinder, falling away to the down pipe. */
function exhaustSide(from: number, bores: readonly number[]): InkCurve[] {
  const last = bores.at(-1) ?? from
  const branches = bores.map((u) =>
    smooth(
      [
        [u, -128],
        [u + 8, -158],
        [u + 34, -182],
      ],
      [0, -1],
    ),
  )
  const second = bores.map((u) =>
    smooth(
      [
        [u + 26, -128],
        [u + 32, -150],
        [u + 52, -166],
      ],
      [0, -1],
    ),
  )
  return [
    ...line('detail', ...branches, ...second),
    ...line(
      'detail',
      smooth([
        [from + 60, -184],
        [(from + last) / 2, -196],
        [last + 30, -190],
        [last + 76, -214],
      ]),
      smooth([
        [from + 64, -212],
        [(from + last) / 2, -228],
        [last, -226],
        [last + 52, -250],
      ]),
    ),
    ...line('detail', lines([from + 60, -184], [from + 64, -212])),
  ]
}

/** Carburettor with its air cleaner on the other side. */
function inletSide(from: number, to: number, bores: readonly number[], at: BayPlaces): InkCurve[] {
  const middle = (from + to) / 2 + 10
  const out = held(at.rearHalfMm - 120, 200, 270)
  const tracts: Curve[] = bores.flatMap((u) => {
    const aim = middle + (u - middle) * 0.3
    return [-11, 11].map((du) =>
      smooth(
        [
          [u + du, 132],
          [(u + aim) / 2 + du, 158],
          [aim + du, out - 30],
        ],
        [0, 1],
      ),
    )
  })
  return [
    ...line('detail', ...tracts),
    ...solid('detail', ellipse([middle, out], 96, 84)),
    ...loop('form', ellipse([middle, out], 78, 68), ellipse([middle, out], 22)),
    ...solid(
      'detail',
      rounded(
        [
          [middle - 128, out + 24],
          [middle - 84, out + 10],
          [middle - 84, out + 52],
          [middle - 148, out + 58],
        ],
        10,
      ),
    ),
    ...solid('detail', block(to - 92, to - 8, 138, 186, 16)),
    ...loop('form', ellipse([to - 50, 162], 14)),
  ]
}

/** Fan, pulleys and belt, dynamo, water pump and the two hoses to the radiator. */
function frontDrive(from: number, at: BayPlaces): InkCurve[] {
  const radiator = at.radiatorMm + 96
  const fan = Math.max(radiator + 22, from - 66)
  const blade = (reach: number): Curve =>
    joined(
      smooth([
        [fan - 6, reach * 0.18],
        [fan - 15, reach * 0.6],
        [fan - 8, reach],
      ]),
      smooth([
        [fan - 8, reach],
        [fan + 10, reach * 0.98],
      ]),
      smooth([
        [fan + 10, reach * 0.98],
        [fan + 14, reach * 0.6],
        [fan + 6, reach * 0.18],
      ]),
    )
  return [
    ...solid('detail', blade(176), blade(-176)),
    ...solid('detail', roundedBox([fan + 8, 0], 44, 74, 14)),
    ...solid('detail', block(fan + 30, from, -26, 26, 6)),
    ...solid('detail', block(from - 34, from - 10, -64, 64, 8), block(from - 34, from - 10, 142, 206, 8)),
    ...line('form', lines([from - 26, -64], [from - 26, 206]), lines([from - 18, -64], [from - 18, 206])),
    ...solid('detail', block(from - 8, from + 128, 140, 208, 22)),
    ...line('form', lines([from + 24, 142], [from + 24, 206]), lines([from + 98, 142], [from + 98, 206])),
    ...hose([
      [from + 60, 40],
      [from + 10, 92],
      [fan + 6, 118],
      [radiator, 128],
    ]),
    ...hose([
      [from + 20, -120],
      [from - 22, -168],
      [fan + 8, -196],
      [radiator, -204],
    ]),
  ]
}

/** A hose as its two edges. */
function hose(points: readonly (readonly [number, number])[]): InkCurve[] {
  return line('detail', smooth(points.map(([u, v]) => [u, v - 15])), smooth(points.map(([u, v]) => [u, v + 15])))
}

/** Leads from the distributor to the plugs. */
function sparks(bores: readonly number[], to: number): InkCurve[] {
  const cap = [to - 64, -112] as const
  return [
    ...line('form', ...bores.map((u, index) => smooth([cap, [(u + cap[0]) / 2, -106 - index * 3], [u, -92]]))),
    ...loop('form', ...bores.map((u) => ellipse([u, -92], 7))),
    ...solid('detail', ellipse([cap[0], cap[1]], 27)),
    ...loop('form', ellipse([cap[0], cap[1]], 10)),
  ]
}
