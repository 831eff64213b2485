import type { BodyStyle } from '../../../shared-types/words.ts'
import type { Point } from '../cubic-path.ts'
import type { BodyForm } from './body-form.ts'
import type { WindowLine } from './glasshouse-lines.ts'
import type { LineNet } from './line-net.ts'
import type { Glass, SetPanel } from './outside-work.ts'
import { boxOn, nodesOf, type Patch, patchLine, rearScreen, sideWindow, windscreen } from './patches.ts'
import { mixed } from './space.ts'

/** Windows of a body: screens across the middle, side windows on the left half. */
export function glassOf(
  net: LineNet,
  form: BodyForm,
  windows: readonly WindowLine[],
  conditions: ReadonlySet<string>,
): Glass[] {
  const { tail } = form.description
  const glass: Glass[] = [acrossMiddle('front-glass-surround', windscreen(form, net), 0.89, 0.04, 0.965)]
  const rear = rearScreen(form, net)
  if (tail === 'deck' && form.body === 'convertible')
    glass.push(acrossMiddle('rear-glass-surround', rear, 0.62, 0.3, 0.72))
  else if (tail === 'deck') glass.push(acrossMiddle('rear-glass-surround', rear, 0.93, 0.07, 0.945))
  else if (form.body === 'estate') glass.push(acrossMiddle('tail-door', rear, 0.88, 0.12, 0.82))
  else if (tail === 'bed') glass.push(acrossMiddle('rear-glass-surround', rear, 0.6, 0.46, 0.86))
  const ahead = ['frame front', ...windows.slice(0, -1)] as const
  windows.forEach((line, index) => {
    const from = ahead[index]
    const part = paneIn(line, form, conditions)
    if (from === undefined || part === null) return
    const last = index === windows.length - 1 && tail !== 'bed'
    const patch = sideWindow(form, net, nodesOf(from, false), nodesOf(line, last))
    const margin = form.dimensions.heightMm * 0.019
    glass.push({
      part,
      middle: false,
      edge: patchLine(patch, boxOn(patch, { side: margin, foot: margin, head: margin * 0.8 }), 0.07),
      half: [],
    })
  })
  if (form.body === 'van') glass.push(...loadDoorGlass(rear))
  return glass
}

/** The part whose window ends at a line, or null where metal or cloth fills the space. */
function paneIn(line: WindowLine, { body }: BodyForm, conditions: ReadonlySet<string>): string | null {
  if (line === 'post front') return 'front-door.L'
  if (line === 'rear door frame') return 'rear-door.L'
  const pane = line === 'side glass rear' && body !== 'van' && body !== 'convertible'
  return pane && conditions.has('fixed-rear-side-window') ? 'side-glass-surround.L' : null
}

function acrossMiddle(part: string, patch: Patch, reach: number, low: number, high: number): Glass {
  const box = (from: number): Point[] => [
    [from, low],
    [reach, low],
    [reach * 0.985, high],
    [from === 0 ? 0 : -reach * 0.985, high],
  ]
  return {
    part,
    middle: true,
    edge: patchLine(patch, box(-reach), 0.09),
    half: patchLine(patch, box(0), [0, 0.09, 0.09, 0]),
  }
}

function loadDoorGlass(rear: Patch): Glass[] {
  const box: Point[] = [
    [0.18, 0.42],
    [0.82, 0.42],
    [0.8, 0.8],
    [0.18, 0.8],
  ]
  return [{ part: 'rear-cargo-door.L', middle: false, edge: patchLine(rear, box, 0.06), half: [] }]
}

/** The panel round the rear wheel where it is not the rear wing. */
const wings: Readonly<Partial<Record<BodyStyle, string>>> = { pickup: 'bed-side', van: 'cargo-side' }

