import type { BodyDimensions, DimensionChoice, OwnDimensions } from '../../shared-types/body-dimensions.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { type LengthUnit, MM_PER_INCH } from '../../shared-types/units.ts'
import type { BodyStyle, NameChoice } from '../../shared-types/words.ts'
import { dimensionChoice, dimensionList, dimensionsOf } from './dimension-list.ts'
import { relations } from './dimension-relations.ts'

/** How a refusal is worded, and under which field of the request it stands. */
export interface DimensionWording {
  readonly field: string
  readonly names?: NameChoice
  readonly lengthUnit?: LengthUnit
}

/**
 * Checks what a record gives as dimensions of its own against the ranges of its body and against each other, the
 * usual values standing in for what was not given. Answers the whole set. Throws `input-refused` with the dimension as
 * the field, the range that is accepted with the others as they stand, and what to do.
 */
export function requireDimensions(body: BodyStyle, own: OwnDimensions, wording: DimensionWording): BodyDimensions {
  for (const choice of dimensionList(body).dimensions) {
    const value = own[choice.name]
    if (value !== undefined && (value < choice.least || value > choice.greatest)) {
      refuse(choice, value, 'lies outside what is drawn of this body.', [choice.least, choice.greatest], wording)
    }
  }
  const whole = dimensionsOf(body, own)
  const broken = relations.find(({ holds }) => !holds(whole))
  if (broken === undefined) return whole
  const name = broken.about.find((one) => own[one] !== undefined) ?? broken.about[0]
  const choice = dimensionChoice(body, name)
  const says = broken.says((mm) => lengthWords(mm, wording))
  return refuse(choice, whole[name], `does not go with the rest: ${says}`, goesWith(choice, whole), wording)
}

/** Least and greatest value of one dimension that goes with the others, to the millimetre or degree; null when none does. */
function goesWith(choice: DimensionChoice, whole: BodyDimensions): readonly [number, number] | null {
  const going: number[] = []
  for (let value = choice.least; value <= choice.greatest; value += 1) {
    const tried = { ...whole, [choice.name]: value }
    if (relations.every(({ holds }) => holds(tried))) going.push(value)
  }
  const [least, greatest] = [going[0], going.at(-1)]
  return least === undefined || greatest === undefined ? null : [least, greatest]
}

const lengthWords = (mm: number, { lengthUnit = 'mm' }: DimensionWording): string =>
  lengthUnit === 'in' ? `${(mm / MM_PER_INCH).toFixed(1)} in` : `${mm} mm`

function refuse(
  choice: DimensionChoice,
  value: number,
  why: string,
  range: readonly [number, number] | null,
  wording: DimensionWording,
): never {
  const { field, names = 'uk' } = wording
  const figure = (of: number): string => (choice.quantity === 'angle' ? `${of} degrees` : lengthWords(of, wording))
  const accepted =
    range === null
      ? 'No value of it would go with them: check the others as well.'
      : `Accepted here: ${figure(range[0])} to ${figure(range[1])}.`
  const message =
    `${choice[names]}, ${figure(value)}, ${why} ${accepted} Measure again and correct it, or leave it empty: the plan is ` +
    `then drawn with the usual ${figure(choice.usual)}.`
  throw new ProblemError('input-refused', message, { field: `${field}.${choice.name}` })
}
