import type { AreaJudgement, ShareRange, StateShare } from './judgement.ts'

/** Less than can be printed: the last bits of two sums of the same areas. */
const ALIKE_PERCENT = 1e-6

const fillerWords =
  'The bar of original metal leaves filler over metal open, since original metal may lie under it; the table counts it as a state of its own, so there original metal ends lower.'
const weightWords = 'The bars count with the weights set; the table counts by area alone.'

const differs = (share: StateShare | undefined, bar: ShareRange): boolean =>
  share !== undefined &&
  (Math.abs(share.lowPercent - bar.lowPercent) > ALIKE_PERCENT ||
    Math.abs(share.highPercent - bar.highPercent) > ALIKE_PERCENT)

/** Why a state stands with another share in the table than on the bar of the same name; empty where it does not. */
export function statesBesideBars(area: AreaJudgement, weighed: boolean): string {
  const share = (shares: readonly StateShare[], state: string) => shares.find((each) => each.state === state)
  const metal = differs(share(area.metal, 'original metal'), area.originalMetal)
  const paint = differs(share(area.paint, 'factory finish'), area.factoryPaint)
  return [
    ...(metal && share(area.metal, 'filler over metal') !== undefined ? [fillerWords] : []),
    ...(weighed && (metal || paint) ? [weightWords] : []),
  ].join(' ')
}
