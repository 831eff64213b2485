import type {
  PartDateReading,
  PartFact,
  PartGroup,
  PartReason,
  SupportRange,
} from '../../../shared-types/part-expectation.ts'
import type { PartState } from '../../../shared-types/words.ts'
import { intervalWords } from '../../analysis/dating/interval-words.ts'
import type { WeighedFact } from './weighed-facts.ts'

/** Ratio from which a word is suggested: the step "moderate" of the scale. */
const SETTLED = 10

/** Least that the range says for the factory, and against it; a decisive ratio counts as beyond any number. */
const sideOf = ({ low, high }: SupportRange, least: number): 'for the factory' | 'against the factory' | 'neither' => {
  if (low.supports === 'first' && (low.decisive || (low.likelihoodRatio ?? 1) >= least)) return 'for the factory'
  if (high.supports === 'second' && (high.decisive || (high.likelihoodRatio ?? 1) <= 1 / least))
    return 'against the factory'
  return 'neither'
}

/** Which way a range speaks at all, by the scale's first named step. */
export const speaks = (support: SupportRange | null) => (support === null ? 'neither' : sideOf(support, 2))

/**
 * A state word the facts of a part suggest, by the range of support of its group; null when they do not suffice. Facts
 * that only date the part and speak against, beside none of its type that does, make it the right type of a wrong date.
 */
export function suggestedState(support: SupportRange | null, facts: readonly PartFact[]): PartState | null {
  if (support === null) return null
  const side = sideOf(support, SETTLED)
  if (side === 'for the factory') return 'factory fitted'
  if (side === 'neither') return null
  const against = facts.filter((fact) => speaks(fact.support) === 'against the factory')
  return against.length > 0 && against.every(({ datesOnly }) => datesOnly) ? 'right type, wrong date' : 'later fitment'
}

const percent = (value: number): string => {
  if (value > 0 && value < 0.1) return 'under 0.1\u202f%'
  return value < 10 ? `${value.toFixed(1)}\u202f%` : `${Math.round(value)}\u202f%`
}

/** Values worth naming, heaviest first. */
export function expectedWords({ values }: PartFact, most = 3): string {
  const named = values.filter(({ now }) => now >= 0.005).slice(0, most)
  const [only] = named
  if (only !== undefined && only.now > 0.995) return only.name
  return named.map(({ name, now }) => `${name} (${percent(100 * now)})`).join(', ')
}

function factReason({ fact, unread }: WeighedFact): PartReason[] {
  if (fact.found === null) return []
  const expected = expectedWords(fact)
  const what = `${fact.name}: found ${fact.found}; expected ${expected === '' ? 'nothing the sheet names' : expected}.`
  if (unread !== null) return [{ words: `${what} ${unread}`, source: fact.source, speaks: 'neither' }]
  if (fact.ifFactoryPercent === null) return [{ words: what, source: fact.source, speaks: 'neither' }]
  const pool = fact.pool.map(({ label, matchingPercent }) => `${label} ${percent(matchingPercent)}`).join('; ')
  const chance = `Had the factory fitted it, ${percent(fact.ifFactoryPercent)} of such cars would show it; of the pool: ${pool}.`
  return [{ words: `${what} ${chance}`, source: fact.source, speaks: speaks(fact.support) }]
}

const dateReason = (date: PartDateReading): PartReason => ({
  words: `${date.asRead} read as ${date.grammar}${date.givenFor === null ? '' : ` (given for: ${date.givenFor})`}: ${intervalWords(date)}, ${date.agrees}.`,
  source: date.source,
  speaks: date.agrees === 'later than the car' ? 'against the factory' : 'neither',
})

const PARTS_OF_ONE_CAR = 'Parts off one other car would all look like this at once, so together they count once.'

/** The chain of reasons of a part: what was found, its dates, what it counts with, and what the facts leave open. */
export function reasonsFor(
  facts: readonly WeighedFact[],
  dates: readonly PartDateReading[],
  group: PartGroup | null,
  interchange: readonly PartReason[],
  suggestion: PartState | null,
): readonly PartReason[] {
  const counted: PartReason[] =
    group === null || group.parts.length < 2
      ? []
      : [
          {
            words: `Counted once with ${group.parts.slice(0, -1).join(', ')} and ${group.parts.at(-1)} (${group.words}). ${PARTS_OF_ONE_CAR}`,
            source: group.source,
            speaks: 'neither',
          },
        ]
  const weak: PartReason[] =
    suggestion === null && group !== null
      ? [
          {
            words:
              'It speaks one way, but not from end to end of its range by as much as 10 to 1: no word is suggested.',
            source: 'limit of the facts used',
            speaks: 'neither',
          },
        ]
      : []
  const open: PartReason[] =
    suggestion === 'later fitment' || suggestion === 'right type, wrong date'
      ? [
          {
            words:
              'Whether it came off another car, from stock or is a reproduction, these facts do not tell; nor when it was fitted.',
            source: 'limit of the facts used',
            speaks: 'neither',
          },
        ]
      : []
  return [...facts.flatMap(factReason), ...dates.map(dateReason), ...counted, ...interchange, ...weak, ...open]
}
