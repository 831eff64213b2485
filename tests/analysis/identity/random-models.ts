import {
  type IdentityEvidence,
  type IdentityLiteral,
  type IdentityModel,
  identityEvidence,
  identityModel,
} from '../../../shared-types/identity-model.ts'

/** A repeatable source of numbers: mulberry32 (T. Ettinger, public domain). */
export interface Chance {
  unit(): number
  below(count: number): number
  yes(share: number): boolean
  pick<T>(from: readonly T[]): T
  some<T>(from: readonly T[], least?: number): T[]
}
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0
  const unit = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
  const below = (count: number) => Math.floor(unit() * count)
  const pick = <T>(from: readonly T[]): T => from[below(from.length)] as T
  const some = <T>(from: readonly T[], least = 1): T[] => {
    const left = [...from]
    const wanted = least + below(Math.max(1, from.length - least))
    return Array.from({ length: Math.min(wanted, from.length) }, () => left.splice(below(left.length), 1)[0] as T)
  }
  return { unit, below, yes: (share) => unit() < share, pick, some }
}

type Variables = IdentityModel['variables']

const literalOn = (chance: Chance, { name, values }: Variables[number]): IdentityLiteral => [name, chance.some(values)]

const shares = (chance: Chance, values: readonly string[]): Record<string, number> => {
  const raw = values.map(() => (chance.yes(0.15) ? 0 : chance.unit()))
  const sum = raw.reduce((total, each) => total + each, 0)
  return Object.fromEntries(values.map((value, at) => [value, sum > 0 ? (raw[at] ?? 0) / sum : 1 / values.length]))
}

const cells = (variables: Variables, scope: readonly string[]) =>
  scope.reduce((count, name) => count * (variables.find((each) => each.name === name)?.values.length ?? 1), 1)

/** A small model with everything a model can have. It may be one whose rules forbid every build. */
export function randomModel(seed: number): IdentityModel {
  const chance = chanceFrom(seed)
  const variables = Array.from({ length: 2 + chance.below(5) }, (_, at) => ({
    name: `v${at}`,
    values: Array.from({ length: 1 + chance.below(4) }, (_value, own) => `${at}.${own}`),
  }))
  const names = variables.map(({ name }) => name)
  const doubts = Array.from({ length: chance.below(3) }, (_, at) => ({
    id: `d${at}`,
    holds: 0.1 + 0.89 * chance.unit(),
  }))
  const donors = chance.yes(0.4)
    ? [
        {
          id: 'donor',
          kinds: Array.from({ length: 1 + chance.below(2) }, (_, at) => ({ id: `k${at}`, share: 0.3 * chance.unit() })),
        },
      ]
    : []
  const tells = Array.from({ length: 1 + chance.below(4) }, (_, at) => {
    const own = chance.pick(variables)
    if (chance.yes(0.3)) {
      const outcomes = Array.from({ length: 1 + chance.below(3) }, (_outcome, each) => `o${each}`)
      const likelihood = Object.fromEntries(own.values.map((value) => [value, Object.values(shares(chance, outcomes))]))
      return { id: `t${at}`, variable: own.name, reads: { kind: 'direct', outcomes, likelihood } }
    }
    return {
      id: `t${at}`,
      variable: own.name,
      effort: 1 + chance.below(5),
      reads: {
        kind: 'part',
        replaced: 0.3 * chance.unit(),
        service: shares(chance, own.values),
        wrong: chance.yes(0.3) ? 0 : 0.1 * chance.unit(),
        misread: chance.yes(0.5)
          ? 0.2 * chance.unit()
          : Object.fromEntries(own.values.map((value) => [value, shares(chance, own.values)])),
        donor: donors.length > 0 && chance.yes(0.6) ? 'donor' : null,
      },
    }
  })
  return identityModel.parse({
    variables,
    doubts,
    rules: Array.from({ length: chance.below(7) }, (_, at) => ({
      id: `r${at}`,
      ifs: chance
        .some(variables, 0)
        .slice(0, 2)
        .map((own) => literalOn(chance, own)),
      thenAny: chance
        .some(variables, 1)
        .slice(0, 2)
        .map((own) => literalOn(chance, own)),
      doubt: doubts.length > 0 && chance.yes(0.4) ? chance.pick(doubts).id : null,
    })),
    tables: Array.from({ length: chance.below(4) }, (_, at) => {
      const scope = chance.some(names, 1).slice(0, 3)
      const weights = Array.from({ length: cells(variables, scope) }, () =>
        chance.yes(0.1) ? 0 : 0.01 + chance.unit(),
      )
      return { id: `w${at}`, scope, weights: weights.some((weight) => weight > 0) ? weights : weights.map(() => 1) }
    }),
    accounts: chance.yes(0.5)
      ? Array.from({ length: 1 + chance.below(3) }, (_, at) => {
          const scope = chance.some(names, 1).slice(0, 2)
          return {
            id: `a${at}`,
            reliability: 0.1 + chance.unit(),
            tables: [
              {
                id: `c${at}`,
                scope,
                counts: Array.from({ length: cells(variables, scope) }, () => 1 + chance.below(900)),
              },
            ],
          }
        })
      : [],
    donors: donors.map(({ id, kinds }) => ({
      id,
      kinds: kinds.map((kind) => ({
        ...kind,
        fitted: Object.fromEntries(
          tells.flatMap((tell) => {
            const own = variables.find(({ name }) => name === tell.variable)
            return 'donor' in tell.reads && tell.reads.donor === id && own !== undefined && chance.yes(0.8)
              ? [[tell.id, shares(chance, own.values)]]
              : []
          }),
        ),
      })),
    })),
    tells,
  })
}

/** Evidence about a model, possibly impossible. */
export function randomEvidence(model: IdentityModel, seed: number): IdentityEvidence {
  const chance = chanceFrom(seed ^ 0x5eed)
  const outcomesOf = (tell: IdentityModel['tells'][number]) =>
    tell.reads.kind === 'direct'
      ? tell.reads.outcomes
      : (model.variables.find(({ name }) => name === tell.variable)?.values ?? [])
  return identityEvidence.parse({
    readings: chance.some(model.tells, 0).map((tell, at) => {
      const outcomes = outcomesOf(tell)
      const seen = chance.yes(0.7)
        ? { [chance.pick(outcomes)]: 1 }
        : Object.fromEntries(outcomes.map((outcome) => [outcome, 0.05 + chance.unit()]))
      return { id: `reading${at}`, tell: tell.id, seen }
    }),
    observations: Array.from({ length: chance.below(3) }, (_, at) => {
      const { name, values } = chance.pick(model.variables)
      const likelihood = Object.fromEntries(values.map((value) => [value, chance.yes(0.2) ? 0 : chance.unit()]))
      return { id: `observation${at}`, variable: name, likelihood: { ...likelihood, [chance.pick(values)]: 0.5 } }
    }),
    claims: Array.from({ length: chance.below(3) }, (_, at) => ({
      id: `claim${at}`,
      says: chance
        .some(model.variables, 1)
        .slice(0, 3)
        .map((own) => literalOn(chance, own)),
      saidWhenTrue: 0.3 + 0.7 * chance.unit(),
      saidWhenFalse: 0.7 * chance.unit(),
      repeats: at > 0 && chance.yes(0.3) ? 'claim0' : null,
    })),
  })
}
