import type { BodyForm } from './body-form.ts'
import { fairCurve } from './fair-curve.ts'
import type { LineNet } from './line-net.ts'
import { ends, mixed, type Point3, solved } from './space.ts'

type End = 'nose' | 'tail'
type Place = readonly [round: number, level: number]

/**
 * Lines of nose and tail below the crest, left half. Both ends are cut alike: a lamp housing that hangs from the crest,
 * a seam from its foot down through the fullest line to the foot of the body, and at the tail the edge of the lid or
 * door with its foot. Nodes of the nose begin with `nose`, those of the tail with `tail`.
 */
export function noseLines(net: LineNet, form: BodyForm): void {
  const { lower, description } = form
  const belt = form.dimensions.beltHeightMm
  const radius = description.heights.lampBowl * belt
  const lampHalf = description.plan.lamp * lower.halfWidthMm
  const middle = description.heights.lampMiddle * belt
  centreLine(net, form, 'nose')
  const away = (round: number): number => {
    const [, y, z] = lower.crest(round)
    return Math.hypot(y - lampHalf, z - middle)
  }
  const above = lower.roundAcross('crest', 'nose', lampHalf)
  net.mark('crest', 'nose lamp inner', solved(away, radius, above * 0.5, above))
  net.mark('crest', 'nose lamp outer', solved(away, radius, above, mixed(above, 1, 0.8)))
  const foot = lower.onEnd('nose', lampHalf, middle - radius)
  for (const [name, top, side] of [
    ['nose lamp inside', 'nose lamp inner', -1],
    ['nose lamp outside', 'nose lamp outer', 1],
  ] as const) {
    const start = net.node(top)
    const from = Math.atan2(start[2] - middle, side * (start[1] - lampHalf))
    const bowl = (t: number): Point3 => {
      const angle = mixed(from, -Math.PI / 2, t)
      return lower.onEnd('nose', lampHalf + side * Math.cos(angle) * radius, middle + Math.sin(angle) * radius)
    }
    net.link(name, top, 'nose lamp foot', ends(start, foot, bowl))
  }
  seamDown(net, form, 'nose', lower.placeOnEnd('nose', lampHalf, middle - radius))
}

export function tailLines(net: LineNet, form: BodyForm): void {
  const { lower, description } = form
  const belt = form.dimensions.beltHeightMm
  centreLine(net, form, 'tail')
  const lamp = description.plan.rearLamp * lower.halfWidthMm
  const foot = lower.placeOnEnd('tail', lamp, description.heights.rearLampFoot * belt)
  const inner = lower.roundAcross('crest', 'tail', Math.min(lower.crestHalfMm * 0.93, lamp - lower.halfWidthMm * 0.07))
  const outer = mixed(Math.min(inner, foot[0]), 2, 0.5)
  for (const [name, top, round] of [
    ['tail lamp outside', 'tail lamp outer', outer],
    ['tail lamp inside', 'tail lamp inner', inner],
  ] as const) {
    net.mark('crest', top, round)
    net.link(name, top, 'tail lamp foot', (t) =>
      lower.at(mixed(round, foot[0], t ** 3), mixed(2, foot[1], Math.sin((t * Math.PI) / 2))),
    )
  }
  seamDown(net, form, 'tail', foot)
  if (description.tail !== 'bed') lidFoot(net, form, description.heights.lidFoot * belt)
}

/** Edge of lid, tail door or load door below the crest, and its foot. */
function lidFoot(net: LineNet, form: BodyForm, height: number): void {
  const { lower } = form
  const on = (y: number, z: number): Point3 => lower.onEnd('tail', y, z)
  net.mark('crest', 'tail lid', lower.roundAcross('crest', 'tail', lower.lidHalfMm))
  const corner = net.node('tail lid')
  const draw = fairCurve([
    [0, 1],
    [0.75, 0.985],
    [1, 0.9],
  ])
  const low = on(corner[1] * draw(1), height)
  net.link(
    'tail lid side',
    'tail lid',
    'tail lid foot',
    ends(corner, low, (t) => on(corner[1] * draw(t), mixed(corner[2], height, t))),
  )
  const sag = form.dimensions.beltHeightMm * 0.012
  net.mark('tail centre', 'tail lid centre', lower.placeOnEnd('tail', 0, height - sag)[1])
  net.link(
    'tail lid edge',
    'tail lid foot',
    'tail lid centre',
    ends(low, net.node('tail lid centre'), (t) => on(low[1] * (1 - t), height - sag * (1 - (1 - t) ** 2))),
  )
}

/** Profile of an end at the centre line, foot to crest; parameter is the level of the section. */
function centreLine(net: LineNet, { lower }: BodyForm, end: End): void {
  const round = end === 'nose' ? 0 : 3
  const at = (level: number): Point3 => {
    const [x, , z] = lower.at(round, level)
    return [x, 0, z]
  }
  net.line(`${end} centre`, { at, from: 0, to: 2, breaks: [1], centre: true })
  for (const [line, level] of [
    ['foot', 0],
    ['fullest', 1],
    ['crest', 2],
  ] as const) {
    net.mark(line, `${end} ${line}`, round)
    net.mark(`${end} centre`, `${end} ${line}`, level)
  }
}

/** Seam between the panels of the middle and the wing, from the foot of the lamp to the foot of the body. */
function seamDown(net: LineNet, { lower }: BodyForm, end: End, [round, level]: Place): void {
  const low = mixed(round, end === 'nose' ? 0 : 3, 0.05)
  net.mark('fullest', `${end} seam fullest`, round)
  net.mark('foot', `${end} seam foot`, low)
  net.link(`${end} seam upper`, `${end} lamp foot`, `${end} seam fullest`, (t) => lower.at(round, mixed(level, 1, t)))
  net.link(`${end} seam lower`, `${end} seam fullest`, `${end} seam foot`, (t) => lower.at(mixed(round, low, t), 1 - t))
}
