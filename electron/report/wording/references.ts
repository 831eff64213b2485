import type { PanelDefinition } from '../../../shared-types/panel.ts'
import { NARROW } from './numbers.ts'

/** Names of places in the report that links lead to. */
export const place = {
  section: (name: string) => `section:${name}`,
  finding: (number: number) => `finding:${number}`,
  exhibit: (number: number) => `exhibit:${number}`,
  panel: (id: string) => `panel:${id}`,
  planRow: (id: string) => `plan:${id}`,
  sheet: (id: string) => `sheet:${id}`,
  claim: (number: number) => `claim:${number}`,
  correction: (number: number) => `correction:${number}`,
  spot: (number: number) => `spot:${number}`,
  gauge: (number: number) => `gauge:${number}`,
  carNumber: (number: number) => `carNumber:${number}`,
  part: (id: string) => `part:${id}`,
} as const

/** Words of a reference: "E 38", with a narrow no-break space. */
export const numbered = (letter: string, number: number): string => `${letter}${NARROW}${number}`

/** What a part of this id is called: the list's name, its side in words, its number. */
export function partSuffix(partId: string): string {
  const suffix = /\.([LR]|[1-9][0-9]?)$/.exec(partId)?.[1]
  if (suffix === undefined) return ''
  return suffix === 'L' ? ', left' : suffix === 'R' ? ', right' : `, no. ${suffix}`
}

/** Sheets of the plan on which a panel of this phase is drawn. */
export const phaseName: Readonly<Record<PanelDefinition['phase'], string>> = {
  1: 'outside',
  2: 'openings',
  3: 'inside',
  4: 'underneath',
}
