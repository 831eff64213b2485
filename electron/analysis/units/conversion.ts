import type { ComputationInput, ComputationOutput } from '../../../shared-types/computations.ts'
import { MM_PER_INCH, UM_PER_MIL } from '../../../shared-types/units.ts'

/**
 * 25.4 has no exact double, but 127 / 5 has both its terms: multiplied first and divided last, a whole number of
 * inches or mils comes out as the nearest double of its exact value.
 */
const FIFTHS = 5

const between = (value: number, fromLarge: boolean, toLarge: boolean, perLarge: number): number => {
  const inFifths = perLarge * FIFTHS
  if (fromLarge === toLarge) return value
  return fromLarge ? (value * inFifths) / FIFTHS : (value * FIFTHS) / inFifths
}

/** A length between millimetres and inches (exact factor of the international yard and pound agreement, 1959). */
export function convertLength(input: ComputationInput<'convert-length'>): ComputationOutput<'convert-length'> {
  return { value: between(input.value, input.from === 'in', input.to === 'in', MM_PER_INCH), unit: input.to }
}

/** A coating thickness between micrometres and mils (thousandths of an inch). */
export function convertCoating(input: ComputationInput<'convert-coating'>): ComputationOutput<'convert-coating'> {
  return { value: between(input.value, input.from === 'mil', input.to === 'mil', UM_PER_MIL), unit: input.to }
}
