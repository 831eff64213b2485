import type { ComputationInput, ComputationOutput } from '../../../shared-types/computations.ts'
import type { IdentityEvidence, IdentityModel } from '../../../shared-types/identity-model.ts'
import { dateVariableOf } from '../../sheets/reference/date-literals.ts'
import type { SheetNames } from '../../sheets/reference/sheet-names.ts'
import { computeAside } from '../computing/compute-aside.ts'
import type { NumberRead } from '../identity-numbers.ts'
import type { KnownInterchange } from './carriers.ts'
import type { FactOnPart } from './part-facts.ts'

export type AskedAnswer = ComputationOutput<'tell-shares'>['answers'][number]
type Question = ComputationInput<'tell-shares'>['questions'][number]

/** What the engine says: of cars as built, of this car without what was read on a set of parts, of cars like a carrier. */
export interface AskedShares {
  readonly before: AskedAnswer
  /** What is left when nothing read on the parts of this set is counted. */
  readonly without: (set: string) => AskedAnswer
  /** Null where no build of the sheet is like that carrier. */
  readonly like: (carrier: string) => AskedAnswer | null
}

/** The name the thread knows the model by, and the folder where what is compiled of it is kept; null for nowhere. */
export interface KeptModel {
  readonly key: string
  readonly shelf: string | null
}

/** What was read on the car, and which of it on the parts of each set. */
interface ReadOnCar {
  readonly evidence: IdentityEvidence
  readonly bySet: ReadonlyMap<string, ReadonlySet<string>>
}

/**
 * What was read on the parts of each set: tells by their ids, and numbers that stand on them or for a tell of theirs. It is
 * left out where it is asked what those parts should be.
 */
export function readBySet(
  facts: readonly FactOnPart[],
  numbers: readonly NumberRead[],
  setOf: (fact: FactOnPart) => { readonly key: string },
): ReadonlyMap<string, ReadonlySet<string>> {
  const read = new Map<string, Set<string>>()
  for (const fact of facts) {
    const { key } = setOf(fact)
    const own = read.get(key) ?? new Set<string>()
    read.set(key, own)
    if (fact.kind === 'tell' && fact.seen !== null) own.add(fact.id)
    for (const { id, of, standsFor } of numbers) {
      const onPart = fact.kind === 'number' && of.number === fact.number
      if (onPart || (fact.kind === 'tell' && standsFor.includes(fact.id))) own.add(id)
    }
  }
  return read
}

/**
 * Asks everything in one go, in the thread for long computations; null when what was seen is impossible together, since
 * there are then no weights.
 */
export async function askShares(
  model: IdentityModel,
  { evidence, bySet }: ReadOnCar,
  facts: readonly FactOnPart[],
  interchange: readonly KnownInterchange[],
  names: SheetNames,
  kept: KeptModel,
): Promise<AskedShares | null> {
  const dates = names.sheets.flatMap((sheet) => dateVariableOf(names, sheet)?.key ?? [])
  const tells = facts.flatMap((fact) => (fact.kind === 'tell' ? [fact] : []))
  const variables = [...new Set([...tells.map(({ tell }) => tell.variable), ...dates])]
  const numbers = facts.flatMap((fact) => (fact.kind === 'number' ? [fact] : []))
  const statements = [
    ...numbers.flatMap(({ id, values }) => values.map((value) => ({ id: `${id} ${value.id}`, says: value.says }))),
    ...interchange.map(({ id, on }) => ({ id, says: on })),
  ]
  const open = { variables, statements, beforeLooking: false, without: [], given: [] }
  const looked = tells.filter(({ seen }) => seen !== null)
  const carriers = interchange.flatMap(({ part, carriers: some }) => {
    const own = looked.filter((fact) => fact.part === part).map(({ tell }) => tell.variable)
    return own.length === 0 ? [] : some.map(({ id, alike }) => ({ id, alike, own }))
  })
  const questions: Question[] = [
    { ...open, id: 'before', beforeLooking: true },
    { ...open, id: 'all' },
    ...[...bySet].flatMap(([set, some]) =>
      some.size === 0 ? [] : [{ ...open, id: `without ${set}`, without: [...some] }],
    ),
    ...carriers.map(({ id, alike, own }) => ({
      ...open,
      id: `like ${id}`,
      variables: [...new Set(own)],
      statements: [],
      beforeLooking: true,
      given: [...alike],
    })),
  ]
  const answers = await answersTo(model, evidence, questions, kept)
  const byId = new Map(answers.map((answer) => [answer.id, answer]))
  const before = byId.get('before')
  const all = byId.get('all')
  if (before?.possible !== true || all?.possible !== true) return null
  return {
    before,
    without: (set) => byId.get(`without ${set}`) ?? all,
    like: (carrier) => {
      const answer = byId.get(`like ${carrier}`)
      return answer?.possible === true ? answer : null
    },
  }
}

/** The last answers for each model: what is written of parts alone changes no weight, and is not computed anew. */
const known = new WeakMap<IdentityModel, { readonly key: string; readonly answers: Promise<readonly AskedAnswer[]> }>()

function answersTo(
  model: IdentityModel,
  evidence: IdentityEvidence,
  questions: readonly Question[],
  { key: modelKey, shelf }: KeptModel,
): Promise<readonly AskedAnswer[]> {
  const key = JSON.stringify([evidence, questions])
  const same = known.get(model)
  if (same?.key === key) return same.answers
  const asked = { model, evidence, questions }
  const keeps = { field: 'model', key: modelKey }
  const answers = computeAside('tell-shares', asked, { keeps, shelf }).then((found) => found.answers)
  known.set(model, { key, answers })
  // A fault is not kept: the next to ask computes anew.
  answers.catch(() => {
    if (known.get(model)?.answers === answers) known.delete(model)
  })
  return answers
}
