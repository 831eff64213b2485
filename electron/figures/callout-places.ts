import type { CalloutPlace } from './callout-choice.ts'
import { leaderMeetsBox, RING_PX } from './callout-conflicts.ts'
import type { CalloutGround, SheetBox } from './callout-ground.ts'
import type { CalledPanel, CalloutWish } from './callout-wish.ts'
import { textWidthPx } from './text-room.ts'

interface SheetPoint {
  readonly x: number
  readonly y: number
}

/** What stands on a sheet beside its panels, sheet mm. */
export interface SheetSurroundings {
  readonly ground: CalloutGround
  readonly pixelsPerMm: number
  /** Names of views: no ring, text or leader touches them. */
  readonly captions: readonly SheetBox[]
  /** Rulers and the list of marks: no ring or text stands there, and no leader runs over them unless the sheet is full. */
  readonly rulers: readonly SheetBox[]
  /** Where no ring and no text may stand: extents, exhibits and spots. */
  readonly taken: readonly SheetBox[]
  /** The sheet, with the paper round it that callouts may use. */
  readonly paper: SheetBox
}

const CALLOUT_PX = 11.5
/** Text begins this far from the middle of its ring; its two lines reach this far above and below it. */
const TEXT_FROM_PX = RING_PX + 4
const TEXT_ABOVE_PX = 11.5
const TEXT_BELOW_PX = 15.5
/** Paper kept free round a ring. */
const RING_AIR_PX = 2
/** Enough places to choose from: nothing dearer is looked for then; and so few that dearer ones are looked for too. */
const ENOUGH_PLACES = 240
const FEW_PLACES = 16
/** No leader lies along a line for longer than this. */
const LONGEST_ON_LINE_PX = 9
/** Leaders by their lean from upright, degrees; both up and down, both left and right. */
const leans = [0, 12, 24, 36, 50, 65, 90] as const
const PLACES_ON_A_LEADER = 8
const MOST_SITES = 7

/** What a leader may do, from what is wanted to what is borne where the sheet is full. */
interface Tier {
  readonly longestPx: number
  /** Whether the ring may stand on a bare place of the car beside its own panel. */
  readonly onCar: boolean
  /** Whether the leader may run over tyres, bumpers and lamps, or along a line. */
  readonly overSolid: boolean
  readonly cost: number
}
const tiers: readonly Tier[] = [
  { longestPx: 210, onCar: false, overSolid: false, cost: 0 },
  { longestPx: 160, onCar: true, overSolid: false, cost: 200 },
  { longestPx: 420, onCar: true, overSolid: true, cost: 400 },
]

/** Costs in pixels of leader: what a reader would rather have than a leader longer by as much. */
const cost = {
  fold: 45,
  hatchedInside: 30,
  besideFinding: 500,
  outside: 16,
  textLeft: 3,
  degree: 0.35,
  line: 1.2,
  site: 1.8,
} as const

/** The box of the two lines of text beside a ring, px. */
export function boxOfText(ring: SheetPoint, widthPx: number, side: 'left' | 'right'): SheetBox {
  const [near, far] = [TEXT_FROM_PX - 2, TEXT_FROM_PX + widthPx + 2]
  return {
    left: ring.x + (side === 'right' ? near : -far),
    right: ring.x + (side === 'right' ? far : -near),
    top: ring.y - TEXT_ABOVE_PX,
    foot: ring.y + TEXT_BELOW_PX,
  }
}

const boxOfRing = ({ x, y }: SheetPoint): SheetBox => {
  const half = RING_PX + RING_AIR_PX
  return { left: x - half, right: x + half, top: y - half, foot: y + half }
}

/** Width of the longer line of a callout, px. */
export const calloutTextPx = ({ name, word }: CalloutWish): number =>
  Math.max(textWidthPx(name, CALLOUT_PX), textWidthPx(word, CALLOUT_PX))

/** Places a callout may take, cheapest first: in its own bare panel, else on bare paper at the end of a leader. */
export function placesOf(called: CalledPanel, around: SheetSurroundings, named: boolean): CalloutPlace[] {
  const finder = new PlaceFinder(called, around, named)
  return [...finder.inside(), ...finder.outside()].sort((a, b) => a.cost - b.cost)
}

/** Directions of a lean: up and down, and to both sides unless it is upright. */
function waysOf(lean: number): readonly SheetPoint[] {
  const turn = (lean * Math.PI) / 180
  const ways = [-1, 1].flatMap((across) =>
    (lean === 90 ? [1] : [-1, 1]).map((down) => ({ x: across * Math.sin(turn), y: down * Math.cos(turn) })),
  )
  return lean === 0 ? ways.slice(0, 2) : ways
}

class PlaceFinder {
  private readonly called: CalledPanel
  private readonly around: SheetSurroundings
  private readonly named: boolean
  private readonly scale: number
  private readonly textPx: number
  private readonly label: SheetPoint

  constructor(called: CalledPanel, around: SheetSurroundings, named: boolean) {
    this.called = called
    this.around = around
    this.named = named
    this.scale = around.pixelsPerMm
    this.textPx = calloutTextPx(called.wish)
    this.label = this.inPx(called.label)
  }

  /** Rings in the panel itself, where it is bare: no leader is needed. */
  inside(): CalloutPlace[] {
    const { panel, box, wish } = this.called
    const step = Math.max(5, Math.sqrt(((box.right - box.left) * (box.foot - box.top)) / 500) * this.scale)
    const dear = wish.at !== null ? cost.besideFinding : wish.hatched ? cost.hatchedInside : 0
    const places: CalloutPlace[] = []
    for (let x = box.left * this.scale; x <= box.right * this.scale; x += step) {
      for (let y = box.top * this.scale; y <= box.foot * this.scale; y += step) {
        if (!this.isFree(boxOfRing({ x, y }), (own) => this.around.ground.isBareIn(panel, own))) continue
        const off = Math.hypot(x - this.label.x, y - this.label.y) * 0.08
        this.withTexts({ x, y }, null, dear + off, (own) => this.around.ground.isBareIn(panel, own), places)
      }
    }
    return places
  }

