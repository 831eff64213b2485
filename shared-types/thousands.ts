/** Narrow and unbreakable: stands between thousands, wherever a number is printed. */
const NARROW = '\u202f'

/** A figure with its thousands apart: `12345.6` as `12 345.6`. What stands after the point is left as it is. */
export function thousands(figure: string): string {
  const [whole = '', ...rest] = figure.split('.')
  return [whole.replace(/\B(?=(\d{3})+(?!\d))/g, NARROW), ...rest].join('.')
}
