import type { InterchangeRow, PartReason } from '../../../shared-types/part-expectation.ts'
import type { AskedShares } from './asked-shares.ts'
import { carrierWords, type KnownCarrier, type KnownInterchange } from './carriers.ts'
import type { FactOnPart, TellOnPart } from './part-facts.ts'
import { chanceOfSeen, ownShares } from './tell-readings-on-part.ts'

/**
 * What was read agrees with a row when parts of that row would show it at least as often as not; what only dates a part,
 * when as much as one in twenty would, since parts of one kind were made for years.
 */
const AGREES = { type: 0.5, date: 0.05 }

type Match = Pick<InterchangeRow, 'match' | 'because'>

/** Whether parts like a carrier's would show everything read on the part; null when nothing was, or none is alike. */
function agreesWith(looked: readonly TellOnPart[], carrier: KnownCarrier, asked: AskedShares): boolean | null {
  const like = asked.like(carrier.id)
  if (looked.length === 0 || like === null) return null
  return looked.every((fact) => {
    const all = Object.values(fact.seen ?? {}).reduce((sum, weight) => sum + weight, 0)
    const chance = chanceOfSeen(fact, ownShares(fact, like.variables[fact.tell.variable] ?? {}))
    return chance >= all * (fact.datesOnly ? AGREES.date : AGREES.type)
  })
}

function matchOf({ carriers }: KnownInterchange, looked: readonly TellOnPart[], asked: AskedShares): Match {
  const agreeing = carriers.flatMap((carrier) => agreesWith(looked, carrier, asked) ?? [])
  if (agreeing.length === 0) return { match: 'not seen', because: '' }
  const read = looked
    .map(({ tell, seen }) => {
      const [best] = tell.values.toSorted((one, other) => (seen?.[other.id] ?? 0) - (seen?.[one.id] ?? 0))
      return `${tell.tell.name}: ${best?.name ?? ''}`
    })
    .join('; ')
  return agreeing.includes(true)
    ? { match: 'agrees', because: `What was read is what this part shows. ${read}.` }
    : { match: 'differs', because: `This part would seldom show what was read. ${read}.` }
}

/** Every row of interchange as it stands to this car: whether it belongs to it, and whether what was found is that part. */
export function interchangeRows(
  interchange: readonly KnownInterchange[],
  facts: readonly FactOnPart[],
  asked: AskedShares | null,
  setOf: (fact: FactOnPart) => { readonly key: string },
  nameOf: (partId: string) => string,
): readonly InterchangeRow[] {
  return interchange.map((known) => {
    const own = facts.filter(({ part }) => part === known.part)
    const looked = own.flatMap((fact) => (fact.kind === 'tell' && fact.seen !== null ? [fact] : []))
    const { match, because } =
      asked === null ? { match: 'not seen' as const, because: '' } : matchOf(known, looked, asked)
    const [first] = own
    const answer = asked?.without(first === undefined ? '' : setOf(first).key)
    const belongs = answer?.statements[known.id]
    return {
      id: known.id,
      partId: known.part,
      partName: nameOf(known.part),
      name: known.row.name,
      on: known.onWords,
      belongsPercent: belongs === undefined || known.on.length === 0 ? null : 100 * belongs,
      match,
      because,
      carriers: known.carriers.map(({ carrier }) => carrier),
      source: known.source,
    }
  })
}

/** Rows that explain what was found on a part, as reasons: it is that part, and this car is not of those that carried it. */
export const interchangeReasons = (rows: readonly InterchangeRow[]): readonly PartReason[] =>
  rows
    .filter(({ match }) => match === 'agrees')
    .map(({ name, on, belongsPercent, carriers, source }) => ({
      words: `What was found is, by interchange, ${name} (${on}; ${belongsPercent === null ? 'the sheet names no builds for it' : percentOfBuilds(belongsPercent)}). Carried by: ${carriers.map(carrierWords).join(' ')}`,
      source,
      speaks: belongsPercent !== null && belongsPercent < 1 ? 'against the factory' : 'neither',
    }))

const percentOfBuilds = (percent: number): string =>
  percent < 1 ? 'under 1 % of the builds this car can be' : `${Math.round(percent)} % of the builds this car can be`
