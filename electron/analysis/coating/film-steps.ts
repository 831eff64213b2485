import type { CoatingMeasures } from '../../../shared-types/coating-measures.ts'
import { filmContrast } from './film-contrast.ts'
import type { PanelFilm } from './film-populations.ts'

/** Two films that are compared, and what joins them in words: "left and right front wing", "seam of door and sill". */
export interface FilmPair {
  readonly one: PanelFilm
  readonly other: PanelFilm
  readonly words: string
}

/**
 * Pairs of films that differ by more than one paint job does, each with its ratio and interval, and how many were compared.
 * `named` is what a pair is called: "pair", "seam".
 */
export function filmSteps(
  pairs: readonly FilmPair[],
  scatter: number,
  named: string,
  { thickness }: CoatingMeasures,
): string[] {
  const contrasts = pairs.map((pair) => ({ ...pair, ...filmContrast(pair.one, pair.other, scatter) }))
  const beyond = contrasts.filter(({ beyondOneJob }) => beyondOneJob)
  const rest = contrasts.length - beyond.length
  if (contrasts.length === 0) return [`No ${named} was read on both sides at two places or more.`]
  return [
    ...beyond.map(
      ({ words, one, other, ratio, low, high }) =>
        `${words}: ${thickness.text(Math.exp(one.meanLog))} against ${thickness.text(Math.exp(other.meanLog))}, a ratio of ${ratio.toFixed(2)} (${low.toFixed(2)} to ${high.toFixed(2)}, 95 %): more than panels of one paint job differ by.`,
    ),
    ...(rest === 0
      ? []
      : [
          `${beyond.length === 0 ? `${counted(rest, named)} compared: none differs` : `${counted(rest, `other ${named}`)} compared: none of them differs`} by more than panels of one paint job do.`,
        ]),
  ]
}

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`
