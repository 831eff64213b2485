import type { BodyForm } from './body-form.ts'
import type { LineNet } from './line-net.ts'
import { ends, mixed, type Point3 } from './space.ts'

/** Lines of bonnet and scuttle, left half: leading edge, sides, rear edge, foot of the windscreen. */
export function bonnetLines(net: LineNet, form: BodyForm): void {
  const { lower, upper, description, station } = form
  const half = lower.halfWidthMm
  const { onTop } = upper
  const frontHalf = description.plan.bonnetFront * half
  const rearHalf = lower.crestHalfMm - half * 0.1
  const nose = lower.crest(0)[0]
  const front = Math.max(station(-description.stations.bonnetFront), nose + half * 0.03)
  const frontAt = (y: number): number => front + half * 0.1 * (y / frontHalf) ** 3
  const corner = onTop(frontAt(frontHalf), frontHalf)
  const rear = onTop(upper.cowlAt(rearHalf), rearHalf)
  net.line('top centre front', { at: (x) => onTop(x, 0), from: nose, to: upper.screenFootAt(0), centre: true })
  net.mark('top centre front', 'nose crest', nose)
  net.mark('top centre front', 'bonnet front centre', frontAt(0))
  net.mark('top centre front', 'bonnet rear centre', upper.cowlAt(0))
  net.mark('top centre front', 'screen foot centre', upper.screenFootAt(0))
  net.link('bonnet front', 'bonnet front centre', 'bonnet front corner', (t) =>
    onTop(frontAt(t * frontHalf), t * frontHalf),
  )
  net.link('bonnet side', 'bonnet front corner', 'bonnet rear corner', (t) => {
    const y = mixed(frontHalf, rearHalf, 1 - (1 - t) ** 1.35)
    return onTop(mixed(corner[0], rear[0], t), y)
  })
  net.link('bonnet rear', 'bonnet rear corner', 'bonnet rear centre', (t) =>
    onTop(upper.cowlAt((1 - t) * rearHalf), (1 - t) * rearHalf),
  )
  const screen = upper.screenCorner
  net.link('screen foot', 'screen corner', 'screen foot centre', (t) => {
    const y = (1 - t) * screen[1]
    return onTop(upper.screenFootAt(y), y)
  })
  acrossTop(net, form, 'scuttle side', 'bonnet rear corner', 'screen corner')
  acrossTop(net, form, 'post foot', 'door front top', 'screen corner')
  acrossTop(net, form, 'nose seam top', 'bonnet front corner', 'nose lamp inner')
}

/** Lines of deck and lid, left half; only where the body has a boot. */
export function deckLines(net: LineNet, form: BodyForm): void {
  const { lower, upper, description, station } = form
  const { onTop } = upper
  const half = lower.halfWidthMm
  const lidHalf = net.node('tail lid')[1] * 0.97
  const front = station(description.stations.lidFront ?? 0)
  const tail = lower.crest(3)[0]
  const frontAt = (y: number): number => front - half * 0.05 * (y / lidHalf) ** 2
  net.line('top centre rear', { at: (x) => onTop(x, 0), from: upper.rearScreenFootAt(0), to: tail, centre: true })
  net.mark('top centre rear', 'rear screen foot centre', upper.rearScreenFootAt(0))
  net.mark('top centre rear', 'lid front centre', frontAt(0))
  net.mark('top centre rear', 'tail crest', tail)
  const corner = onTop(frontAt(lidHalf), lidHalf)
  const end = net.node('tail lid')
  net.link('lid front', 'lid front corner', 'lid front centre', (t) =>
    onTop(frontAt((1 - t) * lidHalf), (1 - t) * lidHalf),
  )
  net.link(
    'lid side',
    'lid front corner',
    'tail lid',
    ends(corner, end, (t) => {
      const bulge = half * 0.035 * 4 * t * (1 - t)
      return onTop(mixed(corner[0], end[0], t), mixed(corner[1], end[1], t) + bulge)
    }),
  )
  const screen = upper.rearCorner
  net.link('rear screen foot', 'rear corner', 'rear screen foot centre', (t) => {
    const y = (1 - t) * screen[1]
    return onTop(upper.rearScreenFootAt(y), y)
  })
  acrossTop(net, form, 'deck side', 'rear corner', 'lid front corner')
  acrossTop(net, form, 'rear post foot', 'rear post top of wing', 'rear corner')
}

/** A line on bonnet or deck between two nodes, straight in plan. */
export function acrossTop(net: LineNet, { upper }: BodyForm, name: string, from: string, to: string): void {
  const [start, end] = [net.node(from), net.node(to)]
  const at = (t: number): Point3 => upper.onTop(mixed(start[0], end[0], t), mixed(start[1], end[1], t))
  net.link(name, from, to, ends(start, end, at))
}
