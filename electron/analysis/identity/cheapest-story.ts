import type { IdentityEvidence, IdentityLiteral } from '../../../shared-types/identity-model.ts'
import { decibans } from './decibans.ts'
import { type EvidenceItem, likelihoodOf } from './evidence.ts'
import { type Reasoner, statementWeighings } from './reasoner.ts'
import { type How, tellStories } from './tell-stories.ts'
import { buildOf, heaviestWays, type WeighedWay } from './weighed-ways.ts'
import { product, type Weighing } from './weighing.ts'

/** What has to be granted for one observation in a story. */
export interface StoryStep {
  readonly id: string
  readonly how: How
  /** How far this lies behind the best that observation could have, decibans. */
  readonly decibansBehind: number
}

export interface Story {
  readonly build: { readonly [variable: string]: string }
  /** The account of what was built under which the story is told. */
  readonly account: string
  readonly steps: readonly StoryStep[]
  /** Doubtful facts the story says are wrong. */
  readonly factsWrong: readonly string[]
  /** Donors the story needs, with their kind. */
  readonly donors: readonly { readonly donor: string; readonly kind: string }[]
  /** How far the whole lies behind the best story of all, decibans; 0 for the best itself. */
  readonly decibansBehind: number
}

/** An observation with, for each cell, the likeliest single way it came about. */
interface ToldItem extends EvidenceItem {
  readonly how: readonly How[]
}

/**
 * The single most probable course of events under which every literal of `says` holds: one build, and one way for each
 * observation (as built, misread, replaced, off a donor, wrong); where marginals sum, a story takes the greatest.
 * @returns null when no build could be so and have shown the evidence.
 */
export function cheapestStory(
  reasoner: Reasoner,
  evidence: IdentityEvidence,
  items: readonly EvidenceItem[],
  says: readonly IdentityLiteral[],
): Story | null {
  const told = items.map((item) => toldItem(reasoner, evidence, item))
  const best = bestStory(reasoner, told, null)
  const wanted = bestStory(reasoner, told, statementWeighings(reasoner, says, 'story').holds)
  if (best === null || wanted === null) return null
  const { model } = reasoner.compiled
  const { way, account } = wanted
  const named = (variable: number) => model.variables[variable]?.values[way.values[variable] as number] ?? ''
  return {
    build: buildOf(reasoner.compiled, way),
    account,
    steps: told.map((item) => stepOf(reasoner, item, way)),
    factsWrong: [...model.doubtAt].filter(([, variable]) => named(variable) === 'fails').map(([id]) => id),
    donors: model.variables.flatMap(({ kind, name }, variable) =>
      kind === 'donor' && named(variable) !== 'none' ? [{ donor: name, kind: named(variable) }] : [],
    ),
    decibansBehind: Math.max(0, (10 / Math.LN10) * (best.log - wanted.log)),
  }
}

function toldItem({ compiled }: Reasoner, evidence: IdentityEvidence, item: EvidenceItem): ToldItem {
  if (item.kind === 'claim' && item.repeats === null) {
    const says = evidence.claims.find(({ id }) => id === item.id)
    const literals = says?.says.length === 1 ? says.says[0]?.[1] : null
    const names = compiled.model.variables[item.variable]?.values ?? []
    const how = names.map(
      (name): How => ((literals?.includes(name) ?? name === 'yes') ? 'said so' : 'said though not so'),
    )
    return { ...item, how }
  }
  const reading = evidence.readings.find(({ id }) => id === item.id)
  const tell = compiled.model.tells[compiled.model.tellAt.get(reading?.tell ?? '') ?? -1]
  if (reading === undefined || tell === undefined)
    return { ...item, how: Array.from(item.likelihood, (each): How => (each === 1 ? 'as built' : 'misread')) }
  return { ...item, ...tellStories(tell, reading.seen, compiled.model) }
}

/** Powers of ten tried as a common factor on every variable, so that the weight of a long story stays in range. */
const POWERS = [0, 1, 2, 3, 4]

function bestStory({ compiled, priors }: Reasoner, told: readonly EvidenceItem[], only: Weighing | null) {
  const seen = likelihoodOf(compiled, told)
  const evidence = only === null ? seen : product(seen, only)
  let best: { readonly way: WeighedWay; readonly account: string; readonly log: number } | null = null
  for (const { id, share, total, weighing } of priors)
    for (const power of POWERS) {
      const factor = 10 ** power
      const own = product(weighing, evidence)
      const scaled = { ...own, values: own.values.map((values) => values.map((weight) => weight * factor)) }
      const [way] = heaviestWays(compiled, scaled, 1)
      if (way === undefined || way.weight < 1e-250) continue
      const log = Math.log((share * way.weight) / total) - own.values.length * Math.log(factor)
      if (log > (best?.log ?? Number.NEGATIVE_INFINITY)) best = { way, account: id, log }
      break
    }
  return best
}

function stepOf(
  { compiled }: Reasoner,
  { id, table, variable, likelihood, how }: ToldItem,
  way: WeighedWay,
): StoryStep {
  const value = way.values[variable] as number
  const donor = table === null ? 0 : (way.values[compiled.model.tables[table]?.scope[0] ?? 0] as number)
  const cell = donor * (compiled.model.variables[variable]?.values.length ?? 1) + value
  const greatest = likelihood.reduce((most, each) => Math.max(most, each), 0)
  return {
    id,
    how: how[cell] ?? 'as built',
    decibansBehind: Math.max(0, decibans(greatest / (likelihood[cell] as number))),
  }
}
