import type { z } from 'zod'
import type { odometer } from '../../../shared-types/dating.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'

type Question = z.infer<typeof odometer.input>
type Answer = z.infer<typeof odometer.output>
type Reading = Question['readings'][number]

/** One international mile, exact since 1959. */
const KM_PER_MILE = 1.609344

const inKm = ({ value, unit }: Reading): number => (unit === 'km' ? value : value * KM_PER_MILE)

/**
 * Pairs of readings of which the later is smaller, among those whose days do not overlap; each with explanations the
 * number itself allows. Rolling over is one of them and no accusation is.
 * @throws ProblemError when an interval ends before it begins.
 */
export function odometerOrder({ readings, figures }: Question): Answer {
  const turned = readings.find(({ when }) => when.from > when.to)
  if (turned !== undefined)
    throw new ProblemError('input-refused', `“${turned.label}” ends before it begins; exchange its two days.`, {
      field: 'readings',
    })
  const ordered = readings.toSorted((one, other) => one.when.from.localeCompare(other.when.from))
  const runsBack: Answer['runsBack'][number][] = []
  let notOrdered = 0
  for (const [at, earlier] of ordered.entries()) {
    for (const later of ordered.slice(at + 1)) {
      if (earlier.when.to >= later.when.from) notOrdered += 1
      else if (inKm(later) < inKm(earlier)) runsBack.push(backwards(earlier, later, figures))
    }
  }
  const pairs = runsBack.length === 1 ? 'One pair of readings runs' : `${runsBack.length} pairs of readings run`
  return {
    runsBack,
    notOrdered,
    words:
      runsBack.length > 0
        ? `${pairs} back in time order.`
        : 'No reading is smaller than an earlier one. That does not show that the distance is right.',
  }
}

/** A reading in the unit of another; as it was written when they share it. */
const inUnitOf = ({ unit }: Reading, reading: Reading): number => {
  if (reading.unit === unit) return reading.value
  return unit === 'km' ? inKm(reading) : reading.value / KM_PER_MILE
}

function backwards(earlier: Reading, later: Reading, figures: number | null): Answer['runsBack'][number] {
  const explanations: string[] = []
  const turn = figures === null ? null : 10 ** figures
  if (turn === null) explanations.push('The counter may have rolled over: enter how many figures it has.')
  else if (earlier.value >= turn || later.value >= turn)
    explanations.push(`A reading has more than ${figures} figures: the counter was another one, or a reading is wrong.`)
  else if (earlier.unit === later.unit)
    explanations.push(
      `The counter of ${figures} figures rolled over: ${later.value + turn - earlier.value} ${later.unit} driven between.`,
    )
  if (earlier.unit !== later.unit)
    explanations.push('The units differ: the counter or its unit was changed or misread.')
  else if (later.value * KM_PER_MILE >= earlier.value)
    explanations.push(
      earlier.unit === 'km'
        ? 'The later reading would fit if it is in miles.'
        : 'The earlier reading would fit if it is in kilometres.',
    )
  explanations.push('The counter was replaced, repaired or set.', 'One of the two was written down wrongly.')
  return {
    earlier: earlier.id,
    later: later.id,
    byDistance: inUnitOf(later, earlier) - later.value,
    unit: later.unit,
    explanations,
  }
}
