import { describe, expect, it } from 'vitest'
import { ConflictFinder } from '../../../electron/analysis/identity/conflicts.ts'
import { certainFacts } from '../../../electron/analysis/identity/hard-facts.ts'
import { indexModel } from '../../../electron/analysis/identity/index-model.ts'
import type { IdentityCertainty, IdentityModel } from '../../../shared-types/identity-model.ts'
import { publishedCases } from './published-cases.ts'
import { chanceFrom, randomModel } from './random-models.ts'

const finderFor = (model: IdentityModel, certain: readonly IdentityCertainty[]) => {
  const indexed = indexModel(model)
  return new ConflictFinder(indexed, certainFacts(indexed, certain))
}
const plain = (sets: readonly (readonly { readonly id: string }[])[]) =>
  sets
    .map((set) =>
      set
        .map(({ id }) => id)
        .sort()
        .join(' '),
    )
    .sort()

describe('worked cases', () => {
  it.each(publishedCases)('$id: all minimal conflicts and all minimal repairs', ({ model, evidence, expected }) => {
    const found = finderFor(model, evidence.certain).all()
    const sorted = (sets: readonly (readonly string[])[]) => sets.map((set) => [...set].sort().join(' ')).sort()
    expect(plain(found.conflicts)).toEqual(sorted(expected.minimalConflicts))
    expect(plain(found.repairs)).toEqual(sorted(expected.minimalRepairs))
    expect(found.complete).toBe(true)
  })
})

/** Of every build whose weight is not 0 the names of the rules and certainties it fulfils, by going through all builds. */
function fulfilledByBuilds(
  model: IdentityModel,
  certain: readonly IdentityCertainty[],
): readonly ReadonlySet<string>[] {
  const builds = model.variables.reduce<Record<string, string>[]>(
    (found, { name, values }) => found.flatMap((build) => values.map((value) => ({ ...build, [name]: value }))),
    [{}],
  )
  const has = (build: Record<string, string>, [name, values]: readonly [string, readonly string[]]) =>
    values.includes(build[name] ?? '')
  const weightOf = (build: Record<string, string>, { scope, weights }: IdentityModel['tables'][number]) =>
    weights[
      scope.reduce((cell, name) => {
        const values = model.variables.find((variable) => variable.name === name)?.values ?? []
        return cell * values.length + values.indexOf(build[name] ?? '')
      }, 0)
    ] ?? 0
  return builds
    .filter((build) => model.tables.every((table) => weightOf(build, table) > 0))
    .map((build) => {
      const rules = model.rules.filter(
        ({ ifs, thenAny }) => ifs.some((each) => !has(build, each)) || thenAny.some((each) => has(build, each)),
      )
      const certainties = certain.filter(({ says }) => says.every((each) => has(build, each)))
      return new Set([...rules, ...certainties].map(({ id }) => id))
    })
}

describe('random models', () => {
  it('lists exactly the minimal sets that cannot stand, by trying every subset', () => {
    let [withConflicts, several] = [0, 0]
    for (let seed = 1; seed <= 250; seed++) {
      const model = randomModel(seed)
      const chance = chanceFrom(seed * 7)
      const certain = model.variables.slice(0, 3).map(({ name, values }, at) => ({
        id: `h${at}`,
        says: [[name, [chance.pick(values)]] as const],
      }))
      const fulfilled = fulfilledByBuilds(model, certain)
      if (fulfilled.length === 0) continue
      const ids = [...model.rules.map(({ id }) => id), ...certain.map(({ id }) => id)]
      const broken: string[][] = []
      const subsets = Array.from({ length: 2 ** ids.length }, (_, bits) => ids.filter((_id, at) => (bits >> at) & 1))
      for (const subset of subsets.sort((one, other) => one.length - other.length)) {
        if (broken.some((small) => small.every((id) => subset.includes(id)))) continue
        if (!fulfilled.some((names) => subset.every((id) => names.has(id)))) broken.push(subset)
      }
      const found = finderFor(model, certain).all()
      expect(found.complete).toBe(true)
      expect(plain(found.conflicts)).toEqual(broken.map((set) => [...set].sort().join(' ')).sort())
      // A repair meets every conflict, and is no longer one when anything of it is put back.
      for (const repair of found.repairs) {
        const gone = new Set(repair.map(({ id }) => id))
        expect(broken.every((set) => set.some((id) => gone.has(id)))).toBe(true)
        for (const back of gone)
          expect(broken.some((set) => set.every((id) => id === back || !gone.has(id)))).toBe(true)
      }
      if (broken.length > 0) withConflicts += 1
      if (broken.length > 1) several += 1
    }
    expect(withConflicts).toBeGreaterThan(60)
    expect(several).toBeGreaterThan(15)
  })
})
