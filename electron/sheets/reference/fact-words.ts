import type { ChangeDay, SheetCondition, SheetRule } from '../../../shared-types/reference-fact.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { dayWords } from '../../analysis/dating/interval-words.ts'

/** A condition as printed: "body coupé or drophead, series Sedge". Names of other sheets stand as they are written. */
export function conditionWords(sheet: ReferenceSheet, condition: SheetCondition): string {
  return Object.entries(condition)
    .map(([reference, values]) => {
      const variable = sheet.variables.find(({ id }) => id === reference)
      const names = new Map(
        [...(variable?.values ?? []), ...(variable?.groups ?? [])].map(({ id, name }) => [id, name]),
      )
      return `${(variable?.name ?? reference).toLowerCase()} ${values.map((value) => names.get(value) ?? value).join(' or ')}`
    })
    .join(', ')
}

/** A day a change is known by, as printed. */
export const changeDayWords = (day: ChangeDay): string =>
  typeof day === 'string' ? dayWords(day) : `some day between ${dayWords(day.earliest)} and ${dayWords(day.latest)}`

/** A rule of a sheet in a sentence. */
export function ruleWords(sheet: ReferenceSheet, rule: SheetRule): string {
  const words = (condition: SheetCondition) => conditionWords(sheet, condition) || 'every car'
  switch (rule.kind) {
    case 'not built together':
      return `Never built: ${words(rule.when)}.`
    case 'requires':
      return `${words(rule.when)} goes with ${words(rule.needs)}.`
    case 'only from':
      return `${words(rule.when)} only from ${changeDayWords(rule.day)} on.`
    case 'only until':
      return `${words(rule.when)} only up to ${changeDayWords(rule.day)}.`
    case 'standard':
      return `${words({ [rule.variable]: [rule.value] })} was fitted to ${words(rule.on)} unless ordered otherwise.`
    case 'option':
      return `${words({ [rule.variable]: [rule.value] })} could be ordered for ${words(rule.on)}.`
  }
}
