import type { BodyForm } from './body-form.ts'
import { fairCurve } from './fair-curve.ts'
import type { LineNet } from './line-net.ts'
import { mixed, type Point3 } from './space.ts'

/**
 * Lines of nose and tail below the crest, left half. Both ends are cut alike: a lamp housing that hangs from the crest,
 * a seam from its foot down through the fullest line to the foot of the body, and at the tail the edge of the lid or
 * door with its foot. Nodes of the nose begin with `nose`, those of the tail with `tail`.
 */
export function noseLines(net: LineNet, form: BodyForm): void {
  const { lower, description } = form
  const { plan, heights } = description
  const half = lower.halfWidthMm
  const belt = form.dimensions.beltHeightMm
  const bowl = heights.lampBowl * belt
  const lampHalf = plan.lamp * half
  const middle = heights.lampMiddle * belt
  const on = (y: number, z: number): Point3 => lower.onEnd('nose', y, z)
  const inner = lower.roundAcross('crest', 'nose', lampHalf - bowl * 0.98)
  const outer = lower.roundAcross('crest', 'nose', Math.min(lower.crestHalfMm * 0.985, lampHalf + bowl * 0.96))
  centreLine(net, form, 'nose')
  net.mark('crest', 'nose lamp inner', inner)
  net.mark('crest', 'nose lamp outer', outer)
  const foot: Point3 = on(lampHalf, middle - bowl)
  const top = [net.node('nose lamp inner'), net.node('nose lamp outer')] as const
  bowlEdge(net, 'nose lamp inside', 'nose lamp inner', top[0], lampHalf, middle, bowl, -1, on)
  bowlEdge(net, 'nose lamp outside', 'nose lamp outer', top[1], lampHalf, middle, bowl, 1, on)
  seamDown(net, form, 'nose', foot, lampHalf + bowl * 0.12)
}

export function tailLines(net: LineNet, form: BodyForm): void {
  const { lower, description } = form
  const { plan, heights, tail } = description
  const half = lower.halfWidthMm
  const belt = form.dimensions.beltHeightMm
  const on = (y: number, z: number): Point3 => lower.onEnd('tail', y, z)
  centreLine(net, form, 'tail')
  const lamp = plan.rearLamp * half
  const footHeight = heights.rearLampFoot * belt
  const innerTop = lower.roundAcross('crest', 'tail', Math.min(lower.crestHalfMm * 0.93, lamp - half * 0.07))
  const outerTop = mixed(innerTop, 2, 0.82)
  net.mark('crest', 'tail lamp outer', outerTop)
  net.mark('crest', 'tail lamp inner', innerTop)
  const [outer, inner] = [net.node('tail lamp outer'), net.node('tail lamp inner')]
  const bottom = on(lamp, footHeight)
  const edge = (name: string, from: string, top: Point3, bulge: number) =>
    net.link(name, from, 'tail lamp foot', (t) => {
      const y = mixed(top[1], bottom[1], t ** 2) + bulge * 4 * t * (1 - t)
      return t === 0 ? top : t === 1 ? bottom : on(y, mixed(top[2], footHeight, Math.sin((t * Math.PI) / 2)))
    })
  edge('tail lamp inside', 'tail lamp inner', inner, -half * 0.012)
  edge('tail lamp outside', 'tail lamp outer', outer, half * 0.012)
  seamDown(net, form, 'tail', bottom, lamp)
  const lidHalf = Math.min(plan.lid * half, inner[1] - half * 0.03)
  const lidTop = lower.roundAcross('crest', 'tail', lidHalf)
  if (tail !== 'bed') {
    const lidFoot = heights.lidFoot * belt
    net.mark('crest', 'tail lid', lidTop)
    const corner = net.node('tail lid')
    const round = fairCurve([
      [0, 1],
      [0.75, 0.985],
      [1, 0.9],
    ])
    net.link('tail lid side', 'tail lid', 'tail lid foot', (t) =>
      on(corner[1] * round(t), mixed(corner[2], lidFoot, t)),
    )
    const low = net.node('tail lid foot')
    net.mark('tail centre', 'tail lid centre', centreAt(form, 'tail', lidFoot - belt * 0.012))
    net.link('tail lid edge', 'tail lid foot', 'tail lid centre', (t) =>
      on(low[1] * (1 - t), mixed(lidFoot, lidFoot - belt * 0.012, 1 - (1 - t) ** 2)),
    )
  }
}

/** Profile of an end at the centre line, foot to crest; parameter is the level of the section. */
function centreLine(net: LineNet, { lower }: BodyForm, end: 'nose' | 'tail'): void {
  const round = end === 'nose' ? 0 : 3
  net.line(`${end} centre`, {
    at: (level) => onCentre(lower.at(round, level)),
    from: 0,
    to: 2,
    breaks: [1],
    centre: true,
  })
  for (const [line, level] of [
    ['foot', 0],
    ['fullest', 1],
    ['crest', 2],
  ] as const) {
    net.mark(line, `${end} ${line}`, round)
    net.mark(`${end} centre`, `${end} ${line}`, level)
  }
}

const onCentre = ([x, , z]: Point3): Point3 => [x, 0, z]

function centreAt({ lower }: BodyForm, end: 'nose' | 'tail', z: number): number {
  const round = end === 'nose' ? 0 : 3
  let [low, high] = [0, 2]
  for (let step = 0; step < 44; step++) {
    const level = (low + high) / 2
    if (lower.at(round, level)[2] < z) low = level
    else high = level
  }
  return (low + high) / 2
}

/** Half the edge of a lamp bowl: from the crest round to its foot. */
function bowlEdge(
  net: LineNet,
  name: string,
  topName: string,
  top: Point3,
  half: number,
  middle: number,
  radius: number,
  side: -1 | 1,
  on: (y: number, z: number) => Point3,
): void {
  const start = Math.atan2(top[2] - middle, side * (top[1] - half))
  const reach = Math.hypot(top[2] - middle, top[1] - half)
  net.link(name, topName, 'nose lamp foot', (t) => {
    if (t === 0) return top
    const angle = mixed(start, -Math.PI / 2, t)
    const size = mixed(reach, radius, Math.min(1, t * 1.6) ** 0.8)
    return on(half + side * Math.cos(angle) * size, middle + Math.sin(angle) * size)
  })
}

/** Seam between the centre panels and the wing: lamp foot, fullest line, foot of the body. */
function seamDown(net: LineNet, form: BodyForm, end: 'nose' | 'tail', from: Point3, half: number): void {
  const { lower } = form
  const across = Math.min(half, lower.halfWidthMm * 0.93)
  net.mark('fullest', `${end} seam fullest`, lower.roundAcross('fullest', end, across))
  net.mark('foot', `${end} seam foot`, lower.roundAcross('foot', end, across * 0.96))
  const [middle, low] = [net.node(`${end} seam fullest`), net.node(`${end} seam foot`)]
  const on = (y: number, z: number): Point3 => lower.onEnd(end, y, z)
  net.link(`${end} seam upper`, `${end} lamp foot`, `${end} seam fullest`, (t) =>
    t === 0 ? from : on(mixed(from[1], middle[1], t), mixed(from[2], middle[2], t)),
  )
  net.link(`${end} seam lower`, `${end} seam fullest`, `${end} seam foot`, (t) =>
    on(mixed(middle[1], low[1], t), mixed(middle[2], low[2], t)),
  )
}
