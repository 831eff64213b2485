import { type Cubic, isStraight, type Point, straight } from './cubic-path.ts'

/** What follows the whole number, by thousandths: nothing, `.5`, `.25`, `.001`. */
const decimals = Array.from({ length: 1000 }, (_, thousandths) => String(thousandths / 1000).slice(1))

/** Three decimals of a millimetre, in two parts, since whole numbers are written many times faster than fractions. */
function coordinate(value: number): string {
  const signed = Math.round(value * 1000)
  const micrometres = Math.abs(signed)
  const part = micrometres % 1000
  return `${signed < 0 ? '-' : ''}${(micrometres - part) / 1000}${decimals[part]}`
}
const pair = (point: Point): string => `${coordinate(point[0])} ${coordinate(point[1])}`

/** Path text of joined pieces: absolute M, L, C and, when closed, Z; three decimals of a millimetre. */
export function pathText(path: readonly Cubic[], closed: boolean): string {
  const [first] = path
  if (first === undefined) return ''
  const pieces = path.map((piece) =>
    isStraight(piece) ? `L${pair(piece[3])}` : `C${pair(piece[1])} ${pair(piece[2])} ${pair(piece[3])}`,
  )
  return `M${pair(first[0])}${pieces.join('')}${closed ? 'Z' : ''}`
}

const FIRST_LETTER = 'A'.charCodeAt(0)

/** Reads path text back into one list of pieces for each M. Throws a plain error on any other command. */
export function readPath(text: string): Cubic[][] {
  const paths: Cubic[][] = []
  let pieces: Cubic[] = []
  let here: Point = [0, 0]
  let start: Point = here
  const words = text.match(/[A-Za-z]|[^A-Za-z\s,]+/g) ?? []
  let next = 0
  const isNumber = () => next < words.length && (words[next]?.charCodeAt(0) ?? 0) < FIRST_LETTER
  const point = (): Point => {
    const [u, v] = [Number(words[next]), Number(words[next + 1])]
    if (!Number.isFinite(u) || !Number.isFinite(v)) {
      throw new Error(`The path text ends too early: ${text.slice(0, 60)}`)
    }
    next += 2
    return [u, v]
  }
  while (next < words.length) {
    const command = words[next++]
    if (command === 'M') {
      here = point()
      start = here
      pieces = []
      paths.push(pieces)
    } else if (command === 'L') {
      while (isNumber()) {
        const to = point()
        pieces.push(straight(here, to))
        here = to
      }
    } else if (command === 'C') {
      while (isNumber()) {
        const piece: Cubic = [here, point(), point(), point()]
        pieces.push(piece)
        here = piece[3]
      }
    } else if (command === 'Z') {
      if (here[0] !== start[0] || here[1] !== start[1]) pieces.push(straight(here, start))
      here = start
    } else {
      throw new Error(`A plan path may hold M, L, C and Z only, not ${command}.`)
    }
  }
  return paths
}

/** The one closed path of a panel outline. */
export const readOutline = (text: string): Cubic[] => readPath(text)[0] ?? []