  /** Rings at the end of a leader, on bare paper; where that gives too little choice, on the car and over solid things. */
  outside(): CalloutPlace[] {
    const sites = this.sites()
    const places: CalloutPlace[] = []
    for (const tier of tiers) {
      for (const lean of leans) {
        for (const [order, site] of sites.entries()) {
          for (const way of waysOf(lean)) this.along(site, way, lean * cost.degree + order * cost.site, tier, places)
        }
        if (places.length > ENOUGH_PLACES) return places
      }
      if (places.length > FEW_PLACES) return places
    }
    return places
  }

  private along(site: SheetPoint, way: SheetPoint, dearer: number, tier: Tier, places: CalloutPlace[]): void {
    const { ground } = this.around
    const isBare = tier.onCar ? (own: SheetBox) => ground.isBare(own) : (own: SheetBox) => ground.isPaper(own)
    const { captions, rulers } = this.around
    const barring = tier.overSolid ? captions : [...captions, ...rulers]
    const longestOnLine = LONGEST_ON_LINE_PX + ground.cellMm * this.scale
    let found = 0
    for (let length = RING_PX + 5; length < tier.longestPx && found < PLACES_ON_A_LEADER; length += 3) {
      const ring = { x: site.x + way.x * length, y: site.y + way.y * length }
      if (!this.isFree(boxOfRing(ring), isBare)) continue
      const passed = ground.passes(this.called.viewPlace, this.inMm(site), this.inMm(ring))
      if (barring.some((box) => leaderMeetsBox(this.inMm(site), this.inMm(ring), box))) return
      if (passed.overOther || (passed.overSolid && !tier.overSolid)) return
      if (!tier.overSolid && passed.longestMm * this.scale > longestOnLine) continue
      const price = cost.outside + length + dearer + passed.overLinesMm * this.scale * cost.line + tier.cost
      this.withTexts(ring, site, price, (own) => ground.isPaper(own), places)
      found += 1
      length += 9
    }
  }

  private withTexts(
    ring: SheetPoint,
    end: SheetPoint | null,
    price: number,
    isBare: (mm: SheetBox) => boolean,
    places: CalloutPlace[],
  ): void {
    if (this.named) {
      for (const side of ['right', 'left'] as const) {
        const text = boxOfText(ring, this.textPx, side)
        if (this.isFree(text, isBare))
          places.push({ ring, text, end, cost: price + (side === 'left' ? cost.textLeft : 0) })
      }
    }
    places.push({ ring, text: null, end, cost: price + (this.named ? cost.fold : 0) })
  }

  /** Whether a box stands on the sheet, on ground that suits, and over nothing that is taken. */
  private isFree(px: SheetBox, isBare: (mm: SheetBox) => boolean): boolean {
    const mm = this.boxInMm(px)
    const { paper, taken, captions, rulers } = this.around
    if (mm.left < paper.left || mm.right > paper.right || mm.top < paper.top || mm.foot > paper.foot) return false
    if (!isBare(mm)) return false
    const meets = (box: SheetBox) =>
      mm.left < box.right && box.left < mm.right && mm.top < box.foot && box.top < mm.foot
    return ![taken, captions, rulers].some((boxes) => boxes.some(meets))
  }

  /** Points inside the panel a leader may end at: what was found, the label point, then others far from those. */
  private sites(): SheetPoint[] {
    const { wish, view, box, panel } = this.called
    const { ground } = this.around
    const found =
      wish.at?.view === view.id
        ? [{ x: view.at.x + wish.at.point.u - view.box.u, y: view.at.y + wish.at.point.v - view.box.v }]
        : []
    const wished = [...found, this.called.label].filter(({ x, y }) => ground.isIn(panel, x, y))
    if (found.length > 0 && wished.length > 1) return [wished[0] ?? this.called.label].map((at) => this.inPx(at))
    const air = 3.5 / this.scale
    const free: SheetPoint[] = []
    const [acrossMm, downMm] = [(box.right - box.left) / 14, (box.foot - box.top) / 14]
    for (let column = 1; column < 14; column++) {
      for (let row = 1; row < 14; row++) {
        const [x, y] = [box.left + column * acrossMm, box.top + row * downMm]
        if (ground.isBareIn(panel, { left: x - air, right: x + air, top: y - air, foot: y + air })) free.push({ x, y })
      }
    }
    const sites = wished.length > 0 ? wished : [this.called.label]
    while (sites.length < MOST_SITES && free.length > 0) {
      const away = (point: SheetPoint) =>
        Math.min(...sites.map((site) => Math.hypot(site.x - point.x, site.y - point.y)))
      const next = free.reduce((far, point) => (away(point) > away(far) ? point : far))
      if (away(next) * this.scale < 8) break
      sites.push(next)
    }
    return sites.map((site) => this.inPx(site))
  }

  private inPx = ({ x, y }: SheetPoint): SheetPoint => ({ x: x * this.scale, y: y * this.scale })
  private inMm = ({ x, y }: SheetPoint): SheetPoint => ({ x: x / this.scale, y: y / this.scale })
  private boxInMm = ({ left, right, top, foot }: SheetBox): SheetBox => ({
    left: left / this.scale,
    right: right / this.scale,
    top: top / this.scale,
    foot: foot / this.scale,
  })
}
