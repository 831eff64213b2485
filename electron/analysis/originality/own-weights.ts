import { capital } from '../../../shared-types/capital.ts'
import type { CountedPart, WeighedPanel } from '../../../shared-types/computations.ts'
import {
  type OwnWeight,
  type Weighable,
  type WeighedSort,
  type WeightFound,
  weighedThing,
} from '../../../shared-types/own-weight.ts'
import { walkLayerWords } from '../../../shared-types/words.ts'
import { dayWords } from '../dating/interval-words.ts'

/** How many times a thing counts, and the weights of the user's that make it so; 1 and none where none is set. */
export interface Weight {
  readonly factor: number
  readonly by: readonly OwnWeight[]
}

/** What the user's weights come to for panels and parts. */
export interface Weighing {
  readonly panel: (panel: WeighedPanel) => Weight
  readonly part: (part: CountedPart) => Weight
}

type Key = readonly [WeighedSort, string]
const panelKeys = (panel: WeighedPanel): readonly Key[] => [
  ['body area', panel.bodyArea],
  ['layer', panel.layer],
]
const partKeys = (part: CountedPart): readonly Key[] => [['group of parts', part.group]]

/** Looks up the user's weights: one of the thing itself stands alone, else those of what it belongs to are multiplied. */
export function weighing(set: readonly OwnWeight[]): Weighing {
  const byKey = new Map(set.map((weight) => [weight.weighs, weight]))
  const of = (own: Key, wider: readonly Key[]): Weight => {
    const found = (key: Key): readonly OwnWeight[] => {
      const weight = byKey.get(key.join('/'))
      return weight === undefined ? [] : [weight]
    }
    const alone = found(own)
    const by = alone.length > 0 ? alone : wider.flatMap(found)
    return { factor: by.reduce((product, { factor }) => product * factor, 1), by }
  }
  return {
    panel: (panel) => of(['panel', panel.id], panelKeys(panel)),
    part: (part) => of(['part', part.id], partKeys(part)),
  }
}

/** Everything a weight can be set for, by the names of this car: areas, layers, panels, groups of parts, parts; each once. */
export function weighable(panels: readonly WeighedPanel[], parts: readonly CountedPart[]): readonly Weighable[] {
  const counted = parts.filter(({ leftOut }) => leftOut === null)
  const thing = (sort: WeighedSort, id: string, label: string): Weighable => ({ weighs: `${sort}/${id}`, sort, label })
  const all = [
    ...panels.map(({ bodyArea }) => thing('body area', bodyArea, capital(bodyArea))),
    ...panels.map(({ layer }) => thing('layer', layer, `Panels, ${walkLayerWords[layer]}`)),
    ...panels.map(({ id, label }) => thing('panel', id, label)),
    ...counted.map(({ group, groupLabel }) => thing('group of parts', group, groupLabel)),
    ...counted.map(({ id, label }) => thing('part', id, label)),
  ]
  return [...new Map(all.map((each) => [each.weighs, each])).values()]
}

/** The user's weights by the names of this car, in the order of what can be weighed; `things` counts what each one weighs. */
export function weightsFound(
  set: readonly OwnWeight[],
  panels: readonly WeighedPanel[],
  parts: readonly CountedPart[],
): readonly WeightFound[] {
  const weighs = weighing(set)
  const inUse = [...panels.map(weighs.panel), ...parts.map(weighs.part)].flatMap(({ by }) => by)
  const known = weighable(panels, parts)
  const place = ({ weighs: key }: OwnWeight) => known.findIndex((each) => each.weighs === key)
  return set
    .toSorted((one, other) => place(one) - place(other))
    .map((weight) => {
      const { sort, id } = weighedThing(weight.weighs)
      const label = known[place(weight)]?.label ?? id
      return { ...weight, sort, label, things: inUse.filter((each) => each === weight).length }
    })
}

/** A factor as printed: 2, 0.25. */
export const factorWords = (factor: number): string => String(Number(factor.toFixed(4)))

/** Who set what a thing weighs, and why; null where nobody did. */
export function weightSource({ factor, by }: Weight): string | null {
  if (by.length === 0) return null
  const set = by.map(({ setBy, setAt, reason }) =>
    [`${setBy === '' ? 'the user' : setBy}, ${dayWords(setAt.slice(0, 10))}`, ...(reason === '' ? [] : [reason])].join(
      ': ',
    ),
  )
  return `weight ${factorWords(factor)} set by ${set.join('; ')}`
}
