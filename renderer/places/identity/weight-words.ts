/** Words for a weight from 0 to 1, with the bands printed beside them. The words and bands are the program's own. */
const bands: readonly (readonly [number, string])[] = [
  [0.03, 'very unlikely'],
  [0.2, 'unlikely'],
  [0.8, 'possible'],
  [0.97, 'likely'],
]

export const weightWords = (weight: number): string => bands.find(([below]) => weight < below)?.[1] ?? 'all but certain'

/** The bands as one line: "very unlikely < 3 % < unlikely < 20 % ...". */
export const weightBands = `${bands.map(([below, words]) => `${words} < ${100 * below}\u202f% <`).join(' ')} all but certain`

/** A weight as printed, never as certain when it is not. */
export function weightText(weight: number): string {
  if (weight > 0 && weight < 0.005) return '< 1\u202f%'
  if (weight < 1 && weight > 0.995) return '> 99\u202f%'
  return `${Math.round(100 * weight)}\u202f%`
}

/** Decibans with their sign; words where something alone settles it. */
export function decibanText(decibans: number | null, decisive: 'for' | 'against' | null): string {
  if (decibans === null) return decisive === 'for' ? 'settles it' : 'rules it out'
  return `${decibans < 0 ? '\u2212' : '+'}${Math.abs(decibans).toFixed(1)}`
}
