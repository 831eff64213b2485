import { spacesInQuantities } from '../../shared-types/spaces-in-quantities.ts'

/** As wide as a space, and no line is broken at it. */
const HELD = '\u00a0'

/** Words somebody typed, as they are shown: the same words, and no quantity in them is broken over two lines. */
export function heldTogether(typed: string): string {
  const spaces = spacesInQuantities(typed)
  return spaces.size === 0
    ? typed
    : typed
        .split('')
        .map((unit, at) => (spaces.has(at) ? HELD : unit))
        .join('')
}
