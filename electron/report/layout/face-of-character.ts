import { type FaceName, type ShippedFace, typeface } from '../document/typeface.ts'

const HEBREW = /[\u0590-\u05FF\uFB1D-\uFB4F]/
const ARABIC = /[\u0600-\u06FF\u0750-\u077F\u0870-\u08FF\uFB50-\uFDFF\uFE70-\uFEFC]/
/** The face that draws a character where the text is set in `face`, or null when no shipped face has it. */
export function faceOfCharacter(character: string, face: FaceName): ShippedFace | null {
  const codePoint = character.codePointAt(0) ?? 0
  const strong = face === 'strong'
  let other: ShippedFace | null = null
  if (HEBREW.test(character)) other = strong ? 'hebrewStrong' : 'hebrew'
  else if (ARABIC.test(character)) other = strong ? 'arabicStrong' : 'arabic'
  const own = other ?? face
  return typeface(own).covers(codePoint) ? own : null
}

export const isArabic = (character: string): boolean => ARABIC.test(character)
