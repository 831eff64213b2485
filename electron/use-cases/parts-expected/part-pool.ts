import type { PoolSource } from '../../../shared-types/part-expectation.ts'
import type { SheetNames } from '../../sheets/reference/sheet-names.ts'
import type { AskedShares } from './asked-shares.ts'
import type { KnownInterchange } from './carriers.ts'
import { citedSource, type NumberOnPart, noComplaint, type TellOnPart } from './part-facts.ts'
import { chanceFitted, chanceOfSeen, ownShares } from './tell-readings-on-part.ts'

/** One source of the pool: shares of cars whose part came from there, and the chance that it looks like the one found. */
export interface WeighedSource extends PoolSource {
  readonly low: number
  readonly high: number
  readonly matching: number
}

const source = (label: string, low: number, high: number, matching: number, cited: string): WeighedSource => ({
  label,
  low,
  high,
  matching,
  lowPercent: 100 * low,
  highPercent: 100 * high,
  matchingPercent: 100 * matching,
  source: cited,
})

const NO_COUNT = 'how many came from there no source says'

/**
 * Where the part could have come from had the factory not fitted it. Where the sheet describes donors, they are the pool,
 * with what is fitted in service. Else used parts of other cars of the line and of every carrier of the interchange table
 * count besides what is fitted in service: how many nobody says, so each from none to as many as were replaced at all.
 */
export function poolOfTell(
  fact: TellOnPart,
  asked: AskedShares,
  interchange: readonly KnownInterchange[],
  names: SheetNames,
): readonly WeighedSource[] {
  const { tell, sheet } = fact
  const { replaced, travelsWith } = tell.tell
  const service =
    replaced === null || replaced.share === 0
      ? []
      : [source('fitted in service', replaced.share, replaced.share, chanceFitted(fact, replaced.by), fact.source)]
  const donor = travelsWith === null ? null : names.resolve(sheet, travelsWith, 'donor', [], noComplaint)
  const donors = (donor?.sheet.donors ?? [])
    .filter(({ id }) => id === donor?.id)
    .flatMap(({ kinds, source: cited }) =>
      kinds.flatMap(({ name, share, brings }) => {
        const own = Object.entries(brings).find(
          ([reference]) => names.resolve(donor?.sheet ?? sheet, reference, 'tell', [], noComplaint)?.key === fact.id,
        )?.[1]
        if (own === undefined) return []
        return [source(name, share, share, chanceFitted(fact, own), citedSource(donor?.sheet ?? sheet, cited))]
      }),
    )
  if (donors.length > 0) return [...donors, ...service]
  const most = replaced === null || replaced.share === 0 ? 1 : replaced.share
  const ofLine = asked.before.variables[tell.variable] ?? {}
  const line = source(
    `other cars of ${sheet.title}`,
    0,
    most,
    chanceOfSeen(fact, ownShares(fact, ofLine)),
    `as built, by the rules and counts of the sheet; ${NO_COUNT}`,
  )
  return [...service, line, ...carriersOf(fact, asked, interchange, most)]
}

/** Carriers of the interchange table: a part off one looks as on the builds of this line that carried the same. */
function carriersOf(
  fact: TellOnPart,
  asked: AskedShares,
  interchange: readonly KnownInterchange[],
  most: number,
): readonly WeighedSource[] {
  return interchange
    .filter(({ part }) => part === fact.part)
    .flatMap(({ carriers, source: cited }) =>
      carriers.flatMap(({ id, carrier }) => {
        const alike = asked.like(id)?.variables[fact.tell.variable]
        if (alike === undefined) return []
        return [source(carrier.line, 0, most, chanceOfSeen(fact, ownShares(fact, alike)), `${cited}; ${NO_COUNT}`)]
      }),
    )
}

/** A number is as frequent among other cars of the line as what it means. */
export const poolOfNumber = ({ sheet }: NumberOnPart, share: number): readonly WeighedSource[] => [
  source(`other cars of ${sheet.title}`, 0, 1, share, `as built, by the rules and counts of the sheet; ${NO_COUNT}`),
]
