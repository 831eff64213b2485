import type { BodyForm } from './body-form.ts'
import type { LineNet } from './line-net.ts'
import { ends, mixed, type Point3, toward } from './space.ts'

/** Upright lines of the side windows between the first post and the last corner, front to back. */
export type WindowLine = 'post front' | 'post rear' | 'rear door frame' | 'rear post rear' | 'side glass rear'

/** Windscreen, posts, gutter, roof and rear screen, left half. Returns the window lines this body has. */
export function glasshouseLines(net: LineNet, form: BodyForm): WindowLine[] {
  const { upper, description } = form
  const { peakMm, gutterFrontMm, gutterRearMm } = upper
  net.line('gutter', { at: upper.gutter, from: gutterFrontMm, to: gutterRearMm, breaks: upper.gutterBreaks })
  net.mark('gutter', 'gutter front', gutterFrontMm)
  net.mark('gutter', 'gutter peak', peakMm)
  net.mark('gutter', 'gutter rear', gutterRearMm)
  const frameFrontMm = gutterFrontMm + form.lower.halfWidthMm * 0.035
  const frameRearMm = {
    deck: gutterRearMm - form.lower.halfWidthMm * 0.045,
    upright: Math.min(gutterRearMm, form.lower.flankToMm) - form.lower.halfWidthMm * 0.02,
    bed: gutterRearMm - form.lower.halfWidthMm * 0.02,
  }[description.tail]
  net.line('frame top', { at: upper.frameTop, from: frameFrontMm, to: frameRearMm, breaks: upper.gutterBreaks })
  net.mark('frame top', 'frame front', frameFrontMm)
  net.mark('frame top', 'frame peak', peakMm)
  net.mark('frame top', 'frame rear', frameRearMm)
  firstPost(net, form)
  const lines = windowLines(net, form, frameFrontMm, frameRearMm)
  straight(net, 'rail rear', 'frame rear', 'gutter rear')
  straight(net, 'rail section', 'frame peak', 'gutter peak')
  roofLines(net, form)
  rearEdge(net, form)
  return lines
}

function firstPost(net: LineNet, form: BodyForm): void {
  const { lower, upper } = form
  const doorTop = net.node('door front top')
  const footMm = doorTop[0] + lower.halfWidthMm * 0.095
  net.mark('crest', 'frame foot', lower.roundAt('crest', footMm))
  const [foot, top] = [net.node('frame foot'), net.node('frame front')]
  net.link(
    'frame front edge',
    'frame foot',
    'frame front',
    ends(foot, top, (t) => onGlass(form, foot, top, t, 0.045)),
  )
  straight(net, 'rail front', 'frame front', 'gutter front')
  const [corner, gutter] = [net.node('screen corner'), net.node('gutter front')]
  net.link(
    'screen edge',
    'screen corner',
    'gutter front',
    ends(corner, gutter, bowed(corner, gutter, [-0.035, 0.02, 0.03])),
  )
  const { header } = upper
  net.link(
    'screen centre',
    'screen foot centre',
    'header',
    (t) => bowedCentre(net.node('screen foot centre'), header, t, 0.075),
    true,
  )
}

/** A line of the side of the glasshouse from its foot to its top; `bow` swells it forward, a share of its height. */
function onGlass({ upper }: BodyForm, foot: Point3, top: Point3, t: number, bow: number): Point3 {
  const swell = bow * (top[2] - foot[2]) * 4 * t * (1 - t)
  return upper.onSideGlass(mixed(foot[0], top[0], t) - swell, mixed(foot[2], top[2], t))
}

/** Heads of two window lines keep this apart, mm. */
const HEAD_MM = 60

function windowLines(net: LineNet, form: BodyForm, frontMm: number, rearMm: number): WindowLine[] {
  const { description, station, lower } = form
  const { stations } = description
  const wanted: readonly [WindowLine, number | null][] = [
    ['post front', stations.postFront],
    ['post rear', description.tail === 'bed' ? null : stations.postRear],
    ['rear door frame', stations.rearDoorFrameRear],
    ['rear post rear', stations.rearPostRear],
    ['side glass rear', stations.sideGlassRear],
  ]
  const present = wanted.flatMap(([name, share]) => (share === null ? [] : [{ name, share }]))
  const { tail } = description
  present.forEach(({ name, share }, index) => {
    const last = index === present.length - 1 && tail !== 'bed'
    const footMm = Math.min(station(share), lower.flankToMm - lower.halfWidthMm * 0.04)
    const leaning = Math.max(frontMm + HEAD_MM * (index + 1), footMm - lower.halfWidthMm * 0.02)
    const upright = last ? rearMm : Math.min(rearMm - HEAD_MM * (present.length - index), leaning)
    net.mark('crest', `${name} foot`, lower.roundAt('crest', footMm))
    const head = last ? 'frame rear' : `${name} head`
    if (!last) net.mark('frame top', head, upright)
    const [foot, top] = [net.node(`${name} foot`), net.node(head)]
    net.link(
      name,
      `${name} foot`,
      head,
      ends(foot, top, (t) => onGlass(form, foot, top, t, last ? (tail === 'deck' ? -0.05 : -0.012) : 0)),
    )
  })
  return present.map(({ name }) => name)
}

