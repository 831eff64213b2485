import type { PlanPoint } from '../../shared-types/finding.ts'

/** A spot of a panel as it is drawn: its letter, its place, and the figure read there. */
export interface PanelSpot {
  readonly letter: string
  readonly at: PlanPoint
  readonly figure: string
  /** False for one that is drawn as a point alone. */
  readonly named?: boolean
}

export interface SpotLabel {
  readonly letter: string
  readonly x: number
  readonly y: number
  readonly text: string
  readonly textX: number
  readonly textY: number
  /** What the letters cover; nothing where there are none. */
  readonly ground: { readonly x: number; readonly y: number; readonly width: number; readonly height: number }
}

/** Width of one figure of the callout face and height of its line, px. */
const CHARACTER_PX = 7
const LINE_PX = 12

interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly foot: number
}

const meets = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.foot && b.top < a.foot

/** Sets the labels of spots so that none covers another or leaves the drawing; where there is no room, the letter stands alone. */
export function spotLabels(
  spots: readonly PanelSpot[],
  place: (point: PlanPoint) => { x: number; y: number },
  widthPx: number,
  letterScale = 1,
): readonly SpotLabel[] {
  const taken: Box[] = spots.map((spot) => {
    const { x, y } = place(spot.at)
    return { left: x - 3, right: x + 3, top: y - 3, foot: y + 3 }
  })
  return spots.map((spot, index) => {
    const { x, y } = place(spot.at)
    const own = taken[index]
    for (const text of spot.named === false ? [] : [`${spot.letter} ${spot.figure}`.trim(), spot.letter]) {
      const width = text.length * CHARACTER_PX * letterScale
      for (const [left, foot] of [
        [x + 5, y - 1],
        [x - 5 - width, y - 1],
        [x + 5, y + 10 * letterScale],
        [x - 5 - width, y + 10 * letterScale],
        [x - width / 2, y - 6],
        [x - width / 2, y + 15 * letterScale],
      ] as const) {
        const box = { left, right: left + width, top: foot - LINE_PX * letterScale + 2, foot: foot + 1 }
        const free = left >= 0 && box.right <= widthPx && !taken.some((other) => other !== own && meets(other, box))
        if (!free) continue
        taken.push(box)
        const ground = { x: left, y: box.top + 1, width, height: foot - box.top }
        return { letter: spot.letter, x, y, text, textX: left, textY: foot - 1, ground }
      }
    }
    return { letter: spot.letter, x, y, text: '', textX: x, textY: y, ground: { x, y, width: 0, height: 0 } }
  })
}
