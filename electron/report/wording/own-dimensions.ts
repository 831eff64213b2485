import type { DimensionChoice } from '../../../shared-types/body-dimensions.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { figure, lengthFigure, NARROW } from './numbers.ts'

/** What a car is recorded to measure: "Overall length 4 250 mm; wheelbase 2 500 mm". Empty when nothing was given. */
export function ownDimensionsWords(
  choices: readonly DimensionChoice[],
  { particulars, commission }: Pick<RecordView, 'particulars' | 'commission'>,
): string {
  const given = choices.flatMap((choice) => {
    const value = particulars.dimensions[choice.name]
    if (value === undefined) return []
    const said =
      choice.quantity === 'angle'
        ? `${figure(value, Number.isInteger(value) ? 0 : 1)}°`
        : `${lengthFigure(value, commission.lengthUnit)}${NARROW}${commission.lengthUnit}`
    return [`${choice[commission.names]} ${said}`]
  })
  return given.map((said, at) => (at === 0 ? said : said.charAt(0).toLowerCase() + said.slice(1))).join('; ')
}