/** Panels that lie in others, as the conditions of the record ask for them. */
export function setPanels(net: LineNet, form: BodyForm, conditions: ReadonlySet<string>): SetPanel[] {
  const found: SetPanel[] = []
  const { body, dimensions, lower, upper } = form
  const wing = wings[body] ?? 'rear-side'
  const bolted = conditions.has('bolted-rear-side')
  const flank: Patch = (x, z) => lower.onSide(x, z)
  for (const side of ['L', 'R'] as const) {
    const onSide = side === 'L' ? (['left'] as const) : (['right'] as const)
    if (conditions.has(`filler-flap.${side}`)) {
      const { from, to, low, high } = fillerPlace(net, form)
      found.push({
        panelId: `fuel-filler-flap.${side}`,
        within: `${bolted ? 'rear-side-bolted' : wing}.${side}`,
        edge: patchLine(
          flank,
          [
            [from, high],
            [to, high],
            [to, low],
            [from, low],
          ],
          (high - low) * 0.28,
        ),
        views: onSide,
      })
    }
    if (body === 'van' && conditions.has(`side-loading-door.${side}`)) found.push(sideDoor(net, form, side))
    if (conditions.has('running-boards')) {
      const ends = [
        net.node('front arch behind foot')[0],
        net.node(form.description.tail === 'bed' ? 'cab rear foot' : 'rear arch ahead foot')[0],
      ] as const
      const inset = dimensions.wheelbaseMm * 0.01
      const [low, high] = [
        mixed(dimensions.sillHeightMm, form.sillTopMm, 0.08),
        mixed(dimensions.sillHeightMm, form.sillTopMm, 0.5),
      ]
      found.push({
        panelId: `running-board.${side}`,
        within: `lower-rail-outer.${side}`,
        edge: patchLine(
          flank,
          [
            [ends[0] + inset, high],
            [ends[1] - inset, high],
            [ends[1] - inset, low],
            [ends[0] + inset, low],
          ],
          8,
        ),
        views: onSide,
      })
    }
  }
  if (conditions.has('sunroof') && body !== 'convertible') {
    const half = net.node('gutter peak')[1] * 0.62
    const from = net.node('header rear')[0] + lower.halfWidthMm * 0.1
    const to = Math.min(from + lower.halfWidthMm * 0.9, upper.roofRear[0] - lower.halfWidthMm * 0.12)
    const roof: Patch = (x, y) => upper.onRoof(x, y)
    found.push({
      panelId: 'sunroof-panel',
      within: 'roof-skin',
      edge: patchLine(
        roof,
        [
          [from, -half],
          [to, -half],
          [to, half],
          [from, half],
        ],
        half * 0.14,
      ),
      views: ['roof'],
    })
  }
  if (body === 'pickup') {
    const patch = rearScreen(form, net)
    found.push({
      panelId: 'rear-glass-surround',
      within: 'cab-back',
      edge: patchLine(
        patch,
        [
          [-0.66, 0.4],
          [0.66, 0.4],
          [0.65, 0.91],
          [-0.65, 0.91],
        ],
        0.09,
      ),
      views: ['roof', 'rear'],
    })
  }
  return found
}

/** Behind the wheel, clear of arch, crest and lamp; over the wheel where the tail is short. */
function fillerPlace(net: LineNet, { dimensions, fullestMm, lower, rearAxleMm }: BodyForm) {
  const { wheelbaseMm, archRadiusMm, tyreRadiusMm, beltHeightMm } = dimensions
  const last = net.node('tail lamp outer')[0] - wheelbaseMm * 0.02
  const from = Math.min(rearAxleMm + archRadiusMm * 0.74, last - wheelbaseMm * 0.074)
  const to = from + wheelbaseMm * 0.074
  const beside = Math.max(0, from - rearAxleMm)
  const arch = beside < archRadiusMm ? tyreRadiusMm + Math.sqrt(archRadiusMm ** 2 - beside ** 2) : 0
  const crest = lower.crest(lower.roundAt('crest', to))[2]
  const low = Math.max(mixed(fullestMm, beltHeightMm, 0.52), arch + (crest - arch) * 0.2)
  return { from, to, low, high: mixed(low, crest, 0.76) }
}

/** Loading door in the side of a van, from behind the front door to the rear wheel, sill to gutter. */
function sideDoor(net: LineNet, form: BodyForm, side: 'L' | 'R'): SetPanel {
  const { upper, lower, dimensions, sillTopMm, rearAxleMm } = form
  const front = Math.max(net.node('post rear foot')[0], net.node('door rear top')[0]) + dimensions.wheelbaseMm * 0.022
  const rear = rearAxleMm - dimensions.archRadiusMm - dimensions.wheelbaseMm * 0.02
  const top = upper.frameTop(rear)[2] - dimensions.heightMm * 0.03
  const low = sillTopMm + dimensions.heightMm * 0.012
  const patch: Patch = (x, z) => (z > dimensions.beltHeightMm * 0.995 ? upper.onSideGlass(x, z) : lower.onSide(x, z))
  return {
    panelId: `side-cargo-door.${side}`,
    within: `cargo-side.${side}`,
    edge: patchLine(
      patch,
      [
        [front, top],
        [rear, top],
        [rear, low],
        [front, low],
      ],
      60,
    ),
    views: side === 'L' ? ['left'] : ['right'],
  }
}
