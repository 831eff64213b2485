import type { z } from 'zod'
import type { limitDecision } from '../../../shared-types/measuring.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { TapeAnswer } from '../../../shared-types/tape-answer.ts'
import type { RepeatedReading } from '../../analysis/geometry/tape-reading.ts'
import { grubbsTest } from '../../analysis/statistics/grubbs.ts'
import { normalQuantile } from '../../analysis/statistics/quantiles.ts'
import { roundedResult } from '../../analysis/statistics/rounded-result.ts'
import { figure } from '../../report/wording/numbers.ts'
import { shortened } from '../row-marks.ts'
import type { ShownLengths } from './shown-lengths.ts'

type Decided = z.infer<typeof limitDecision.output>
type Line = TapeAnswer['lines'][number]

const SIGNIFICANCE = 0.05
const METHOD_LENGTH = 400

/** What one kind of measurement comes to, without the comparison with a sheet. */
export type Worked = Omit<TapeAnswer, 'kind'>

/** Factor of a normal distribution for a coverage, both sides. */
export const normalFactor = (coverage: number): number => normalQuantile((1 + coverage) / 2)

/** "95 % coverage, k = 2.57, 5 degrees of freedom". */
export function coverageWords(coverage: number, k: number, degreesOfFreedom: number | null): string {
  const freedom =
    degreesOfFreedom === null
      ? 'degrees of freedom taken as infinite'
      : `${Math.floor(degreesOfFreedom)} degrees of freedom (Welch-Satterthwaite)`
  return `${figure(coverage * 100, coverage * 100 === Math.round(coverage * 100) ? 0 : 2)} % coverage, k = ${figure(k, 2)}, ${freedom}`
}

/** A result as the record keeps it: k = 2, rounded by its uncertainty. */
export function keptAs(valueMm: number, standardMm: number, method: string): TapeAnswer['kept'] {
  if (!(standardMm > 0)) {
    const message = 'Nothing is read without uncertainty: enter how exact the readings are.'
    throw new ProblemError('input-refused', message, { field: 'goodTo' })
  }
  const { value, uncertainty } = roundedResult(valueMm, 2 * standardMm)
  return {
    valueMm: value,
    uncertaintyMm: uncertainty,
    standardUncertaintyMm: Number(standardMm.toPrecision(2)),
    method: shortened(method, METHOD_LENGTH),
  }
}

/** A value against limits by ISO 14253-1, in the unit of the record, and how exact it would have to be. */
export function decisionWords(decided: Decided, expandedMm: number, shown: ShownLengths, limits: string): string {
  const { decision, wouldDecide } = decided
  if (decision === 'inside') return `Inside ${limits}, uncertainty included (ISO 14253-1).`
  if (decision === 'outside') return `Outside ${limits}, uncertainty included (ISO 14253-1).`
  return `Neither inside nor outside ${limits} can be proven (ISO 14253-1): ${shown.length(wouldDecide, wouldDecide)} would do, it is ${shown.length(expandedMm, expandedMm)}.`
}

/** Type A and type B of a repeated reading, each with its share of the variance. */
export function sourceLines(values: readonly number[], read: RepeatedReading, shown: ShownLengths): readonly Line[] {
  const share = (part: number) => `${figure(100 * part)} % of the variance`
  const lines = read.sources.map(({ label, standard, share: part }) =>
    label === 'tool'
      ? {
          label: 'type B, the tool',
          words: `${shown.length(standard, standard)}, rectangular within what it is good to, ${share(part)}`,
        }
      : {
          label: 'type A, scatter',
          words: `${shown.length(standard, standard)} of the mean of ${values.length}, ${share(part)}`,
        },
  )
  return values.length < 2
    ? [{ label: 'type A, scatter', words: 'not known: one reading shows no scatter. Read again.' }, ...lines]
    : lines
}

/** Names the reading that stands out; it stays in. Null with too few readings, or where they do not differ. */
export function outlierLine(values: readonly number[], shown: ShownLengths): Line | null {
  if (values.length < 3 || values.every((value) => value === values[0])) return null
  const { at, value, g, critical, standsOut } = grubbsTest({
    values: [...values],
    significance: SIGNIFICANCE,
    sides: 'either',
  })
  const figures = `G ${figure(g, 2)}, critical ${figure(critical, 2)}, 5 %`
  const words = standsOut
    ? `Reading ${at + 1}, ${shown.asRead([value])}, stands out (${figures}). It stays in the result: say why it differs, or measure it again.`
    : `None; furthest is reading ${at + 1}, ${shown.asRead([value])} (${figures}).`
  return { label: 'stands out, Grubbs', words }
}

/** "3.2 mm larger": what a size is, beside a measurement that differs from it by so much. */
export const offWords = (offMm: number, byMm: number, shown: ShownLengths): string =>
  `${shown.length(Math.abs(offMm), byMm)} ${offMm < 0 ? 'larger' : 'smaller'}`

/** "a, b and c are not told apart", or the only one left. */
export function tieWords(possible: readonly string[], all: number, what: string): string {
  if (all === 0) return `No ${what} to compare with.`
  if (possible.length === 0) return `None of the ${what} compared fits.`
  if (possible.length === 1) return `Of the ${what} compared only ${possible[0]} fits.`
  return `A tie: ${possible.slice(0, -1).join(', ')} and ${possible.at(-1)} are not told apart.`
}
