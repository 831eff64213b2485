/** Letters by the most they advance, thousandths of the size, in the face of words at its stronger weight. */
const advances: readonly (readonly [number, string])[] = [
  [240, ' \u00a0\u202f'],
  [290, "ijlI.,;:·'|!"],
  [380, 'frt-/()[]'],
  [525, 'aceghksvxyz0123456789J'],
  [565, 'bdhnpquEFLPSTVXYZA'],
  [600, 'BCKRo'],
  [850, 'mwMW'],
]
const advanceOf = new Map(advances.flatMap(([advance, letters]) => [...letters].map((letter) => [letter, advance])))
const OTHER_LETTER = 690

/** Most width of a line of words, px, at a size in px. `spacing` is added after each letter, as a share of the size. */
export function textWidthPx(text: string, sizePx: number, spacing = 0): number {
  const thousandths = [...text].reduce((sum, letter) => sum + (advanceOf.get(letter) ?? OTHER_LETTER), 0)
  return (thousandths / 1000 + text.length * spacing) * sizePx
}
