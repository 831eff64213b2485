import type { BodyStyle, NameChoice } from '../../../shared-types/words.ts'

const words: { readonly [B in BodyStyle]: { readonly uk: string; readonly us: string } } = {
  coupe: { uk: 'coupé', us: 'coupe' },
  saloon2: { uk: 'two-door saloon', us: 'two-door sedan' },
  saloon4: { uk: 'four-door saloon', us: 'four-door sedan' },
  convertible: { uk: 'drophead', us: 'convertible' },
  estate: { uk: 'estate car', us: 'station wagon' },
  pickup: { uk: 'pick-up', us: 'pickup' },
  van: { uk: 'van', us: 'panel van' },
}

/** Order in which bodies are offered. */
export const bodiesOffered = Object.keys(words) as BodyStyle[]

/** A body style in the chosen English. */
export const bodyWords = (body: BodyStyle, names: NameChoice): string => words[body][names]
