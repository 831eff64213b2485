import type { ChangeDay, SheetNumber } from '../../../shared-types/reference-fact.ts'
import { plainNumber } from '../identity/read-sheet-number.ts'
import type { OpenInterval } from './interval-words.ts'

const firstOf = (day: ChangeDay | null): string | null => (day === null || typeof day === 'string' ? day : day.earliest)
const lastOf = (day: ChangeDay | null): string | null => (day === null || typeof day === 'string' ? day : day.latest)

/**
 * Days in which a number was given out, by the stretches of its sequence: one interval for each way to read it that a
 * dated stretch answers to. Empty when the number does not follow the form, or no stretch with days holds it.
 */
export function stretchesOf(asRead: string, { places, passOverSeparators }: SheetNumber): readonly OpenInterval[] {
  const plain = (text: string) => plainNumber(text, { passOverSeparators })
  const number = plain(asRead)
  const found: OpenInterval[] = []
  const follow = (place: number, at: number, days: readonly OpenInterval[]): void => {
    const here = places[place]
    if (here === undefined) {
      if (at === number.length) found.push(...days)
      return
    }
    if (here.kind === 'sequence') {
      const run = /^[0-9]*/.exec(number.slice(at, at + here.maxDigits))?.[0].length ?? 0
      for (let length = here.minDigits; length <= run; length += 1) {
        const value = Number(number.slice(at, at + length))
        const own = here.stretches
          .filter(({ first, last, from, until }) => value >= first && value <= last && (from ?? until) !== null)
          .map(({ from, until }) => ({ from: firstOf(from), to: lastOf(until) }))
        follow(place + 1, at + length, [...days, ...own])
      }
      return
    }
    const texts = here.kind === 'fixed' ? here.texts : here.rows.map(({ text }) => text)
    for (const text of texts.map(plain)) if (number.startsWith(text, at)) follow(place + 1, at + text.length, days)
    if (here.kind === 'fixed' && here.optional) follow(place + 1, at, days)
  }
  follow(0, 0, [])
  return found
}
