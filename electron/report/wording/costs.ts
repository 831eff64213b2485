import type { RecordView } from '../../../shared-types/record.ts'
import { figure, NARROW } from './numbers.ts'

/**
 * Sums of the least and of the most, over corrections not yet done that have an estimate. Never one figure: the two
 * ends are what the work costs if everything falls out cheap, or dear, at once.
 */
export function costBounds({ corrections, commission }: RecordView): string {
  const open = corrections.filter(({ state }) => state === 'planned')
  const priced = open.flatMap(({ cost }) => (cost === null ? [] : [cost]))
  const without = open.length - priced.length
  const end =
    without > 0 ? ` ${without} planned ${without === 1 ? 'correction has' : 'corrections have'} no estimate.` : ''
  if (priced.length === 0) return `No planned correction has an estimate.${end}`
  const low = priced.reduce((sum, cost) => sum + cost.low, 0)
  const high = priced.reduce((sum, cost) => sum + cost.high, 0)
  return `${commission.currency}${NARROW}${figure(low)} – ${figure(high)}, the sums of the least and of the most of ${priced.length} planned ${priced.length === 1 ? 'correction' : 'corrections'}.${end}`
}
