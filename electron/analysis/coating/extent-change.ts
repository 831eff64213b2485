import type { CoatingFieldAnswer, CoatingFieldInput } from '../../../shared-types/coating.ts'
import type { CoatingChangeAnswer, CoatingChangeInput } from '../../../shared-types/coating-change.ts'
import type { ShownQuantity } from '../../../shared-types/coating-measures.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { changeTrust } from './change-trust.ts'
import { drawCoatingField } from './drawn-panel.ts'
import { extentAnswer, extentQuestion, shownExtent, type ToldExtentQuestion, trustOfExtent } from './extent-answer.ts'
import { extentDifference } from './extent-difference.ts'
import type { Extent } from './interval-shifts.ts'

type IntervalAnswer = CoatingFieldAnswer['fillerAreaM2']

/** One map: its draws of both extents, and what they rest on. */
interface Mapped {
  readonly draws: Readonly<Record<Extent, Float64Array>>
  readonly question: ToldExtentQuestion
}

/**
 * Filler of a panel before and after, with the difference and its own interval. Narrower or wider is said only where that
 * interval says so.
 * @throws ProblemError when either side has nothing to draw from.
 */
export function coatingChange({ before, after, seed }: CoatingChangeInput): CoatingChangeAnswer {
  const earlier = mapped(before)
  const later = mapped(after)
  const extents = (extent: Extent): CoatingChangeAnswer['areaM2'] => {
    const { change, verdict } = changeAnswer(extent, earlier, later, seed)
    return {
      before: extentAnswer(extent, earlier.draws[extent], earlier.question),
      after: extentAnswer(extent, later.draws[extent], later.question),
      change,
      verdict,
    }
  }
  return { areaM2: extents('area'), volumeCm3: extents('volume') }
}

function mapped(input: CoatingFieldInput): Mapped {
  if (!input.nodes.some(({ readable }) => readable))
    throw new ProblemError('rule-of-the-trade', 'Nothing of this panel can be read, so no change of it can be told.')
  const field = drawCoatingField(input, () => undefined)
  const { areaMm2, volumeMm3 } = field.extents
  return { draws: { area: areaMm2, volume: volumeMm3 }, question: extentQuestion(input, field) }
}

function changeAnswer(
  extent: Extent,
  before: Mapped,
  after: Mapped,
  seed: string,
): Pick<CoatingChangeAnswer['areaM2'], 'change' | 'verdict'> {
  const per = extent === 'area' ? 1e6 : 1000
  const difference = extentDifference(
    extent,
    { draws: before.draws[extent], question: before.question },
    { draws: after.draws[extent], question: after.question },
    `${seed} ${extent}`,
  )
  const [low, middle, high] = [difference.low / per, difference.middle / per, difference.high / per]
  const shown = shownExtent(extent, after.question.measures)
  const doubt = [before, after]
    .map(({ question }) => trustOfExtent(question, extent))
    .find(({ coverage }) => coverage === null)
  const trust = doubt ?? changeTrust([before.question.readings, after.question.readings], extent)
  const change = { low, middle, high, coverage: trust.coverage }
  if (trust.coverage === null)
    return {
      change: { ...change, words: `Not decided: ${between(change, shown)}; ${trust.reason}.` },
      verdict: 'not told',
    }
  if (high < 0) {
    const words = `Narrowed by ${shown.text(-middle)} (${shown.span(-high, -low)}, ${trust.called}).`
    return { change: { ...change, words }, verdict: 'less' }
  }
  if (low > 0) {
    const words = `Grown by ${shown.text(middle)} (${shown.span(low, high)}, ${trust.called}).`
    return { change: { ...change, words }, verdict: 'more' }
  }
  return {
    change: { ...change, words: `No change can be told: ${between(change, shown)} (${trust.called}).` },
    verdict: 'not told',
  }
}

/** Both ends in words: a difference is less or more, never a bare minus sign. */
function between({ low, high }: Pick<IntervalAnswer, 'low' | 'high'>, { text }: ShownQuantity): string {
  const side = (value: number): string =>
    value === 0 ? 'none' : `${text(Math.abs(value))} ${value < 0 ? 'less' : 'more'}`
  return `between ${side(low)} and ${side(high)}`
}
