import type { Point } from '../cubic-path.ts'
import { type Curve, ellipse, joined, lines, rounded, smooth } from '../curve.ts'
import { type InkCurve, line, loop, solid } from '../ink-curve.ts'
import { bumperOf, bumperSide } from './bumpers.ts'
import { lineIn } from './joined-faces.ts'
import type { OutsideWork } from './outside-work.ts'
import { mixed } from './space.ts'

/** Ink of the side elevation that is no panel: wheels, bumpers, lamp glass, handle, mouldings, lines of form. */
export function sideInk(work: OutsideWork): InkCurve[] {
  const { form, net } = work
  const { dimensions } = form
  const crest = net.along(
    'crest',
    'nose lamp outer',
    form.description.tail === 'upright' ? 'tail lid' : 'tail lamp outer',
  )
  return [
    ...(['front arch', 'rear arch'] as const).flatMap((name) => wheelInk(work, name)),
    ...line('detail', lineIn('left', crest)),
    ...formInk(work),
    ...handleInk(work),
    ...(['nose', 'tail'] as const).flatMap((end) => {
      const { bar, folds } = bumperSide(bumperOf(form, end))
      return [...solid('shut', bar), ...line('form', ...folds)]
    }),
    ...lampInk(work),
    ...line('station', lines([-120, 0], [dimensions.lengthMm + 120, 0])),
  ]
}

/** Tyre, rim and disc, and the dark gap under the arch as strokes along the wheel's rays. */
function wheelInk({ form }: OutsideWork, name: 'front arch' | 'rear arch'): InkCurve[] {
  const tyre = form.dimensions.tyreRadiusMm
  const station = name === 'front arch' ? form.frontAxleMm : form.rearAxleMm
  const middle: Point = [station, -tyre]
  const ring = (share: number) => ellipse(middle, tyre * share)
  const slots = Array.from({ length: 12 }, (_, index) => {
    const turn = (index * Math.PI) / 6 + Math.PI / 12
    return ellipse([middle[0] + Math.cos(turn) * tyre * 0.525, middle[1] + Math.sin(turn) * tyre * 0.525], tyre * 0.038)
  })
  const lip = form.dimensions.archRadiusMm
  const strokes: Curve[] = []
  for (let degrees = -12; degrees <= 192; degrees += 2.4) {
    const turn = (degrees * Math.PI) / 180
    const ray = (radius: number): Point => [middle[0] + Math.cos(turn) * radius, middle[1] - Math.sin(turn) * radius]
    const [x, z] = ray(lip)
    if (-z > form.lower.foot(form.lower.roundAt('foot', x))[2]) strokes.push(lines(ray(tyre + 2), ray(lip - 4)))
  }
  return [
    ...line('detail', ...strokes),
    ...solid('shut', ring(1)),
    ...loop('form', ring(0.968), ring(0.918), ring(0.86), ring(0.804), ring(0.747)),
    ...solid('shut', ring(0.684)),
    ...loop('detail', ring(0.649), ...slots),
    ...solid('shut', ring(0.405)),
    ...loop('detail', ring(0.361), ring(0.165)),
    ...loop('form', ring(0.139)),
  ]
}

/** Lines that give the flank its section: they run out before they meet an edge. */
function formInk({ form, net }: OutsideWork): InkCurve[] {
  const { lower, fullestMm, dimensions, frontAxleMm, rearAxleMm, sillTopMm } = form
  const at = (x: number, z: number): Point => [x, -z]
  const shoulder = (share: number, from: number, to: number) =>
    smooth(
      Array.from({ length: 7 }, (_, index): Point => {
        const x = mixed(from, to, index / 6)
        const crest = lower.crest(lower.roundAt('crest', x))[2]
        const fade = 4 * (index / 6) * (1 - index / 6)
        return at(x, mixed(fullestMm, crest, share + 0.035 * fade))
      }),
    )
  const { wheelbaseMm: base } = dimensions
  const low = mixed(sillTopMm, fullestMm, 0.18)
  const doorFront = net.node('door front sill')[0]
  const rear = net.node('rear arch ahead fullest')[0]
  const run = (from: number, to: number) => smooth([at(from, low - 6), at(mixed(from, to, 0.5), low), at(to, low - 5)])
  return line(
    'form',
    shoulder(0.72, frontAxleMm - base * 0.14, rearAxleMm - base * 0.2),
    shoulder(0.64, frontAxleMm - base * 0.05, rearAxleMm - base * 0.3),
    shoulder(0.74, rearAxleMm - base * 0.1, rearAxleMm + base * 0.29),
    shoulder(0.66, rearAxleMm - base * 0.04, rearAxleMm + base * 0.23),
    run(doorFront + base * 0.04, mixed(doorFront, rear, 0.55)),
    run(mixed(doorFront, rear, 0.66), rear - base * 0.05),
  )
}

function handleInk({ form, net }: OutsideWork): InkCurve[] {
  const rows: string[] = [
    'door rear',
    ...(form.description.stations.rearDoorFrameRear === null ? [] : ['rear door rear']),
  ]
  const belt = form.dimensions.beltHeightMm
  return rows.flatMap((name) => {
    const edge = net.node(`${name} top`)[0] - belt * 0.05
    const height = belt * 0.885
    const handle = rounded(
      [
        [edge - belt * 0.16, -height - 5],
        [edge, -height - 2],
        [edge, -height + 13],
        [edge - belt * 0.16, -height + 15],
      ],
      7,
    )
    return [...solid('detail', handle), ...solid('detail', ellipse([edge - 16, -height + 32], 9))]
  })
}

/** Lamp glass seen from its side, where it stands out of the nose; the lens at the tail. */
function lampInk({ form, net }: OutsideWork): InkCurve[] {
  const { lower, description, dimensions } = form
  const belt = dimensions.beltHeightMm
  const middle = description.heights.lampMiddle * belt
  const half = description.plan.lamp * lower.halfWidthMm
  const radius = description.heights.lampBowl * belt * 0.8
  const rim = [-1, -0.6, 0, 0.6, 1].map((share) => {
    const [x, , z] = lower.onEnd('nose', half, middle + share * radius)
    return [x, z] as const
  })
  const edge = rim.map(([x, z]): Point => [x + 6, -z])
  const bulge = rim.map(([x, z], index): Point => [x - radius * 0.3 * Math.cos((index - 2) * (Math.PI / 4)), -z])
  const tail = lineIn('left', net.along('tail lamp outside', 'tail lamp outer', 'tail lamp foot'))
  const inset = tail.map(
    (piece) => piece.map(([u, v]): Point => [u + belt * 0.022, v - belt * 0.01]) as unknown as Curve[number],
  )
  return [...solid('shut', joined(smooth(edge), smooth([...bulge].reverse()))), ...line('form', inset)]
}
