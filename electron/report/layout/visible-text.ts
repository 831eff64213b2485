import { type FaceName, typeface } from '../document/typeface.ts'

const LINE_ENDS = /\r\n?|[\u2028\u2029\v\f]/g
/** Characters that show nothing but are at home in ordinary text. */
const SILENT = new Set([0x200b, 0x00ad])
/** Turn the order of reading round without being seen; printed so that nothing hides behind them. */
const DIRECTION_CONTROL = /[\u200E\u200F\u061C\u202A-\u202E\u2066-\u2069]/u
const remembered = new Map<string, string>()

/** A character no shipped face can draw, as a reader can still look it up: `[U+1F600]`. */
export const codePointName = (codePoint: number): string =>
  `[U+${codePoint.toString(16).toUpperCase().padStart(4, '0')}]`

/**
 * Text as it can be printed in a face: line ends become `\n`, tabs a space, and every character the face cannot draw,
 * every control character and every hidden change of direction is spelled by its code point, never dropped.
 */
export function visibleText(text: string, face: FaceName): string {
  if (/^[\x20-\x7E]*$/.test(text)) return text
  const key = `${face} ${text}`
  const known = remembered.get(key)
  if (known !== undefined) return known
  const { covers } = coverage(face)
  let visible = ''
  for (const character of text.normalize('NFC').replace(LINE_ENDS, '\n')) {
    const codePoint = character.codePointAt(0) ?? 0
    if (character === '\n') visible += character
    else if (character === '\t') visible += ' '
    else if (SILENT.has(codePoint)) visible += codePoint === 0x200b ? '\u200B' : ''
    else if (/[\p{Cc}\p{Cs}]/u.test(character) || DIRECTION_CONTROL.test(character)) visible += codePointName(codePoint)
    else if (covers(codePoint)) visible += character
    else visible += codePointName(codePoint)
  }
  if (remembered.size > 5000) remembered.clear()
  remembered.set(key, visible)
  return visible
}

function coverage(face: FaceName): { covers(codePoint: number): boolean } {
  const own = typeface(face)
  return { covers: (codePoint) => own.covers(codePoint) }
}
