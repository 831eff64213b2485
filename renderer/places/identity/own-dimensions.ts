import type { BodyDimensionName, DimensionChoice, OwnDimensions } from '../../../shared-types/body-dimensions.ts'
import type { LengthUnit } from '../../../shared-types/units.ts'
import type { NameChoice } from '../../../shared-types/words.ts'
import { figureText, lengthText } from '../../parts-of-page/figure-text.ts'

/** A dimension with its unit: "4 250 mm", "167.32 in", "47°". */
export function dimensionFigure(
  value: number,
  { quantity }: Pick<DimensionChoice, 'quantity'>,
  unit: LengthUnit,
): string {
  return quantity === 'angle' ? `${figureText(value, Number.isInteger(value) ? 0 : 1)}°` : lengthText(value, unit)
}

/** The dimensions with one set, or left to be drawn as usual when it is null. */
export function withDimension(own: OwnDimensions, name: BodyDimensionName, value: number | null): OwnDimensions {
  const { [name]: _, ...others } = own
  return value === null ? others : { ...others, [name]: value }
}

/** What a car measures in words: "Overall length 4 250 mm; wheelbase 2 500 mm". Empty when nothing was given. */
export function dimensionsText(
  choices: readonly DimensionChoice[],
  own: OwnDimensions,
  names: NameChoice,
  unit: LengthUnit,
): string {
  const given = choices.flatMap((choice) => {
    const value = own[choice.name]
    return value === undefined ? [] : [`${choice[names]} ${dimensionFigure(value, choice, unit)}`]
  })
  return given.map((said, at) => (at === 0 ? said : said.charAt(0).toLowerCase() + said.slice(1))).join('; ')
}
