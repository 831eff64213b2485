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
}

/** Width of one figure of the callout face and height of its line, px. */
export const FIGURE_PX = 7
export const LINE_PX = 12
/** Half the room of a spot. */
const SPOT_PX = 3

export interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly foot: number
}

export const meets = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.foot && b.top < a.foot

/** Room of the point of a spot. */
export const spotBox = ({ x, y }: Pick<SpotLabel, 'x' | 'y'>): Box => ({
  left: x - SPOT_PX,
  right: x + SPOT_PX,
  top: y - SPOT_PX,
  foot: y + SPOT_PX,
})

/** Room of the label of a spot. */
export const labelBox = ({ text, textX, textY }: SpotLabel, letterScale: number): Box => ({
  left: textX,
  right: textX + text.length * FIGURE_PX * letterScale,
  top: textY - LINE_PX * letterScale + 3,
  foot: textY + 2,
})

/**
 * Sets the labels of spots so that none covers another, what `besides` is drawn there, or leaves the drawing; where there
 * is no room, the letter stands alone. Without a height the drawing goes on above and below.
 */
export function spotLabels(
  spots: readonly PanelSpot[],
  place: (point: PlanPoint) => { x: number; y: number },
  widthPx: number,
  letterScale = 1,
  besides: readonly Box[] = [],
  heightPx = Number.POSITIVE_INFINITY,
): readonly SpotLabel[] {
  const taken: Box[] = [...spots.map((spot) => spotBox(place(spot.at))), ...besides]
  return spots.map((spot, index) => {
    const { x, y } = place(spot.at)
    const own = taken[index]
    for (const text of spot.named === false ? [] : [`${spot.letter} ${spot.figure}`.trim(), spot.letter]) {
      const width = text.length * FIGURE_PX * letterScale
      for (const [left, foot] of [
        [x + 5, y - 1],
        [x - 5 - width, y - 1],
        [x + 5, y + 10 * letterScale],
        [x - 5 - width, y + 10 * letterScale],
        [x - width / 2, y - 6],
        [x - width / 2, y + 15 * letterScale],
      ] as const) {
        const label = { letter: spot.letter, x, y, text, textX: left, textY: foot - 1 }
        const box = labelBox(label, letterScale)
        const cut =
          left < 0 || box.right > widthPx || (Number.isFinite(heightPx) && (box.top < 0 || box.foot > heightPx))
        const free = !cut && !taken.some((other) => other !== own && meets(other, box))
        if (!free) continue
        taken.push(box)
        return label
      }
    }
    return { letter: spot.letter, x, y, text: '', textX: x, textY: y }
  })
}
