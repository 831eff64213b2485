import type { CarFeature } from './panel.ts'
import type { NameChoice } from './words.ts'

/** How a car has a feature; `present` is both sides where the feature has sides. */
export type FeatureState = CarFeature['usually']
export const featureStates: readonly FeatureState[] = ['absent', 'L', 'R', 'present']

/** How a car has a feature, read from the conditions its record keeps. */
export function featureState(conditions: readonly string[], id: string): FeatureState {
  const left = conditions.includes(`${id}.L`)
  const right = conditions.includes(`${id}.R`)
  if (conditions.includes(id) || (left && right)) return 'present'
  return left ? 'L' : right ? 'R' : 'absent'
}

const kept = (id: string, state: FeatureState): readonly string[] => {
  if (state === 'absent') return []
  return [state === 'present' ? id : `${id}.${state}`]
}

/** The conditions with one feature set; all others stay as they were. */
export function withFeature(conditions: readonly string[], id: string, state: FeatureState): string[] {
  return [...conditions.filter((said) => said.replace(/\.[LR]$/, '') !== id), ...kept(id, state)]
}

/** The conditions of a new record: what was chosen, and where nothing was, what cars of this body usually have. */
export function conditionsOf(
  features: readonly CarFeature[],
  chosen: Readonly<Record<string, FeatureState>>,
): string[] {
  return features.flatMap(({ id, usually }) => kept(id, chosen[id] ?? usually))
}

const sideWords: { readonly [S in FeatureState]: string } = {
  absent: 'none',
  L: 'on the left',
  R: 'on the right',
  present: 'on both sides',
}

/** A state in words, for a feature that has sides. */
export const stateWords = (state: FeatureState): string => sideWords[state]

/** What a car has, in words: "Spare wheel well; fuel filler flap on the left". */
export function featuresText(
  features: readonly CarFeature[],
  conditions: readonly string[],
  names: NameChoice,
): string {
  const had = features.flatMap((feature) => {
    const state = featureState(conditions, feature.id)
    if (state === 'absent') return []
    return [feature.onOneSide ? `${feature[names]} ${sideWords[state]}` : feature[names]]
  })
  return had.map((name, at) => (at === 0 ? name : name.charAt(0).toLowerCase() + name.slice(1))).join('; ')
}
