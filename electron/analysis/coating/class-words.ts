import type { CoatingFieldAnswer, PracticeRange } from '../../../shared-types/coating.ts'
import type { CoatingMeasures } from '../../../shared-types/coating-measures.ts'

type ClassShare = CoatingFieldAnswer['classes'][number]

/** From these chances on a class is named, and is not ruled out. Wording only. */
const NAMED = 0.5
const OPEN = 0.1

/** What the surface is compatible with, the most of it first; `lines` give every class that is not all but excluded with its figures. */
export function classWords(classes: readonly ClassShare[]): { readonly conclusion: string; readonly lines: string[] } {
  const most = classes.reduce<ClassShare | null>(
    (best, own) => (best === null || own.largestChance > best.largestChance ? own : best),
    null,
  )
  if (most === null) return { conclusion: '', lines: [] }
  const others = classes.filter((own) => own !== most)
  const besides = others.filter(({ presentChance }) => presentChance >= NAMED)
  const open = others.filter(({ presentChance }) => presentChance >= OPEN && presentChance < NAMED)
  const named = ({ name, presentChance }: ClassShare) => `${name} (chance ${percent(presentChance)})`
  return {
    conclusion: [
      `Compatible with ${most.name} on most of the surface (chance ${percent(most.largestChance)})`,
      ...(besides.length === 0 ? [] : [`, and on some of it with ${listed(besides.map(named))}`]),
      '.',
      ...(open.length === 0 ? [] : [` Not ruled out: ${listed(open.map(named))}.`]),
    ].join(''),
    lines: classes
      .filter(({ presentChance, highShare }) => presentChance >= 0.01 || highShare >= 0.01)
      .map(
        ({ name, share, lowShare, highShare, presentChance }) =>
          `${name}: ${percent(share)} of the surface (nine tenths of the draws: ${percent(lowShare)} to ${percent(highShare)}); chance that it is there at all ${percent(presentChance)}`,
      ),
  }
}

/** The ranges as printed: where each begins above the car's own film, on what basis, by whom and of which day. */
export function rangesWords(
  ranges: readonly PracticeRange[],
  carFilmUm: number,
  { thickness }: CoatingMeasures,
): string {
  const spans = ranges.map(({ name, fromAboveFilmUm }, at) => {
    const next = ranges[at + 1]?.fromAboveFilmUm ?? null
    const edge = (above: number) => thickness.text(carFilmUm + above)
    if (fromAboveFilmUm === null) return `${name} under ${next === null ? 'any' : edge(next)}`
    return `${name} from ${edge(fromAboveFilmUm)}`
  })
  const authors = [...new Set(ranges.map(({ author, date }) => `${author}, ${date}`))]
  return `Ranges for a car whose own film is about ${thickness.text(carFilmUm)}: ${spans.join('; ')}. Guidance by ${authors.join('; ')}; common practice, no source.`
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

/** A chance or share in whole per cent; never 0 or 100, which no draw can show. */
const percent = (chance: number): string => {
  if (chance > 0.995) return 'over 99 %'
  return chance < 0.005 ? 'under 1 %' : `${Math.round(100 * chance)} %`
}
