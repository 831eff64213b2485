/** Characters a number of the 17-character format may have: no I, O, Q (49 CFR 565.13(g); ISO 3779). */
export const IDENTIFICATION_ALPHABET = '0123456789ABCDEFGHJKLMNPRSTUVWXYZ'
/** A character that could not be read. */
export const UNREADABLE = '?'

const letterValues = 'A1B2C3D4E5F6G7H8J1K2L3M4N5P7R9S2T3U4V5W6X7Y8Z9'
const values = new Map(
  [...IDENTIFICATION_ALPHABET].map((character) => [
    character,
    /[0-9]/.test(character) ? Number(character) : Number(letterValues[letterValues.indexOf(character) + 1]),
  ]),
)

/** Weights of the 17 places; the check digit itself has none (49 CFR 565.15(c), tables III to VI). */
export const PLACE_WEIGHTS: readonly number[] = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2]

/** Assigned value of a character; NaN for one outside the alphabet. */
export const assignedValue = (character: string): number => values.get(character) ?? Number.NaN

/** Sum of products of a readable 17-character number, check digit left out. */
export const sumOfProducts = (number: string): number =>
  PLACE_WEIGHTS.reduce(
    (sum, weight, place) => sum + weight * (weight === 0 ? 0 : assignedValue(number[place] ?? '')),
    0,
  )

/** Character the remainder of the sum by 11 asks for: `0` to `9`, or `X` for ten. */
export const checkCharacter = (sum: number): string => '0123456789X'[sum % 11] ?? ''
