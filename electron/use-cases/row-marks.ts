import { type NumberedRegister, registerLetters } from '../../shared-types/record.ts'

/** A stable number as printed: "F 3", "E 12". */
export const rowMark = (register: NumberedRegister, number: number): string => `${registerLetters[register]} ${number}`

/** Marks in a row of words: "F 3, F 4 and C 1". */
export function listOfMarks(marks: readonly string[]): string {
  if (marks.length < 2) return marks.join('')
  return `${marks.slice(0, -1).join(', ')} and ${marks.at(-1)}`
}

/** First words of a long text, for a label of the journal. */
export function shortened(text: string, length = 60): string {
  const characters = Array.from(text.replace(/\s+/g, ' ').trim())
  return characters.length <= length ? characters.join('') : `${characters.slice(0, length - 1).join('')}…`
}
