import type { CoatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { FilmMixture } from './film-populations.ts'

/**
 * What the films of a car say, in words that never call anything original: a factory finish and a skilful strip and
 * refinish can read alike.
 */
export function filmWords(
  mixtures: readonly FilmMixture[],
  panels: readonly string[],
  { thickness }: CoatingMeasures,
): string[] {
  const likely = mixtures.reduce((best, mixture) => (mixture.weight > best.weight ? mixture : best))
  const caution =
    'A factory finish and a skilful strip and refinish can read alike; thickness alone does not tell them apart.'
  if (likely.populations.length === 1)
    return [
      `The films of all panels are compatible with one paint job (chance ${percent(likely.weight)} among the mixtures tried).`,
      caution,
    ]
  const groups = likely.populations.map(({ medianUm }, k) => {
    const members = panels.flatMap((panel, at) => {
      const chance = likely.membership[at]?.[k] ?? 0
      return chance >= 0.5 ? [`${panel} (${percent(chance)})`] : []
    })
    const names = members.length === 0 ? 'no panel more likely than not' : members.join(', ')
    return `About ${thickness.text(medianUm)}: compatible with ${names}.`
  })
  return [
    `The films are compatible with ${likely.populations.length} paint jobs (chance ${percent(likely.weight)} among the mixtures tried).`,
    ...groups,
    caution,
  ]
}

const percent = (chance: number): string => (chance > 0.995 ? 'over 99 %' : `${Math.round(100 * chance)} %`)
