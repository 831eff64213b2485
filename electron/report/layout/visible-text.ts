import { isolatedName, isolatedText, readsRightToLeft } from '../document/bidirectional.ts'
import type { FaceName } from '../document/typeface.ts'
import { faceOfCharacter, isArabic } from './face-of-character.ts'

const LINE_ENDS = /\r\n?|[\u2028\u2029\v\f]/g
/** Show nothing, but are at home in ordinary text. */
const ZERO_WIDTH_SPACE = '\u200B'
const SOFT_HYPHEN = '\u00AD'
/** Turn the order of reading round without being seen; printed so that nothing hides behind them. */
const DIRECTION_CONTROLS = /[\u200E\u200F\u061C\u202A-\u202E\u2066-\u2069]/gu
const TYPED_CONTROL = /[\u200E\u200F\u061C\u202A-\u202E]/u
const OWN_ISOLATE = /[\u2066-\u2069]/u
/** Parts two Arabic letters, and means nothing elsewhere. */
export const NON_JOINER = '\u200C'
const remembered = new Map<string, string>()

/** A character no shipped face can draw, as a reader can still look it up: `[U+1F600]`. */
export const codePointName = (codePoint: number): string =>
  `[U+${codePoint.toString(16).toUpperCase().padStart(4, '0')}]`

/** The same within a text: where that runs from right to left, the name keeps its own order. */
function spelling(character: string, text: string): string {
  const name = codePointName(character.codePointAt(0) ?? 0)
  return readsRightToLeft(text) ? isolatedName(name) : name
}

/**
 * Words somebody wrote, made safe to stand among others: direction controls are spelled by their code points, and each
 * line that reads from right to left is isolated. The isolates that are left in the text are the program's own.
 */
export function quotedText(text: string): string {
  const spelled = text.replace(DIRECTION_CONTROLS, (control) => spelling(control, text))
  if (!readsRightToLeft(spelled)) return spelled
  return spelled.replace(LINE_ENDS, '\n').split('\n').map(isolatedText).join('\n')
}

/**
 * Text as it can be printed in a face: line ends become `\n`, tabs a space, and every character no face can draw,
 * every control character and every hidden change of direction is spelled by its code point, never dropped.
 */
export function visibleText(text: string, face: FaceName): string {
  if (/^[\x20-\x7E]*$/.test(text)) return text
  const key = `${face} ${text}`
  const known = remembered.get(key)
  if (known !== undefined) return known
  let visible = ''
  let before = ''
  for (const character of text.normalize('NFC').replace(LINE_ENDS, '\n')) {
    visible += visibleCharacter(character, before, face) ?? spelling(character, text)
    before = character
  }
  if (remembered.size > 5000) remembered.clear()
  remembered.set(key, visible)
  return visible
}

/** What is printed for a character, or null when it has to be spelled. */
function visibleCharacter(character: string, before: string, face: FaceName): string | null {
  if (character === '\n' || OWN_ISOLATE.test(character)) return character
  if (character === '\t') return ' '
  if (character === ZERO_WIDTH_SPACE) return character
  if (character === SOFT_HYPHEN) return ''
  if (/[\p{Cc}\p{Cs}]/u.test(character) || TYPED_CONTROL.test(character)) return null
  if (character === NON_JOINER) return isArabic(before) ? character : null
  return faceOfCharacter(character, face) === null ? null : character
}
