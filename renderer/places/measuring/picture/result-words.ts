import type { PictureMeasured } from '../../../../shared-types/measuring.ts'
import type { TellMeasured } from '../../../../shared-types/measuring-view.ts'
import { figureText } from '../../../parts-of-page/figure-text.ts'

/** A figure with its unit, to as many decimals as leave the uncertainty two digits. */
export function figureWith(value: number, unit: string, uncertainty: number): string {
  const decimals = uncertainty > 0 ? Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(uncertainty)))) : 1
  return `${figureText(value, decimals)}\u202f${unit}`
}

/** What the uncertainty is made of, each part as a standard uncertainty. */
export function partsWords({ parts, unit }: PictureMeasured, distortionKnown: boolean): string {
  const part = (name: string, standard: number) => `${name} ${figureWith(standard, unit, standard)}`
  return [
    part('picking', parts.picking),
    part('reference', parts.reference),
    distortionKnown ? part('distortion', parts.distortion) : 'distortion not known, not included',
  ].join(' · ')
}

const most = (values: readonly number[]): number => Math.max(...values)

/** What the measurement says of a tell, and how exact it would have to be: expanded, k = 2, as values are printed. */
export function tellWords({ exactness, values, unit }: TellMeasured, standardUncertainty: number): string {
  const { decision, likeliest, likelihoodRatio, wouldDecide } = exactness
  const name = values.find(({ id }) => id === likeliest)?.name ?? likeliest
  const have = figureWith(2 * standardUncertainty, unit, 2 * standardUncertainty)
  const would = wouldDecide === null ? null : figureWith(2 * wouldDecide, unit, 2 * wouldDecide)
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
export function agreementWords({ standard, drawn, unit, agree }: PictureMeasured): string {
  const both = `first order u = ${figureWith(standard, unit, standard)}; drawn ${figureText(drawn.draws)} times u = ${figureWith(drawn.standard, unit, drawn.standard)}`
  const ends = [drawn.low, drawn.high].map((end) => figureWith(end, unit, most([drawn.standard, 0])))
  return agree ? `${both}: they agree` : `${both}: they differ, the drawn interval ${ends.join(' to ')} counts`
}
