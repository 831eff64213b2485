import type { OwnLook } from '../../drawing/own-look.ts'
import { type PlanLook, wholeSheet } from '../../drawing/plan-scale.ts'
import type { KeyBinding } from '../../parts-of-page/key-registry.ts'

const NEAREST_ZOOM = 12
const NEARER = 1.4
/** Share of what is shown that an arrow moves it by. */
const PAN_SHARE = 0.2

/** Size of the sheet moved, mm. */
interface Size {
  readonly widthMm: number
  readonly heightMm: number
}

const zoomed = (look: PlanLook, factor: number): PlanLook => {
  const zoom = Math.min(NEAREST_ZOOM, Math.max(1, look.zoom * factor))
  return zoom === 1 ? wholeSheet : { ...look, zoom }
}

function panned(look: PlanLook, { widthMm, heightMm }: Size, across: number, down: number): PlanLook {
  if (look.zoom === 1) return look
  const { x, y } = look.middle ?? { x: widthMm / 2, y: heightMm / 2 }
  const moved = (mm: number, by: number, most: number) =>
    Math.min(most, Math.max(0, mm + (by * PAN_SHARE * most) / look.zoom))
  return { ...look, middle: { x: moved(x, across, widthMm), y: moved(y, down, heightMm) } }
}

/** Goes to the next or the earlier spot of the map, which then says its value. */
function stepToSpot(step: 1 | -1): void {
  const spots = [...document.querySelectorAll<SVGElement>('.coating-map [data-spot]')]
  const held = spots.findIndex((spot) => spot.matches(':focus'))
  const next = held === -1 ? (step === 1 ? 0 : spots.length - 1) : (held + step + spots.length) % spots.length
  spots[next]?.focus()
}

/** Keys of a map: nearer, farther, all of it, moved by arrows, and from spot to spot. */
export function mapKeys(look: OwnLook, size: Size): readonly KeyBinding[] {
  const zoom = (keys: string, does: string, factor: number, unlisted = false): KeyBinding => ({
    keys,
    does,
    run: () => look.change((now) => zoomed(now, factor)),
    unlisted,
  })
  const arrows = [
    ['ArrowLeft', -1, 0],
    ['ArrowRight', 1, 0],
    ['ArrowUp', 0, -1],
    ['ArrowDown', 0, 1],
  ] as const
  return [
    zoom('+', 'nearer', NEARER),
    zoom('=', 'nearer', NEARER, true),
    zoom('-', 'farther', 1 / NEARER),
    { keys: '0', does: 'all of the panel', run: () => look.change(() => wholeSheet) },
    ...arrows.map(([key, across, down], index) => ({
      keys: `Shift+${key}`,
      does: 'move the map, once it is larger than its room',
      run: () => look.change((now) => panned(now, size, across, down)),
      unlisted: index > 0,
    })),
    { keys: ']', does: 'next reading on the map, with its value', run: () => stepToSpot(1) },
    { keys: '[', does: 'reading before', run: () => stepToSpot(-1) },
  ]
}
