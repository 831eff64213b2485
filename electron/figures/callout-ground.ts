import type { PlanSheet, PlanView } from '../../shared-types/figure.ts'
import { type Cubic, flattened, type Point } from './cubic-path.ts'
import { readPath } from './path-text.ts'

/** A rectangle on the sheet, mm. */
export interface SheetBox {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly foot: number
}

/** What a straight leader passes on its way. */
interface LeaderWay {
  readonly overLinesMm: number
  readonly longestMm: number
  readonly overSolid: boolean
  readonly overOther: boolean
}

/** What lies under one place of a sheet. */
const LINE = 1
const SOLID = 2
/** No cell is finer than this on screen, and no sheet has more cells. */
const CELL_PX = 2
const MOST_CELLS = 260_000
/** Paper round the sheet that callouts may use, mm. */
const MARGIN_MM = 300

/**
 * A sheet of the plan as a chequered ground: for every cell whether a line runs through it, whether something solid
 * that is no panel lies there (tyre, bumper, lamp), and which panel it belongs to. Boxes are asked in constant time by
 * sums over rectangles (Crow, Computer Graphics 18, 1984).
 */
export class CalloutGround {
  readonly cellMm: number
  private readonly columns: number
  private readonly rows: number
  private readonly flags: Uint8Array
  /** 0 paper, above 0 the number of a panel in `panelNumber`, below 0 minus the place of the view whose car lies there. */
  private readonly region: Int16Array
  private readonly lineSums: Int32Array
  private readonly carSums: Int32Array
  private readonly panelNumbers = new Map<string, number>()
  private readonly viewOfPanel: number[] = [0]

  constructor(sheet: PlanSheet, pixelsPerMm: number) {
    const [width, height] = [sheet.widthMm + 2 * MARGIN_MM, sheet.heightMm + 2 * MARGIN_MM]
    this.cellMm = Math.max(CELL_PX / pixelsPerMm, Math.sqrt((width * height) / MOST_CELLS))
    this.columns = Math.ceil(width / this.cellMm)
    this.rows = Math.ceil(height / this.cellMm)
    this.flags = new Uint8Array(this.columns * this.rows)
    this.region = new Int16Array(this.columns * this.rows)
    for (const [place, view] of sheet.views.entries()) this.lay(view, place + 1)
    this.lineSums = this.summed((at) => this.flags[at] !== 0)
    this.carSums = this.summed((at) => this.region[at] !== 0)
  }

  /** Number of an outline on this ground; 0 where the view does not show the panel. */
  panelNumber(viewId: string, panelId: string): number {
    return this.panelNumbers.get(`${viewId} ${panelId}`) ?? 0
  }

  /** Whether a box is bare paper: no line, no car, nothing solid. */
  isPaper(box: SheetBox): boolean {
    return this.sumIn(this.lineSums, box) === 0 && this.sumIn(this.carSums, box) === 0
  }

  /** Whether no line runs through a box and nothing solid lies there, on the car or beside it. */
  isBare(box: SheetBox): boolean {
    return this.sumIn(this.lineSums, box) === 0
  }

  /** Whether a box lies in one panel and no line runs through it. */
  isBareIn(panel: number, box: SheetBox): boolean {
    if (this.sumIn(this.lineSums, box) !== 0) return false
    const { left, right, top, foot } = this.cells(box)
    for (let row = top; row <= foot; row++) {
      for (let column = left; column <= right; column++) {
        if (this.region[row * this.columns + column] !== panel) return false
      }
    }
    return true
  }

  /** Whether a place belongs to a panel and nothing solid lies over it. */
  isIn(panel: number, x: number, y: number): boolean {
    const at = this.cellAt(x, y)
    return this.region[at] === panel && ((this.flags[at] ?? 0) & SOLID) === 0
  }

  /**
   * What a straight leader from inside a panel to a ring passes: how many millimetres of line it covers, the longest
   * stretch of it at once, and whether it goes over something solid or over another view.
   */
  passes(view: number, from: { x: number; y: number }, to: { x: number; y: number }): LeaderWay {
    const length = Math.hypot(to.x - from.x, to.y - from.y)
    const steps = Math.max(1, Math.ceil(length / (this.cellMm / 2)))
    let [overLinesMm, run, longestMm] = [0, 0, 0]
    let [overSolid, overOther] = [false, false]
    for (let step = 0; step <= steps && !overOther; step++) {
      const at = this.cellAt(from.x + ((to.x - from.x) * step) / steps, from.y + ((to.y - from.y) * step) / steps)
      const flags = this.flags[at] ?? 0
      overOther = this.isOfOther(view, this.region[at] ?? 0)
      overSolid ||= (flags & SOLID) !== 0
      run = flags & LINE ? run + length / steps : 0
      if (run > 0) overLinesMm += length / steps
      longestMm = Math.max(longestMm, run)
    }
    return { overLinesMm, longestMm, overSolid, overOther }
  }

  private isOfOther(view: number, region: number): boolean {
    return region > 0 ? this.viewOfPanel[region] !== view : region < 0 && -region !== view
  }

