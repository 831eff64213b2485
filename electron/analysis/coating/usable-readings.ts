import type { CoatingFieldInput } from '../../../shared-types/coating.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { gaugeUncertainty } from './gauge-error.ts'
import type { FieldReading } from './latent-sites.ts'

/** Readings the field is drawn from, and how many were left out for which reason. */
export interface UsableReadings {
  readonly readings: readonly FieldReading[]
  readonly leftOut: readonly { readonly count: number; readonly why: string }[]
}

/** More places than this are put together in squares first: the work grows with the third power of their number. */
const MOST_PLACES = 300

/**
 * Readings with a value, within the panel. Those of one square are put together when there are too many: the mean of the
 * values with the uncertainty of one of them, because a gauge's error does not average out.
 * @throws ProblemError when none is left.
 */
export function usableReadings({ readings, nodes, gauge }: CoatingFieldInput): UsableReadings {
  const reach = outlineReach(nodes)
  let failed = 0
  let outside = 0
  const kept: FieldReading[] = []
  for (const { xMm, yMm, value, gaugeUm } of readings) {
    if (value.kind === 'no reading') failed += 1
    else if (!reach(xMm, yMm)) outside += 1
    else
      kept.push({
        xMm,
        yMm,
        kind: value.kind,
        thicknessUm: value.um,
        gaugeUm: gaugeUm ?? gaugeUncertainty(gauge, value.um),
      })
  }
  if (kept.length === 0)
    throw new ProblemError(
      'rule-of-the-trade',
      readings.length === 0
        ? 'There is no reading yet: read the panel at about 25 places for a first map.'
        : `None of the ${readings.length} readings can be used: ${failed} gave no value and ${outside} lie outside the panel. Check the gauge's mode and where the readings were put.`,
      { field: 'readings' },
    )
  const together = kept.length > MOST_PLACES ? inSquares(kept) : kept
  const reasons = [
    { count: failed, why: 'the gauge gave no value' },
    { count: outside, why: 'outside the outline of the panel' },
  ]
  return { readings: together, leftOut: reasons.filter(({ count }) => count > 0) }
}

/** Whether a place is near enough to a node to lie on the panel: within the side of two nodes' squares. */
function outlineReach(nodes: CoatingFieldInput['nodes']): (x: number, y: number) => boolean {
  const side = 2 * Math.sqrt(Math.max(...nodes.map(({ areaMm2 }) => areaMm2)))
  const cells = new Set(nodes.map(({ xMm, yMm }) => `${Math.floor(xMm / side)} ${Math.floor(yMm / side)}`))
  return (x, y) => {
    const column = Math.floor(x / side)
    const row = Math.floor(y / side)
    for (let dx = -1; dx <= 1; dx += 1)
      for (let dy = -1; dy <= 1; dy += 1) if (cells.has(`${column + dx} ${row + dy}`)) return true
    return false
  }
}

function inSquares(readings: readonly FieldReading[]): FieldReading[] {
  let left = Number.POSITIVE_INFINITY
  let low = Number.POSITIVE_INFINITY
  let right = Number.NEGATIVE_INFINITY
  let top = Number.NEGATIVE_INFINITY
  for (const { xMm, yMm } of readings) {
    left = Math.min(left, xMm)
    low = Math.min(low, yMm)
    right = Math.max(right, xMm)
    top = Math.max(top, yMm)
  }
  const side = Math.max(
    1,
    Math.sqrt(((right - left + 1) * (top - low + 1)) / MOST_PLACES),
    (right - left + top - low) / (MOST_PLACES - 1),
  )
  const grouped = new Map<string, FieldReading[]>()
  for (const reading of readings) {
    const key = `${Math.floor((reading.xMm - left) / side)} ${Math.floor((reading.yMm - low) / side)}`
    const square = grouped.get(key)
    if (square === undefined) grouped.set(key, [reading])
    else square.push(reading)
  }
  return Array.from(grouped.values(), oneOf)
}

function oneOf(square: readonly FieldReading[]): FieldReading {
  const mean = (of: (reading: FieldReading) => number): number =>
    square.reduce((sum, reading) => sum + of(reading), 0) / square.length
  const saturated = square.filter(({ kind }) => kind === 'more than').length
  return {
    xMm: mean(({ xMm }) => xMm),
    yMm: mean(({ yMm }) => yMm),
    kind: saturated > 0 ? 'more than' : 'value',
    thicknessUm: mean(({ thicknessUm }) => thicknessUm),
    gaugeUm: mean(({ gaugeUm }) => gaugeUm),
  }
}
