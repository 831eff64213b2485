import type { PicturePoint } from '../../../../shared-types/measuring.ts'
import { allPoints, letterOf } from './picked-points.ts'
import type { PictureEntry } from './picture-entry.ts'

/** What a key asks of the picture. */
export type PadAct =
  | { readonly act: 'move'; readonly by: PicturePoint; readonly coarse: boolean }
  | { readonly act: 'set' | 'let go' | 'take back' | 'whole' }
  | { readonly act: 'zoom'; readonly factor: number }
  | { readonly act: 'take'; readonly index: number }

const moves: Readonly<Record<string, PicturePoint>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
}
const ZOOM_STEP = 1.5

/** Reads a key pressed on the picture; null for a key that is not the picture's. A letter takes its point in hand. */
export function padAct(
  key: { readonly key: string; readonly shiftKey: boolean; readonly held: boolean },
  entry: PictureEntry,
  inHand: number | null,
): PadAct | null {
  if (key.held) return null
  const by = moves[key.key]
  if (by !== undefined) return { act: 'move', by, coarse: key.shiftKey }
  if (key.key === 'Enter' || key.key === ' ') return { act: 'set' }
  if (key.key === 'Escape') return inHand === null ? null : { act: 'let go' }
  if (key.key === 'Backspace' || key.key === 'Delete') return { act: 'take back' }
  if (key.key === '+' || key.key === '=') return { act: 'zoom', factor: ZOOM_STEP }
  if (key.key === '-') return { act: 'zoom', factor: 1 / ZOOM_STEP }
  if (key.key === '0') return { act: 'whole' }
  const named = allPoints(entry).find(({ index }) => letterOf(index) === key.key.toUpperCase())
  return named === undefined ? null : { act: 'take', index: named.index }
}