  private lay(view: PlanView, place: number): void {
    const [dx, dy] = [view.at.x - view.box.u + MARGIN_MM, view.at.y - view.box.v + MARGIN_MM]
    const onGround = (path: readonly Cubic[]): Point[] =>
      [...flattened(path, 10), ...path.slice(-1).map((piece) => piece[3])].map(([u, v]) => [u + dx, v + dy])
    const pathsOf = (text: string): Point[][] => readPath(text).map(onGround)
    for (const path of pathsOf(view.silhouette)) this.fill(path, (at) => this.mark(at, -place))
    for (const { panelId, outline } of view.panels) {
      const number = this.viewOfPanel.push(place) - 1
      this.panelNumbers.set(`${view.id} ${panelId}`, number)
      for (const path of pathsOf(outline)) {
        this.fill(path, (at) => this.mark(at, number))
        this.stroke(path)
      }
    }
    for (const path of pathsOf(view.silhouette)) this.stroke(path)
    for (const { path: text, occlude, weight } of view.ink) {
      if (weight === 'station' || weight === 'centre') continue
      for (const path of pathsOf(text)) {
        if (occlude) {
          this.fill(path, (at) => {
            this.mark(at, -place)
            this.flags[at] = (this.flags[at] ?? 0) | SOLID
          })
        }
        this.stroke(path)
      }
    }
  }

  private mark(at: number, region: number): void {
    this.region[at] = region
  }

  private stroke(path: readonly Point[]): void {
    for (const [index, [x, y]] of path.slice(1).entries()) {
      const [fromX, fromY] = path[index] ?? [x, y]
      const steps = Math.max(1, Math.ceil(Math.hypot(x - fromX, y - fromY) / (this.cellMm / 2)))
      for (let step = 0; step <= steps; step++) {
        const [px, py] = [fromX + ((x - fromX) * step) / steps, fromY + ((y - fromY) * step) / steps]
        const at = this.rowOf(py) * this.columns + this.columnOf(px)
        this.flags[at] = (this.flags[at] ?? 0) | LINE
      }
    }
  }

  /** Every cell whose middle lies inside a closed path (even-odd rule), row by row. */
  private fill(path: readonly Point[], put: (at: number) => void): void {
    const ys = path.map(([, y]) => y)
    const last = this.rowOf(Math.max(...ys))
    for (let row = this.rowOf(Math.min(...ys)); row <= last; row++) {
      const y = (row + 0.5) * this.cellMm
      const cuts: number[] = []
      path.forEach(([x1, y1], index) => {
        const [x2, y2] = path[(index + 1) % path.length] ?? [x1, y1]
        if (y1 > y !== y2 > y) cuts.push(x1 + ((y - y1) * (x2 - x1)) / (y2 - y1))
      })
      cuts.sort((a, b) => a - b)
      for (let pair = 0; pair + 1 < cuts.length; pair += 2) {
        const end = Math.floor((cuts[pair + 1] ?? 0) / this.cellMm - 0.5)
        for (let column = Math.ceil((cuts[pair] ?? 0) / this.cellMm - 0.5); column <= end; column++) {
          put(row * this.columns + Math.min(this.columns - 1, Math.max(0, column)))
        }
      }
    }
  }

  private summed(holds: (at: number) => boolean): Int32Array {
    const wide = this.columns + 1
    const sums = new Int32Array(wide * (this.rows + 1))
    for (let row = 0; row < this.rows; row++) {
      let along = 0
      for (let column = 0; column < this.columns; column++) {
        if (holds(row * this.columns + column)) along += 1
        sums[(row + 1) * wide + column + 1] = along + (sums[row * wide + column + 1] ?? 0)
      }
    }
    return sums
  }

  private sumIn(sums: Int32Array, box: SheetBox): number {
    const { left, right, top, foot } = this.cells(box)
    const at = (row: number, column: number) => sums[row * (this.columns + 1) + column] ?? 0
    return at(foot + 1, right + 1) - at(top, right + 1) - at(foot + 1, left) + at(top, left)
  }

  private cells({ left, right, top, foot }: SheetBox) {
    return {
      left: this.columnOf(left + MARGIN_MM),
      right: this.columnOf(right + MARGIN_MM),
      top: this.rowOf(top + MARGIN_MM),
      foot: this.rowOf(foot + MARGIN_MM),
    }
  }

  private cellAt(x: number, y: number): number {
    return this.rowOf(y + MARGIN_MM) * this.columns + this.columnOf(x + MARGIN_MM)
  }

  private columnOf(x: number): number {
    return Math.min(this.columns - 1, Math.max(0, Math.floor(x / this.cellMm)))
  }

  private rowOf(y: number): number {
    return Math.min(this.rows - 1, Math.max(0, Math.floor(y / this.cellMm)))
  }
}

const grounds = new WeakMap<PlanSheet, Map<string, CalloutGround>>()
const KEPT = 4

/** The ground of a sheet at a scale, laid once and kept for the scales last asked for. */
export function groundOf(sheet: PlanSheet, pixelsPerMm: number): CalloutGround {
  const kept = grounds.get(sheet) ?? new Map<string, CalloutGround>()
  grounds.set(sheet, kept)
  const key = pixelsPerMm.toFixed(4)
  const ground = kept.get(key) ?? new CalloutGround(sheet, pixelsPerMm)
  kept.delete(key)
  kept.set(key, ground)
  for (const old of [...kept.keys()].slice(0, Math.max(0, kept.size - KEPT))) kept.delete(old)
  return ground
}
