import type { PartFact, SupportRange } from '../../../shared-types/part-expectation.ts'
import { type NumberWay, readSheetNumber } from '../../analysis/identity/read-sheet-number.ts'
import { supportOfParts } from '../../analysis/sampling/part-support.ts'
import { partDefinition } from '../../sheets/parts-list.ts'
import type { SheetNames } from '../../sheets/reference/sheet-names.ts'
import type { AskedShares } from './asked-shares.ts'
import type { KnownInterchange } from './carriers.ts'
import type { FactOnPart, NumberOnPart, TellOnPart } from './part-facts.ts'
import { poolOfNumber, poolOfTell, type WeighedSource } from './part-pool.ts'
import { ratioWords, supportWords } from './support-words.ts'
import { chanceIfFactory, expectedValues, ownShares } from './tell-readings-on-part.ts'
import type { TravelSet } from './travel-sets.ts'

/** A fact as shown, with what it was weighed by. */
export interface WeighedFact {
  readonly fact: PartFact
  readonly part: string
  readonly set: TravelSet
  /** Null when nothing was found that can be weighed. */
  readonly weighed: { readonly ifFactory: number; readonly pool: readonly WeighedSource[] } | null
  /** Why a number cannot be read by the sheet; null when it can, or none was found. */
  readonly unread: string | null
}

/** Support of some facts together, counted once: under each proposition the least probable stands for all. */
export function supportTogether(facts: readonly WeighedFact[]): SupportRange | null {
  const parts = facts.flatMap(({ fact, part, weighed }) =>
    weighed === null || weighed.pool.every(({ high }) => high === 0)
      ? []
      : [
          {
            id: `${part} ${fact.id}`,
            label: fact.name,
            group: 'together',
            ifFactory: unit(weighed.ifFactory),
            pool: weighed.pool.map(({ label, low, high, matching }) => ({
              label,
              low,
              high,
              matching: unit(matching),
            })),
          },
        ],
  )
  // What can be seen neither way says nothing of either.
  const possible = parts.filter(({ ifFactory, pool }) => ifFactory > 0 || pool.some(({ matching }) => matching > 0))
  if (possible.length === 0) return null
  const { low, high } = supportOfParts({ parts: possible })
  return { low, high, words: supportWords({ low, high }), ratio: ratioWords({ low, high }) }
}

/** Papers were not fitted by the factory; nothing is asked about their pool. */
const isDocument = (part: string): boolean => partDefinition(part)?.replacedInService === 'not-a-part'

/** A probability that rounding carried past its ends. */
const unit = (share: number): number => Math.min(1, Math.max(0, share))

/** What the sheets expect of each part and what was found there, each fact weighed. */
export function weighFacts(
  facts: readonly FactOnPart[],
  numberRead: (part: string) => string,
  asked: AskedShares,
  setOf: (fact: FactOnPart) => TravelSet,
  interchange: readonly KnownInterchange[],
  names: SheetNames,
): readonly WeighedFact[] {
  const told = new Set(facts.flatMap((fact) => (fact.kind === 'tell' && fact.seen !== null ? [fact.part] : [])))
  return facts.map((fact) =>
    fact.kind === 'tell'
      ? weighTell(fact, asked, setOf(fact), interchange, names)
      : weighNumber(fact, numberRead(fact.part), asked, setOf(fact), told.has(fact.part)),
  )
}

function weighTell(
  fact: TellOnPart,
  asked: AskedShares,
  set: TravelSet,
  interchange: readonly KnownInterchange[],
  names: SheetNames,
): WeighedFact {
  const { tell, source, datesOnly } = fact
  const now = ownShares(fact, asked.without(set.key).variables[tell.variable] ?? {})
  const before = ownShares(fact, asked.before.variables[tell.variable] ?? {})
  const weighed =
    fact.seen === null || isDocument(fact.part)
      ? null
      : { ifFactory: chanceIfFactory(fact, now), pool: poolOfTell(fact, asked, interchange, names) }
  const shown: Omit<PartFact, 'support'> = {
    id: fact.id,
    kind: 'tell',
    name: tell.tell.name,
    values: expectedValues(fact, before, now),
    source,
    found: foundWords(fact),
    datesOnly,
    ifFactoryPercent: weighed === null ? null : 100 * unit(weighed.ifFactory),
    pool: weighed?.pool ?? [],
  }
  return finished(shown, fact.part, set, weighed, null)
}

function finished(
  shown: Omit<PartFact, 'support'>,
  part: string,
  set: TravelSet,
  weighed: WeighedFact['weighed'],
  unread: string | null,
): WeighedFact {
  const alone: WeighedFact = { fact: { ...shown, support: null }, part, set, weighed, unread }
  return { ...alone, fact: { ...shown, support: supportTogether([alone]) } }
}

/** What was noted of a tell: its weightiest value, with a word where it is not simply seen. */
function foundWords({ tell, seen }: TellOnPart): string | null {
  if (seen === null) return null
  const all = Object.values(seen).reduce((sum, weight) => sum + weight, 0)
  const [best, second] = tell.values
    .map(({ id, name }) => ({ name, share: (seen[id] ?? 0) / all }))
    .toSorted((one, other) => other.share - one.share)
  if (best === undefined || all === 0) return null
  return second === undefined || second.share < 0.005 ? best.name : `rather ${best.name} than ${second.name}`
}

function weighNumber(
  fact: NumberOnPart,
  asRead: string,
  asked: AskedShares,
  set: TravelSet,
  told: boolean,
): WeighedFact {
  const shareIn = (statements: Readonly<Record<string, number>>, value: string) =>
    statements[`${fact.id} ${value}`] ?? 0
  const now = asked.without(set.key).statements
  const before = asked.before.statements
  const reading = asRead === '' ? null : readSheetNumber(asRead, fact.number)
  const chosen = new Set(reading?.ways.flatMap((way) => valuesChosen(way, fact.place)))
  const chance = (statements: Readonly<Record<string, number>>) =>
    [...chosen].reduce((sum, value) => sum + shareIn(statements, value), 0)
  // The tells of this part were read off the same marks: a number beside them is no second observation.
  const weighed =
    chosen.size > 0 && !told && !isDocument(fact.part)
      ? { ifFactory: unit(chance(now)), pool: poolOfNumber(fact, unit(chance(before))) }
      : null
  const shown: Omit<PartFact, 'support'> = {
    id: fact.id,
    kind: 'number',
    name: fact.name,
    values: fact.values
      .map(({ id, name }) => ({ id, name, before: shareIn(before, id), now: shareIn(now, id) }))
      .filter((value) => value.now > 0 || value.before > 0)
      .toSorted((one, other) => other.now - one.now),
    source: fact.source,
    found: asRead === '' ? null : asRead,
    datesOnly: false,
    ifFactoryPercent: weighed === null ? null : 100 * weighed.ifFactory,
    pool: weighed?.pool ?? [],
  }
  return finished(shown, fact.part, set, weighed, reading?.why ?? null)
}

/** Ids of the values one way of reading a number chooses at a place. */
const valuesChosen = ({ marks, sequences }: NumberWay, at: number): readonly string[] => [
  ...marks.flatMap(({ place, row }) => (place === at ? [String(row)] : [])),
  ...sequences.flatMap(({ place, stretch }) => (place === at && stretch !== null ? [String(stretch)] : [])),
]
