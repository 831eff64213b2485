import { ellipse, lines, rounded } from '../curve.ts'
import { block, bothDown, type InkCurve, line, loop, solid, tube } from '../ink-curve.ts'
import type { UnderPlaces } from './under-places.ts'

/** Lower arms, springs, track rod and roll bar of the front axle. */
export function frontSuspension(at: UnderPlaces): InkCurve[] {
  const { frontAxleMm: u, frontRailAtMm: rail, noseMm } = at
  const hub = at.tyreMm[0] + 10
  const bar = Math.max(noseMm + 150, u - 260)
  return [
    ...solid(
      'detail',
      ...bothDown(
        tube(
          [
            [u - 96, rail + 20],
            [u - 44, (rail + hub) / 2],
            [u - 6, hub],
          ],
          15,
        ),
        tube(
          [
            [u + 92, rail + 20],
            [u + 48, (rail + hub) / 2],
            [u + 8, hub],
          ],
          15,
        ),
      ),
    ),
    ...solid('detail', ...bothDown(ellipse([u, hub - 30], 40), ellipse([u, rail + 148], 46))),
    ...loop('form', ...bothDown(ellipse([u, rail + 148], 32), ellipse([u, rail + 148], 18))),
    ...solid(
      'detail',
      tube(
        [
          [u + 96, -hub],
          [u + 104, 0],
          [u + 96, hub],
        ],
        9,
      ),
    ),
    ...solid(
      'detail',
      ...bothDown(
        tube(
          [
            [u - 40, rail + 130],
            [bar + 40, rail + 118],
            [bar, rail + 84],
            [bar - 6, rail - 40],
          ],
          9,
        ),
      ),
      tube(
        [
          [bar - 6, -rail + 40],
          [bar - 8, 0],
          [bar - 6, rail - 40],
        ],
        9,
      ),
    ),
  ]
}

/** Leaf springs beside the rear legs, with the dampers. */
export function rearSprings(at: UnderPlaces): InkCurve[] {
  const leaf = (at.rearRailAtMm + at.railHalfMm + at.tyreMm[0]) / 2
  const from = (at.springMountMm[0] + at.springMountMm[1]) / 2
  const to = Math.min(at.rearAxleMm + at.archRadiusMm + 170, at.rearCrossMm[0] - 50)
  return [
    ...solid('detail', ...bothDown(block(from, to, leaf - 25, leaf + 25, 25))),
    ...line(
      'form',
      ...bothDown(
        lines([from + 120, leaf - 25], [from + 120, leaf + 25]),
        lines([to - 120, leaf - 25], [to - 120, leaf + 25]),
      ),
    ),
    ...loop('form', ...bothDown(ellipse([from + 25, leaf], 11), ellipse([to - 25, leaf], 11))),
    ...solid(
      'detail',
      ...bothDown(
        tube(
          [
            [at.rearAxleMm + 60, leaf - 90],
            [at.rearAxleMm + 250, at.rearRailAtMm - 90],
          ],
          21,
        ),
      ),
    ),
  ]
}

/** Axle with its casing, and the shaft to it. */
export function rearAxle(at: UnderPlaces): InkCurve[] {
  const { rearAxleMm: u } = at
  const end = at.gearboxCrossMm[0] - 16
  const hub = at.tyreMm[0]
  const half = rounded(
    [
      [u - 56, 70],
      [u - 34, 176],
      [u - 34, hub],
      [u + 34, hub],
      [u + 34, 176],
      [u + 56, 70],
    ],
    22,
  )
  return [
    ...solid(
      'detail',
      tube(
        [
          [end + 30, 0],
          [u - 150, 0],
        ],
        27,
      ),
    ),
    ...solid('detail', ...bothDown(half)),
    ...solid(
      'detail',
      rounded(
        [
          [u - 190, -34],
          [u - 190, 34],
          [u - 70, 84],
          [u - 70, -84],
        ],
        18,
      ),
    ),
    ...solid('detail', ellipse([u, 0], 122, 128)),
    ...loop('form', ellipse([u + 12, 0], 88, 96), ellipse([u + 60, 0], 12)),
    ...solid('detail', block(end - 4, end + 44, -34, 34, 10), block(u - 206, u - 158, -34, 34, 10)),
    ...line('form', lines([end + 20, -34], [end + 20, 34]), lines([u - 182, -34], [u - 182, 34])),
    ...solid('detail', ...bothDown(block(u - 128, u + 128, hub - 26, hub + 2, 12))),
  ]
}

/** Tyres with their tread. */
export function wheels(at: UnderPlaces): InkCurve[] {
  const [low, high] = at.tyreMm
  const radius = at.archRadiusMm - 46
  const wide = high - low
  return [at.frontAxleMm, at.rearAxleMm].flatMap((u) => [
    ...solid('detail', ...bothDown(block(u - radius, u + radius, low, high, 46))),
    ...line(
      'form',
      ...bothDown(
        ...[0.24, 0.42, 0.58, 0.76].map((share) =>
          lines([u - radius + 9, low + wide * share], [u + radius - 9, low + wide * share]),
        ),
      ),
    ),
  ])
}
