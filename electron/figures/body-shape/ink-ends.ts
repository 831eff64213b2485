import type { Point } from '../cubic-path.ts'
import { type Curve, ellipse, joined, lines, moved, rounded, smooth } from '../curve.ts'
import { type InkCurve, line, loop, solid } from '../ink-curve.ts'
import { bumperEnd, bumperOf } from './bumpers.ts'
import { lineIn } from './joined-faces.ts'
import type { OutsideWork } from './outside-work.ts'
import { mixed } from './space.ts'

const acrossMiddle = (curve: Curve): Curve => moved(curve, ([u, v]) => [-u + 0, v])
const both = (...curves: Curve[]): Curve[] => curves.flatMap((curve) => [curve, acrossMiddle(curve)])
const at = (y: number, z: number): Point => [y, -z]

/** Ink of the front elevation: tyres, opening with its bars, lamps, bumper, plate, lines of form. */
export function frontInk(work: OutsideWork): InkCurve[] {
  const { form } = work
  const { lower, description, dimensions } = form
  const belt = dimensions.beltHeightMm
  const lampHalf = description.plan.lamp * lower.halfWidthMm
  const lampMiddle = description.heights.lampMiddle * belt
  const radius = description.heights.lampBowl * belt
  const ring = (share: number) => ellipse(at(lampHalf, lampMiddle), radius * share)
  const ribs = Array.from({ length: 9 }, (_, index) => (index - 4) * radius * 0.15).map((du) => {
    const reach = Math.sqrt((radius * 0.66) ** 2 - du * du)
    return smooth([
      at(lampHalf + du, lampMiddle - reach),
      at(lampHalf + du * 1.12, lampMiddle),
      at(lampHalf + du, lampMiddle + reach),
    ])
  })
  return [
    ...tyreInk(work, 'nose'),
    ...line('form', ...both(lineIn('front', work.net.along('crest', 'front arch crest', 'nose lamp outer')))),
    ...grilleInk(work, lampHalf - radius * 1.25),
    ...solid('shut', ...both(ring(0.8))),
    ...loop('detail', ...both(ring(0.74), ring(0.67))),
    ...line('form', ...both(...ribs)),
    ...bumperInk(work, 'nose'),
    ...plateInk(work, 'nose'),
    ...bonnetInk(work),
    ...line('centre', lines(at(0, 60), at(0, dimensions.heightMm + 70))),
    ...line('station', lines(at(-dimensions.widthMm / 2 - 90, 0), at(dimensions.widthMm / 2 + 90, 0))),
  ]
}

/** Ink of the rear elevation: tyres, lenses, handle and plate of the lid, bumper. */
export function rearInk(work: OutsideWork): InkCurve[] {
  const { form, net } = work
  const { dimensions, description } = form
  const belt = dimensions.beltHeightMm
  const [inner, foot, outer] = ['tail lamp inner', 'tail lamp foot', 'tail lamp outer'].map((name) => net.node(name))
  const lens: InkCurve[] = []
  if (inner && foot && outer) {
    const middle = at((inner[1] + outer[1] + 2 * foot[1]) / 4, mixed(foot[2], inner[2], 0.5))
    const wide = Math.max(18, (outer[1] - inner[1]) * 0.3)
    const tall = (inner[2] - foot[2]) * 0.36
    lens.push(
      ...solid('shut', ...both(ellipse(middle, wide, tall))),
      ...loop('form', ...both(ellipse(middle, wide * 0.72, tall * 0.8))),
    )
    lens.push(...line('form', ...both(lines([middle[0] - wide, middle[1]], [middle[0] + wide, middle[1]]))))
  }
  const handle =
    description.tail === 'bed'
      ? []
      : handleOf(belt * mixed(description.heights.lidFoot, description.heights.tailCrest, 0.35))
  return [
    ...tyreInk(work, 'tail'),
    ...lens,
    ...handle,
    ...bumperInk(work, 'tail'),
    ...plateInk(work, 'tail'),
    ...line('centre', lines(at(0, 60), at(0, dimensions.heightMm + 70))),
    ...line('station', lines(at(-dimensions.widthMm / 2 - 90, 0), at(dimensions.widthMm / 2 + 90, 0))),
  ]
}

const handleOf = (z: number): InkCurve[] => [
  ...solid('detail', rounded([at(-46, z + 9), at(46, z + 9), at(46, z - 9), at(-46, z - 9)], 8)),
  ...solid('detail', ellipse(at(0, z - 26), 9)),
]

