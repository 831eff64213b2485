import { typeScale } from '../../shared-types/tokens.ts'

const LETTERS = { words: 'Source Sans 3', figures: 'Source Code Pro' } as const
const SIZE_PX = typeScale.callout[0]

const canvas = document.createElement('canvas').getContext('2d')

/** Width in pixels of a text at the size of callouts, letters set `scale` times their usual size. */
export function textWidths(face: keyof typeof LETTERS, scale: number): (text: string) => number {
  const font = `${SIZE_PX * scale}px "${LETTERS[face]}"`
  return (text) => {
    // Without a canvas, as wide as a broad letter may be: more lines, and none cut.
    if (canvas === null) return text.length * SIZE_PX * scale
    canvas.font = font
    return canvas.measureText(text).width
  }
}
