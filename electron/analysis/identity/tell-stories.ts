import type { IdentityTell } from '../../../shared-types/identity-model.ts'
import type { IndexedModel, IndexedTell } from './identity-model.ts'
import { tellLikelihood } from './tell-likelihood.ts'

/** How a reading can have come about. */
export type How =
  | 'as built'
  | 'misread'
  | 'replaced in service'
  | 'wrong'
  | 'off the donor'
  | 'said so'
  | 'said though not so'

/** For each cell (kind of donor by value, or value): the likeliest single way a reading came about, and its likelihood. */
export interface TellStories {
  readonly likelihood: Float64Array
  readonly how: readonly How[]
}

interface Chance {
  readonly how: How
  readonly likelihood: number
}

const likeliest = (chances: readonly Chance[]): Chance =>
  chances.reduce((best, chance) => (chance.likelihood > best.likelihood ? chance : best))

/** The ways a part read as `outcome` on a car built with `value`: every one by itself, where their sum is the likelihood. */
function waysOf(
  reads: Extract<IdentityTell['reads'], { kind: 'part' }>,
  values: readonly string[],
  value: string,
  outcome: string,
): readonly Chance[] {
  const even = values.length === 1 ? 0 : typeof reads.misread === 'number' ? reads.misread : null
  const row = typeof reads.misread === 'number' ? undefined : reads.misread[value]
  const read =
    even === null
      ? (row?.[outcome] ?? (row === undefined && outcome === value ? 1 : 0))
      : outcome === value
        ? 1 - even
        : even / (values.length - 1)
  const original = 1 - reads.replaced - reads.wrong
  return [
    { how: outcome === value ? 'as built' : 'misread', likelihood: original * read },
    { how: 'replaced in service', likelihood: reads.replaced * (reads.service[outcome] ?? 0) },
    { how: 'wrong', likelihood: reads.wrong / values.length },
  ]
}

/** The likeliest way of a reading for every cell. */
export function tellStories(
  own: IndexedTell,
  seen: { readonly [outcome: string]: number },
  model: IndexedModel,
): TellStories {
  const { tell, donor } = own
  const values = model.variables[own.variable]?.values ?? []
  const { outcomes, byKind } = tellLikelihood(own, model)
  const best = byKind.flatMap((rows, kind) =>
    rows.map((row, at) => {
      const value = values[at] as string
      const top = row.reduce((most, each) => Math.max(most, each), 0)
      const donorKind = model.source.donors.find(({ id }) => tell.reads.kind === 'part' && id === tell.reads.donor)
        ?.kinds[kind - 1]
      const offDonor = donor !== null && donorKind?.fitted[tell.id] !== undefined
      return likeliest(
        outcomes.flatMap((outcome, place): readonly Chance[] => {
          const weight = seen[outcome] ?? 0
          const whole = weight * (row[place] as number)
          if (offDonor) return [{ how: 'off the donor', likelihood: whole }]
          if (tell.reads.kind === 'direct')
            return [{ how: row[place] === top ? 'as built' : 'misread', likelihood: whole }]
          return waysOf(tell.reads, values, value, outcome).map(({ how, likelihood }) => ({
            how,
            likelihood: weight * likelihood,
          }))
        }),
      )
    }),
  )
  return { likelihood: Float64Array.from(best, ({ likelihood }) => likelihood), how: best.map(({ how }) => how) }
}
