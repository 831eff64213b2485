import type { FillerDraws } from './field-draws.ts'

/** Area and volume of filler in every draw. Areas in mm2; a volume of 1 cm3 is 1,000 mm3. */
export interface ExtentDraws {
  readonly areaMm2: Float64Array
  readonly volumeMm3: Float64Array
}

/**
 * Area of the nodes whose filler is deeper than `deeperThanUm`, and volume of the filler there, draw by draw: change of
 * support by adding up draws, never by turning a predicted mean back. `weights` is the true surface of each node, mm2,
 * nought where the panel could not be read.
 */
export function extentDraws(
  { fillerUm, draws, nodes }: FillerDraws,
  weights: Float64Array,
  deeperThanUm: number,
): ExtentDraws {
  const areaMm2 = new Float64Array(draws)
  const volumeMm3 = new Float64Array(draws)
  for (let node = 0; node < nodes; node += 1) {
    const weight = weights[node] as number
    if (weight === 0) continue
    const row = node * draws
    for (let d = 0; d < draws; d += 1) {
      const depth = fillerUm[row + d] as number
      if (depth <= deeperThanUm) continue
      areaMm2[d] = (areaMm2[d] as number) + weight
      volumeMm3[d] = (volumeMm3[d] as number) + (weight * depth) / 1000
    }
  }
  return { areaMm2, volumeMm3 }
}

/** Share of draws in which a node's filler is deeper than the limit. */
export function exceedingChance({ fillerUm, draws, nodes }: FillerDraws, deeperThanUm: number): Float64Array {
  const chance = new Float64Array(nodes)
  for (let node = 0; node < nodes; node += 1) {
    let more = 0
    for (let at = node * draws; at < (node + 1) * draws; at += 1) if ((fillerUm[at] as number) > deeperThanUm) more += 1
    chance[node] = more / draws
  }
  return chance
}

/** Thickness of film and filler at each node: the middle and the ends of the interval that holds 90 % of the draws, um. */
export interface ThicknessMap {
  readonly lowUm: Float64Array
  readonly middleUm: Float64Array
  readonly highUm: Float64Array
}

/** Quantiles of the thickness at every node; the film is its median. */
export function thicknessMap({ fillerUm, draws, nodes }: FillerDraws, filmUm: number): ThicknessMap {
  const map = {
    lowUm: new Float64Array(nodes),
    middleUm: new Float64Array(nodes),
    highUm: new Float64Array(nodes),
  }
  for (let node = 0; node < nodes; node += 1) {
    const sorted = fillerUm.slice(node * draws, (node + 1) * draws).sort()
    map.lowUm[node] = filmUm + quantileOfSorted(sorted, 0.05)
    map.middleUm[node] = filmUm + quantileOfSorted(sorted, 0.5)
    map.highUm[node] = filmUm + quantileOfSorted(sorted, 0.95)
  }
  return map
}

/** Quantile of numbers in rising order, straight between neighbours (Hyndman and Fan, The American Statistician 50 (1996) 361-365, definition 7). */
export function quantileOfSorted(sorted: Float32Array | Float64Array, p: number): number {
  const at = (sorted.length - 1) * p
  const below = Math.floor(at)
  const low = sorted[below] as number
  const high = sorted[Math.min(sorted.length - 1, below + 1)] as number
  return low + (at - below) * (high - low)
}