function roofLines(net: LineNet, form: BodyForm): void {
  const { upper } = form
  const { header, roofRear, peakMm } = upper
  net.line('roof centre', { at: (x) => upper.onRoof(x, 0), from: header[0], to: roofRear[0], centre: true })
  net.mark('roof centre', 'header', header[0])
  const strip = header[0] + form.lower.halfWidthMm * 0.075
  net.mark('roof centre', 'header rear', strip)
  net.mark('roof centre', 'roof peak', peakMm)
  net.mark('roof centre', 'roof rear', roofRear[0])
  const sweep = (name: string, corner: string, centre: string, lineCorner: Point3, centreMm: number) =>
    net.link(
      name,
      corner,
      centre,
      ends(lineCorner, upper.onRoof(centreMm, 0), (t) => {
        const y = lineCorner[1] * (1 - t)
        return upper.onRoof(mixed(centreMm, lineCorner[0], (1 - t) ** 2), y)
      }),
    )
  sweep('header edge', 'gutter front', 'header', net.node('gutter front'), header[0])
  const stripCornerMm = net.node('gutter front')[0] + form.lower.halfWidthMm * 0.06
  net.mark('gutter', 'header rear corner', stripCornerMm)
  sweep('header rear edge', 'header rear corner', 'header rear', net.node('header rear corner'), strip)
  sweep('roof rear edge', 'gutter rear', 'roof rear', net.node('gutter rear'), roofRear[0])
  net.link('roof section', 'gutter peak', 'roof peak', (t) =>
    upper.onRoof(peakMm, net.node('gutter peak')[1] * (1 - t)),
  )
}

/** Edge of the rear screen, tail door or back of the cab, and its profile at the centre line. */
function rearEdge(net: LineNet, form: BodyForm): void {
  const { description, upper } = form
  const corner = upper.rearCorner
  const top = net.node('gutter rear')
  const { tail } = description
  const foot = { deck: 'rear corner', upright: 'tail lid', bed: 'cab rear top' }[tail]
  if (tail === 'bed') {
    net.link('cab edge', 'gutter rear', foot, ends(top, net.node(foot), bowed(top, net.node(foot), [0.012, 0.035, 0])))
    net.link(
      'cab centre',
      'roof rear',
      'cab foot centre',
      (t) => toward(upper.roofRear, [corner[0], 0, corner[2]], t),
      true,
    )
    straight(net, 'cab foot', 'cab rear top', 'cab foot centre')
    return
  }
  const end = tail === 'deck' ? corner : net.node(foot)
  const swell: Point3 = tail === 'deck' ? [0.03, 0.05, 0.05] : [0.004, 0.02, 0.01]
  net.link('rear edge', 'gutter rear', foot, ends(top, end, bowed(top, end, swell)))
  const centreFoot = tail === 'deck' ? 'rear screen foot centre' : 'tail crest'
  net.link(
    'rear centre',
    'roof rear',
    centreFoot,
    (t) => bowedCentre(upper.roofRear, net.node(centreFoot), t, tail === 'deck' ? 0.04 : 0.03),
    true,
  )
  if (tail === 'upright') {
    const share = 0.11
    net.mark('rear edge', 'rear rail corner', share)
    net.mark('rear centre', 'rear rail centre', share)
    const [side, middle] = [net.node('rear rail corner'), net.node('rear rail centre')]
    net.link('rear rail', 'rear rail corner', 'rear rail centre', (t) => {
      const inward = (1 - t) ** 2
      return [mixed(middle[0], side[0], inward), side[1] * (1 - t), mixed(middle[2], side[2], inward)]
    })
  }
}

/** Straight chord swelled by shares of its length in each direction. */
const bowed =
  (from: Point3, to: Point3, by: Point3) =>
  (t: number): Point3 => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2])
    const swell = 4 * t * (1 - t) * length
    const [x, y, z] = toward(from, to, t)
    return [x + by[0] * swell, y + by[1] * swell, z + by[2] * swell]
  }

/** Profile of a screen, front to back: a chord swelled outwards, at right angles to itself in the plane of symmetry. */
function bowedCentre(from: Point3, to: Point3, t: number, share: number): Point3 {
  const swell = share * 4 * t * (1 - t)
  const [x, , z] = toward(from, to, t)
  return [x - (to[2] - from[2]) * swell, 0, z + (to[0] - from[0]) * swell]
}

function straight(net: LineNet, name: string, from: string, to: string): void {
  const [start, end] = [net.node(from), net.node(to)]
  net.link(name, from, to, (t) => toward(start, end, t))
}
