/** Letters and figures a single character may be taken for, beside itself. */
const OTHER_CHARACTERS = 35
/** Stands for a character that could not be read. */
const UNREADABLE = '?'

/** Chance to read `read` where `written` stands; a character that could not be read is as likely whatever stands there. */
export const characterChance = (read: string | undefined, written: string, misread: number): number =>
  read === UNREADABLE ? 1 : read === written ? 1 - misread : misread / OTHER_CHARACTERS

/** Chance to read a text of the same length, character by character. */
export const textChance = (read: string, written: string, misread: number): number =>
  [...written].reduce((chance, character, at) => chance * characterChance(read[at], character, misread), 1)

/**
 * Chance to read these figures where any number from `first` to `last` stands, each alike likely. Numbers are written as
 * short as they come, filled up with noughts to `minDigits`; where a nought was read in front, noughts may fill any length.
 */
export function figuresChance(
  read: string,
  { first, last }: { readonly first: number; readonly last: number },
  minDigits: number,
  misread: number,
): number {
  const length = read.length
  const shortest = length > minDigits && read[0] !== '0' ? 10 ** (length - 1) : 0
  const [from, to] = [Math.max(first, shortest), Math.min(last, 10 ** length - 1)]
  if (from > to) return 0
  const [low, high] = [from, to].map((number) => [...String(number).padStart(length, '0')].map(Number)) as [
    number[],
    number[],
  ]
  const chance = (at: number, figure: number) => characterChance(read[at], String(figure), misread)
  const free = Array.from({ length: length + 1 }, () => 1)
  for (let at = length - 1; at >= 0; at -= 1) {
    let sum = 0
    for (let figure = 0; figure <= 9; figure += 1) sum += chance(at, figure)
    free[at] = sum * (free[at + 1] as number)
  }
  // Sum over the numbers in between, figure by figure, without going through them one by one.
  const within = (at: number, onLow: boolean, onHigh: boolean): number => {
    if (at === length || (!onLow && !onHigh)) return free[at] as number
    const [least, most] = [onLow ? (low[at] as number) : 0, onHigh ? (high[at] as number) : 9]
    let sum = 0
    for (let figure = least; figure <= most; figure += 1)
      sum += chance(at, figure) * within(at + 1, onLow && figure === low[at], onHigh && figure === high[at])
    return sum
  }
  return within(0, true, true) / (last - first + 1)
}
