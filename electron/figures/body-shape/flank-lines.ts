import type { BodyForm } from './body-form.ts'
import { fairCurve } from './fair-curve.ts'
import type { LineNet } from './line-net.ts'
import { ends, mixed, type Point3, solved } from './space.ts'

/** Upright shut lines and seams of the flank, front to back, by what stands before and behind them. */
export type FlankLine = 'door front' | 'door rear' | 'rear door rear' | 'cab rear'

/** Wheel arches, sill and the upright lines of the flank, left half. Every line has nodes at `top`, `fullest`, `sill`. */
export function flankLines(net: LineNet, form: BodyForm): FlankLine[] {
  const { lower, sillTopMm, fullestMm } = form
  arch(net, form, 'front arch', form.frontAxleMm)
  arch(net, form, 'rear arch', form.rearAxleMm)
  const sill = (x: number): Point3 => lower.onSide(x, sillTopMm)
  net.line('sill top', { at: sill, from: form.frontAxleMm, to: form.rearAxleMm })
  net.mark('sill top', 'front arch sill', net.node('front arch sill')[0])
  net.mark('sill top', 'rear arch sill', net.node('rear arch sill')[0])
  const lines = uprights(form)
  for (const [name, at] of lines) {
    net.mark('crest', `${name} top`, lower.roundAt('crest', at(form.dimensions.beltHeightMm)))
    net.mark('fullest', `${name} fullest`, lower.roundAt('fullest', at(fullestMm)))
    net.mark('sill top', `${name} sill`, at(sillTopMm))
    const [top, middle, low] = ['top', 'fullest', 'sill'].map((part) => net.node(`${name} ${part}`))
    if (!top || !middle || !low) continue
    const stretch = (from: Point3, to: Point3) => (t: number) => {
      const z = mixed(from[2], to[2], t)
      return lower.onSide(at(z), z)
    }
    net.link(`${name} upper`, `${name} top`, `${name} fullest`, ends(top, middle, stretch(top, middle)))
    net.link(`${name} lower`, `${name} fullest`, `${name} sill`, ends(middle, low, stretch(middle, low)))
    if (name === 'cab rear') {
      net.mark('foot', 'cab rear foot', lower.roundAt('foot', at(sillTopMm)))
      const foot = net.node('cab rear foot')
      net.link(
        'cab rear sill',
        'cab rear sill',
        'cab rear foot',
        ends(low, foot, (t) => lower.onSide(low[0], mixed(low[2], foot[2], t))),
      )
    }
  }
  return lines.map(([name]) => name)
}

/** Stations of the upright lines as functions of the height. */
function uprights(form: BodyForm): [FlankLine, (z: number) => number][] {
  const { description, dimensions, station, sillTopMm, upper, rearAxleMm } = form
  const { stations } = description
  const belt = dimensions.beltHeightMm
  const height = (share: number) => mixed(sillTopMm, belt, share)
  const doorTop = upper.screenCorner[0] - form.lower.halfWidthMm * 0.015
  const doorFoot = station(stations.doorFront)
  const hinge = fairCurve([
    [height(0), doorFoot],
    [height(0.22), mixed(doorFoot, doorTop, -0.12)],
    [height(0.55), mixed(doorFoot, doorTop, 0.02)],
    [height(1), doorTop],
  ])
  const doorRear = station(stations.doorRear)
  const lines: [FlankLine, (z: number) => number][] = [['door front', hinge]]
  const lean = dimensions.wheelbaseMm * 0.03
  const rear = stations.rearDoorFrameRear
  const latch = fairCurve(
    rear === null
      ? [
          [height(0), doorRear - lean],
          [height(0.3), doorRear - lean * 0.35],
          [height(0.6), doorRear - lean * 0.05],
          [height(1), doorRear],
        ]
      : [
          [height(0), doorRear],
          [height(1), doorRear + lean * 0.2],
        ],
  )
  lines.push(['door rear', latch])
  if (rear !== null) {
    const clear = dimensions.archRadiusMm + dimensions.wheelbaseMm * 0.016
    const top = Math.max(station(rear) - lean * 0.4, rearAxleMm - clear * 0.72)
    const low = rearAxleMm - clear
    const round = (share: number) => rearAxleMm - clear * Math.cos(share)
    lines.push([
      'rear door rear',
      fairCurve([
        [height(0), low],
        [dimensions.tyreRadiusMm + clear * 0.2, Math.min(round(0.2), top)],
        [dimensions.tyreRadiusMm + clear * 0.6, Math.min(round(0.65), top)],
        [belt, top],
      ]),
    ])
  }
  if (stations.cabRear !== null) lines.push(['cab rear', () => station(stations.cabRear ?? 1)])
  return lines
}

/**
 * Lip of a wheel arch: half a circle about the wheel, cut by the foot of the body, the sill and the fullest line.
 * Parameter: angle from the front horizon over the top to the rear one, in half turns.
 */
function arch(net: LineNet, form: BodyForm, name: 'front arch' | 'rear arch', axleMm: number): void {
  const { lower, dimensions, fullestMm, sillTopMm } = form
  const { archRadiusMm: radius, tyreRadiusMm: middle } = dimensions
  const place = (t: number): readonly [number, number] => {
    const angle = Math.PI * (1 - t)
    return [axleMm + radius * Math.cos(angle), middle + radius * Math.sin(angle)]
  }
  const footHeight = (x: number) => lower.foot(lower.roundAt('foot', x))[2]
  const at = (t: number): Point3 => {
    const [x, z] = place(t)
    return lower.onSide(x, z)
  }
  const crossing = (height: (x: number) => number, ahead: boolean): number =>
    solved(
      (t) => {
        const [x, z] = place(t)
        return z - height(x)
      },
      0,
      ahead ? -0.35 : 1.35,
      0.5,
    )
  net.line(name, { at, from: -0.35, to: 1.35 })
  const sillSide = name === 'rear arch'
  for (const [part, height] of [
    ['foot', footHeight],
    ['fullest', () => fullestMm],
  ] as const) {
    for (const ahead of [true, false]) {
      const t = crossing(height, ahead)
      const node = `${name} ${ahead ? 'ahead' : 'behind'} ${part}`
      net.mark(part, node, lower.roundAt(part, place(t)[0]))
      net.mark(name, node, t)
    }
  }
  net.mark(
    name,
    `${name} sill`,
    crossing(() => sillTopMm, sillSide),
  )
  net.mark(name, `${name} top`, 0.5)
  net.mark('crest', `${name} crest`, lower.roundAt('crest', axleMm))
  const [top, crest] = [net.node(`${name} top`), net.node(`${name} crest`)]
  net.link(
    `${name} section`,
    `${name} top`,
    `${name} crest`,
    ends(top, crest, (t) => lower.onSide(axleMm, mixed(top[2], crest[2], t))),
  )
}