/** Tyre from where the body lets it out down to the ground. */
function tyreInk({ form }: OutsideWork, end: 'nose' | 'tail'): InkCurve[] {
  const { lower, dimensions } = form
  const width = dimensions.tyreRadiusMm * 0.5
  const outer = lower.halfWidthMm * 0.885
  const inner = outer - width
  const hem = smooth(
    [0, 0.5, 1].map((share): Point => {
      const y = mixed(inner, outer, share)
      return at(y, lower.foot(lower.roundAcross('foot', end, Math.min(y, lower.halfWidthMm * 0.89)))[2])
    }),
  )
  const [start, finish] = [hem[0]?.[0] ?? at(inner, 200), hem.at(-1)?.[3] ?? at(outer, 200)]
  const tyre = joined(
    hem,
    lines(finish, at(outer, 40)),
    smooth([at(outer, 40), at(outer - 6, 14), at(outer - 26, 0)]),
    lines(at(outer - 26, 0), at(inner + 26, 0)),
    smooth([at(inner + 26, 0), at(inner + 6, 14), at(inner, 40)]),
    lines(at(inner, 40), start),
  )
  const treads = [0.2, 0.4, 0.6, 0.8].map((share) =>
    lines(at(mixed(inner, outer, share), 6), at(mixed(inner, outer, share), Math.min(-start[1], -finish[1]) - 8)),
  )
  return [...solid('shut', ...both(tyre)), ...line('form', ...both(...treads))]
}

/** One plain opening, wider than it is high, closed by upright bars. */
function grilleInk({ form }: OutsideWork, half: number): InkCurve[] {
  const belt = form.dimensions.beltHeightMm
  const low = form.fullestMm + belt * 0.012
  const high = belt * form.description.heights.noseCrest - belt * 0.075
  const opening = (inset: number): Curve =>
    rounded(
      [
        at(-half + inset, high - inset),
        at(half - inset, high - inset),
        at(half * 0.93 - inset, low + inset),
        at(-half * 0.93 + inset, low + inset),
      ],
      (high - low) * 0.36,
    )
  const bars: Curve[] = []
  for (let y = 0; y < half * 0.9; y += belt * 0.03) {
    const fall = Math.max(0, (y / (half * 0.9)) ** 5 * (high - low) * 0.3)
    bars.push(lines(at(y, low + 16 + fall), at(y, high - 16 - fall)))
  }
  return [
    ...solid('shut', opening(0)),
    ...loop('detail', opening(11)),
    ...line('detail', ...bars.slice(0, 1), ...both(...bars.slice(1))),
  ]
}

function bumperInk({ form }: OutsideWork, end: 'nose' | 'tail'): InkCurve[] {
  const { bar, folds, overriders } = bumperEnd(bumperOf(form, end))
  return [
    ...solid('shut', bar),
    ...line('form', ...folds),
    ...solid('shut', ...overriders.map((corners) => rounded(corners, [24, 24, 14, 14]))),
  ]
}

function plateInk({ form }: OutsideWork, end: 'nose' | 'tail'): InkCurve[] {
  const bumper = bumperOf(form, end)
  const belt = form.dimensions.beltHeightMm
  const top = end === 'nose' ? bumper.footMm - 14 : form.description.heights.lidFoot * belt - belt * 0.04
  const plate = rounded([at(-240, top), at(240, top), at(240, top - 92), at(-240, top - 92)], 8)
  return solid('detail', plate)
}

/** Two lines of form on the bonnet, and a blank badge. */
function bonnetInk({ form, net }: OutsideWork): InkCurve[] {
  const { upper, lower } = form
  const from = net.node('bonnet front centre')[0]
  const to = net.node('bonnet rear centre')[0]
  const run = (share: number) =>
    smooth(
      [0.12, 0.4, 0.7, 0.92].map((along): Point => {
        const [, y, z] = upper.onTop(mixed(from, to, along), lower.halfWidthMm * share * (1 + along * 0.25))
        return at(y, z)
      }),
    )
  const [, , badge] = lower.onEnd('nose', 0, form.dimensions.beltHeightMm * form.description.heights.noseCrest - 30)
  return [...line('form', ...both(run(0.2), run(0.42))), ...solid('detail', ellipse(at(0, badge), 17))]
}
