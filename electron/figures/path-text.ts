import { type Cubic, isStraight, type Point, straight } from './cubic-path.ts'

const coordinate = (value: number): string => String(Math.round(value * 1000) / 1000 + 0)
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

/** Reads path text back into one list of pieces for each M. Throws a plain error on any other command. */
export function readPath(text: string): Cubic[][] {
  const paths: Cubic[][] = []
  let here: Point = [0, 0]
  let start: Point = here
  for (const [, command, numbers] of text.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const values = (numbers ?? '')
      .trim()
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number)
    const at = (index: number): Point => {
      const [u, v] = [values[index * 2], values[index * 2 + 1]]
      if (u === undefined || v === undefined) throw new Error(`The path text ends too early: ${text.slice(0, 60)}`)
      return [u, v]
    }
    if (command === 'M') {
      here = at(0)
      start = here
      paths.push([])
    } else if (command === 'L') {
      for (let index = 0; index < values.length / 2; index++) {
        paths.at(-1)?.push(straight(here, at(index)))
        here = at(index)
      }
    } else if (command === 'C') {
      for (let index = 0; index < values.length / 2; index += 3) {
        paths.at(-1)?.push([here, at(index), at(index + 1), at(index + 2)])
        here = at(index + 2)
      }
    } else if (command === 'Z') {
      if (here[0] !== start[0] || here[1] !== start[1]) paths.at(-1)?.push(straight(here, start))
      here = start
    } else {
      throw new Error(`A plan path may hold M, L, C and Z only, not ${command}.`)
    }
  }
  return paths
}

/** The one closed path of a panel outline. */
export const readOutline = (text: string): Cubic[] => readPath(text)[0] ?? []
