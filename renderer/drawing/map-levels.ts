import { cividis } from '../../shared-types/tokens.ts'

/** Values on a grid of square cells over a view: row by row from the left upper corner, null where nothing is known. */
export interface MapGrid {
  readonly u: number
  readonly v: number
  readonly cellMm: number
  readonly columns: number
  readonly values: readonly (number | null)[]
}

/** Level of each value, -1 where nothing is known. Filled in place: as a typed array made from a list, it takes five times as long. */
function levelsOf(values: MapGrid['values'], limits: readonly number[]): Int8Array {
  const levels = new Int8Array(values.length).fill(-1)
  values.forEach((value, at) => {
    if (value === null) return
    let level = 0
    for (const limit of limits) if (value >= limit) level += 1
    levels[at] = level
  })
  return levels
}

/**
 * One path for each level of a map: level 0 lies under the first limit, the last one from the last limit on. Cells of
 * one level that touch within a row become one rectangle. Whole cells from the map's left upper corner: short to write
 * and to read, and so set anew within a frame.
 */
export function levelPaths({ columns, values }: MapGrid, limits: readonly number[]): readonly string[] {
  const paths = Array.from({ length: limits.length + 1 }, () => '')
  const levels = levelsOf(values, limits)
  for (let start = 0, row = 0; start < levels.length; start += columns, row += 1) {
    const end = Math.min(levels.length, start + columns)
    for (let at = start; at < end; ) {
      const level = levels[at] ?? -1
      let next = at + 1
      while (next < end && levels[next] === level) next += 1
      if (level >= 0) paths[level] += `M${at - start} ${row}h${next - at}v1h${at - next}z`
      at = next
    }
  }
  return paths
}

/** Colour of a level: evenly along cividis, thin to thick. */
export const levelColour = (level: number, levels: number): string =>
  cividis[Math.round((level / Math.max(1, levels - 1)) * (cividis.length - 1))] ?? cividis[0]
