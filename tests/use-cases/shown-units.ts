import { readFileSync } from 'node:fs'
import type { ShownUnits } from '../../shared-types/units.ts'
import type { Survey } from './survey-program.ts'

export const INCHES: ShownUnits = { coatingUnit: 'mil', lengthUnit: 'in' }
/** A metric unit after a figure or by itself. */
export const METRIC = /µm|cm³|cm²|m²|mm²|(?<![\p{L}\d])[cm]m(?!\p{L})/u
const QUANTITY = /(\d(?:[\d.,;]|[\s–±×](?=\d))*)[\s\u202f\u00a0]?(µm|cm³|cm²|m²|mm²|[cm]m)(?!\p{L})/gu

/** All texts in an answer. */
export const textsIn = (answer: unknown): string[] => {
  if (typeof answer === 'string') return [answer]
  return typeof answer === 'object' && answer !== null ? Object.values(answer).flatMap(textsIn) : []
}

/** Has the open record told in those units from now on. */
export async function showIn({ program, ask }: Survey, units: ShownUnits): Promise<void> {
  const { commission } = program.record().view()
  await ask('commission.set', { commission: { ...commission, ...units } })
}

const even = (text: string): string => text.replace(/[\s\u202f\u00a0]+/gu, ' ')

/**
 * Takes quantities out of a text that somebody typed: what a person or a source wrote stays as it was written. What is left
 * is the program's own. Typed are a record's texts, the demonstration's sheet and the list of stud patterns.
 */
export function withoutTyped(record: unknown): (text: string) => string {
  const sources = ['reference-sheets/sedge.yaml', 'lists/stud-patterns.json'].map((path) =>
    readFileSync(new URL(`../../resources/${path}`, import.meta.url), 'utf8'),
  )
  const typed = new Set(
    [...textsIn(record), ...sources].flatMap((text) =>
      [...even(text).matchAll(QUANTITY)].map(([quantity]) => quantity),
    ),
  )
  return (text) => even(text).replace(QUANTITY, (quantity) => (typed.has(quantity) ? '' : quantity))
}
