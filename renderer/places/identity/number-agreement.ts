import type { CarNumber } from '../../../shared-types/car.ts'

/** How a number found on the car stands to the number on paper. */
export type AgreementWord =
  | 'agrees'
  | 'agrees as far as read'
  | 'differs'
  | 'not found'
  | 'not looked for'
  | 'not read on the car'
  | 'nothing on paper'

export interface Agreement {
  readonly word: AgreementWord
  /** What was compared and where it parts; empty when the word says it all. */
  readonly detail: string
}

/** The letters that are compared: composed (Unicode NFC), spaces of every kind left out, capitals kept. */
const letters = (text: string): string[] => [...text.normalize('NFC').replace(/\s/gu, '')]

/** Stands for one letter that could not be read. */
export const UNREADABLE = '?'

const mayBe = (letter: string | undefined, read: string | undefined): boolean =>
  letter === read || (read === UNREADABLE && letter !== undefined)

function whereTheyPart(paper: string[], read: string[]): string {
  const at = paper.findIndex((letter, index) => !mayBe(letter, read[index]))
  if (at >= 0 && at < read.length) return `letter ${at + 1}: ${paper[at]} on paper, ${read[at]} as read`
  const more = Math.abs(paper.length - read.length)
  const longer = paper.length > read.length ? 'on paper' : 'as read'
  return `${more} ${more === 1 ? 'letter' : 'letters'} more ${longer}`
}

/**
 * Compares a number on paper with the number as read, letter for letter; only spaces are ignored. A question mark as read
 * is one letter that could not be read: it differs from none and agrees with none.
 * What was told, or copied from paper, is no reading of the car and is not compared.
 */
export function agreementOf(number: Pick<CarNumber, 'howRead' | 'asRead' | 'onPaper'>): Agreement {
  if (number.howRead === 'not looked for' || number.howRead === 'not found') return { word: number.howRead, detail: '' }
  if (number.howRead === 'told' || number.howRead === 'from paper') {
    return { word: 'not read on the car', detail: number.howRead }
  }
  const read = letters(number.asRead)
  if (read.length === 0) return { word: 'not read on the car', detail: 'nothing written as read' }
  const paper = letters(number.onPaper)
  if (paper.length === 0) return { word: 'nothing on paper', detail: '' }
  if (paper.join('') === read.join('')) return { word: 'agrees', detail: `${read.length} letters` }
  const unread = read.filter((letter) => letter === UNREADABLE).length
  if (unread === read.length) return { word: 'not read on the car', detail: 'no letter of it could be read' }
  if (paper.length === read.length && paper.every((letter, at) => mayBe(letter, read[at]))) {
    return {
      word: 'agrees as far as read',
      detail: `${read.length - unread} of ${read.length} letters; ${unread} could not be read`,
    }
  }
  const onlyCapitals = paper.join('').toLowerCase() === read.join('').toLowerCase()
  return { word: 'differs', detail: `${whereTheyPart(paper, read)}${onlyCapitals ? '; only in capitals' : ''}` }
}
