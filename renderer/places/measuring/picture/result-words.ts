import type { PictureMeasured } from '../../../../shared-types/measuring.ts'
import type { TellMeasured } from '../../../../shared-types/measuring-view.ts'
import { shownUnit } from '../../../../shared-types/shown-measure.ts'
import type { ShownUnits } from '../../../../shared-types/units.ts'
import { figureText } from '../../../parts-of-page/figure-text.ts'

/** Writes a value with its unit, to as many decimals as leave the uncertainty two digits. */
export type Figures = (value: number, uncertainty: number) => string

/** How values kept in a unit are written in the units of a record; `alone` leaves the unit out. */
export function figuresIn(kept: string, units: ShownUnits): { readonly figure: Figures; readonly alone: Figures } {
  const { unit, per } = shownUnit(kept, units)
  const alone: Figures = (value, uncertainty) => {
    const bears = uncertainty / per
    const decimals = bears > 0 ? Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(bears)))) : 1
    return figureText(value / per, decimals)
  }
  return { alone, figure: (value, uncertainty) => `${alone(value, uncertainty)}\u202f${unit}` }
}

/** What the uncertainty is made of, each part as a standard uncertainty. */
export function partsWords({ parts }: PictureMeasured, distortionKnown: boolean, figure: Figures): string {
  const part = (name: string, standard: number) => `${name} ${figure(standard, standard)}`
  return [
    part('picking', parts.picking),
    part('reference', parts.reference),
    distortionKnown ? part('distortion', parts.distortion) : 'distortion not known, not included',
  ].join(' · ')
}

const most = (values: readonly number[]): number => Math.max(...values)

/** What the measurement says of a tell, and how exact it would have to be: expanded, k = 2, as values are printed. */
export function tellWords({ exactness, values }: TellMeasured, standardUncertainty: number, figure: Figures): string {
  const { decision, likeliest, likelihoodRatio, wouldDecide } = exactness
  const name = values.find(({ id }) => id === likeliest)?.name ?? likeliest
  const have = figure(2 * standardUncertainty, 2 * standardUncertainty)
  const would = wouldDecide === null ? null : figure(2 * wouldDecide, 2 * wouldDecide)
  if (decision === 'fits none') return `fits none of its values, ${values.map((value) => value.name).join(', ')}`
  if (decision === 'decides') {
    const ratio =
      likelihoodRatio === null || likelihoodRatio > 1e6 ? 'more than a million' : figureText(likelihoodRatio)
    return `decides: ${name}, ${ratio} times as likely as the next; an uncertainty of ${would ?? have} would do, it is ${have}`
  }
  return would === null
    ? `does not decide: between ${name} and the next, no exactness would do for this value`
    : `does not decide yet, nearest ${name}: an uncertainty of ${would} would do; it is ${have}`
}

/** Whether first order and drawing agree, in figures. */
export function agreementWords({ standard, drawn, agree }: PictureMeasured, figure: Figures): string {
  const both = `first order u = ${figure(standard, standard)}; drawn ${figureText(drawn.draws)} times u = ${figure(drawn.standard, drawn.standard)}`
  const ends = [drawn.low, drawn.high].map((end) => figure(end, most([drawn.standard, 0])))
  return agree ? `${both}: they agree` : `${both}: they differ, the drawn interval ${ends.join(' to ')} counts`
}
