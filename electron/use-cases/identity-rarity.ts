import type { IdentityAnswer } from '../../shared-types/identity-answer.ts'
import type { IdentityLiteral } from '../../shared-types/identity-model.ts'
import type { NamedValue, RarityView } from '../../shared-types/identity-more.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import { accountName, valueName } from './identity-words.ts'

/** A value that holds as much of the weight is taken as what this car is, for counting cars like it. */
const SETTLED = 0.9
/** Most things cars can be counted by at once, as the engine takes. */
const MOST_OPTIONS = 20
/** How the sheets' compiler names a variable that only says in which counted group another's value lies. */
const GROUPED = ' as counted in '

/** What the counts of the sheets are counts of, with what is settled of this car. */
export interface Counted {
  readonly settled: readonly IdentityLiteral[]
  readonly notSettled: readonly string[]
}

const printed = (compiled: CompiledSheets, variable: string): string =>
  compiled.nameOf(variable.split(GROUPED)[0] ?? variable)

/** Of everything that is counted, the value this car has where one is settled. */
export function whatIsCounted(compiled: CompiledSheets, answer: IdentityAnswer): Counted {
  const scopes = (compiled.model?.accounts ?? []).flatMap(({ tables }) => tables.flatMap(({ scope }) => scope))
  const settled: IdentityLiteral[] = []
  const notSettled: string[] = []
  for (const name of new Set(scopes)) {
    const [value, share] = Object.entries(answer.posterior?.variables[name] ?? {}).reduce(
      (best, each) => (each[1] > best[1] ? each : best),
      ['', 0],
    )
    if (share >= SETTLED && settled.length < MOST_OPTIONS) settled.push([name, [value]])
    else notSettled.push(printed(compiled, name))
  }
  return { settled, notSettled: [...new Set(notSettled)] }
}

/** The engine's range in words; nothing is multiplied, and nothing is said of how many are left. */
export function rarityView(
  compiled: CompiledSheets,
  found: NonNullable<IdentityAnswer['rarity']>,
  { settled, notSettled }: Counted,
): RarityView {
  const like = settled.map(
    ([name, [value = '']]): NamedValue => ({
      variable: printed(compiled, name),
      value: valueName(compiled, name, value),
    }),
  )
  const accounts = found.accounts.map(({ account, low, high, all, notCounted }) => ({
    source: accountName(compiled, account),
    low,
    high,
    all,
    notCounted: notCounted.map((name) => printed(compiled, name)),
  }))
  const { low, high, boundsOnly, neverBuilt } = found
  return { low, high, like, notSettled, accounts, boundsOnly, neverBuilt, words: rarityWords(found) }
}

function rarityWords({ low, high, boundsOnly, neverBuilt }: NonNullable<IdentityAnswer['rarity']>): string {
  if (neverBuilt) return 'None was built like this: the rules of the sheets forbid it.'
  if (low === null || high === null) return 'No source of the sheets counts cars like this.'
  const number = low === high ? `${low}` : `${low} to ${high}`
  const bounds = boundsOnly
    ? ' These are bounds only: what was counted apart can overlap wholly or not at all, and shares are not multiplied.'
    : ''
  return `${number} were built like this, over all sources.${bounds} How many are left is not known.`
}
