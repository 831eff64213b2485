import type { Point } from '../cubic-path.ts'
import { type Curve, ellipse, lines, rounded, smooth } from '../curve.ts'
import { bothDown, type InkCurve, line, loop, solid } from '../ink-curve.ts'
import { bumperAbove, bumperOf } from './bumpers.ts'
import { lineIn } from './joined-faces.ts'
import type { OutsideWork } from './outside-work.ts'
import { mixed } from './space.ts'

/** How far the axles and the shut lines of the front door are drawn on beyond the plan, to the elevations, mm. */
export interface StationReach {
  readonly aboveMm: number
  readonly belowMm: number
}

/** Ink of the plan from above: bumpers, air slots, wipers, crest, lines of form, bed ribs, stations. */
export function aboveInk(work: OutsideWork, reach: StationReach): InkCurve[] {
  const { form, net } = work
  const { description, dimensions, lower } = form
  const half = lower.halfWidthMm
  const crest = lineIn(
    'roof',
    net.along('crest', 'nose lamp outer', description.tail === 'upright' ? 'tail lid' : 'tail lamp outer'),
  )
  const bumpers = (['nose', 'tail'] as const).map((end) => bumperAbove(bumperOf(form, end)))
  const stations = [form.frontAxleMm, net.node('door front sill')[0], net.node('door rear top')[0], form.rearAxleMm]
  return [
    ...solid('shut', ...bumpers.map(({ bar }) => bar)),
    ...line('form', ...bumpers.flatMap(({ fold }) => bothDown(fold))),
    ...line('form', ...bothDown(crest)),
    ...scuttleInk(work),
    ...formInk(work),
    ...(description.tail === 'bed' ? bedInk(work) : []),
    ...line('centre', lines([-120, 0], [dimensions.lengthMm + 120, 0])),
    ...line(
      'station',
      ...stations.flatMap((x) => [
        lines([x, -half - reach.aboveMm], [x, -half - 22]),
        lines([x, half + 22], [x, half + reach.belowMm]),
      ]),
    ),
  ]
}

function scuttleInk({ form }: OutsideWork): InkCurve[] {
  const { upper, lower } = form
  const half = lower.halfWidthMm
  const slots = Array.from({ length: 13 }, (_, index) => (index - 6) * half * 0.042).map((y) => {
    const [from, to] = [upper.cowlAt(y), upper.screenFootAt(y)]
    return lines([mixed(from, to, 0.28), y], [mixed(from, to, 0.76), y])
  })
  const blade = (y: number): { pivot: Point; arm: Curve } => {
    const pivot: Point = [upper.screenFootAt(y) - 8, y]
    return { pivot, arm: lines(pivot, [pivot[0] + half * 0.13, y - half * 0.36]) }
  }
  const blades = [blade(-half * 0.36), blade(half * 0.26)]
  return [
    ...line('detail', ...slots, ...blades.map(({ arm }) => arm)),
    ...solid('detail', ...blades.map(({ pivot }) => ellipse(pivot, 12))),
  ]
}

/** Lines of form on bonnet, roof and lid, running out before they meet an edge, and glints on the screens. */
function formInk({ form, net }: OutsideWork): InkCurve[] {
  const { description, lower } = form
  const half = lower.halfWidthMm
  const stretch = (from: string, to: string, share: number, end: number, low: number, high: number): Curve => {
    const [a, b] = [net.node(from)[0], net.node(to)[0]]
    return smooth([0, 0.5, 1].map((t): Point => [mixed(a, b, mixed(low, high, t)), half * mixed(share, end, t ** 0.7)]))
  }
  const curves = [
    stretch('bonnet front centre', 'bonnet rear centre', 0.2, 0.24, 0.1, 0.92),
    stretch('bonnet front centre', 'bonnet rear centre', 0.22, 0.25, 0.2, 0.74),
    stretch('header rear', 'roof rear', 0.5, 0.5, 0.14, 0.84),
  ]
  if (description.tail === 'deck') curves.push(stretch('lid front centre', 'tail crest', 0.38, 0.4, 0.1, 0.84))
  const screen = net.node('screen foot centre')[0]
  const header = net.node('header')[0]
  const glint = (share: number) =>
    lines([mixed(screen, header, 0.3), half * share], [mixed(screen, header, 0.84), half * (share + 0.12)])
  return [...line('form', ...bothDown(...curves)), ...line('form', glint(-0.42), glint(-0.36), glint(0.16))]
}

/** The floor of an open bed as seen from above: ribs, wheel boxes. */
function bedInk({ form, net }: OutsideWork): InkCurve[] {
  const [front, rear] = [net.node('cab foot centre')[0], net.node('bed inner centre')[0]]
  const inner = net.node('bed front corner')[1]
  const ribs = [-0.75, -0.45, -0.15, 0.15, 0.45, 0.75].map((share) =>
    lines([front + 70, inner * share], [rear - 60, inner * share]),
  )
  const box = rounded(
    [
      [form.rearAxleMm - form.dimensions.archRadiusMm, inner * 0.72],
      [form.rearAxleMm + form.dimensions.archRadiusMm, inner * 0.72],
      [form.rearAxleMm + form.dimensions.archRadiusMm, inner - 4],
      [form.rearAxleMm - form.dimensions.archRadiusMm, inner - 4],
    ],
    [70, 70, 6, 6],
  )
  const wall = lines([front + 34, -inner], [front + 34, inner])
  return [
    ...line('form', ...ribs),
    ...solid('detail', ...bothDown(box)),
    ...line('detail', wall),
    ...loop('form', ...bothDown(box)),
  ]
}
