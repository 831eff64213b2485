import type { Judgement } from '../../../shared-types/judgement.ts'
import type { WeightFound } from '../../../shared-types/own-weight.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { timeText } from '../identity/day-text.ts'
import { boundsText } from './bounds-text.ts'

interface WeightListProps {
  readonly judgement: Judgement
  readonly readOnly: boolean
  /** Opens the entry of a weight; null adds one. */
  readonly onWeight: (weighs: string | null) => void
}

const countWords = ({ things, sort }: WeightFound): string => {
  if (things === 0) return 'weighs nothing now: each thing in it has a weight of its own, or is not on this car'
  const noun = sort === 'part' || sort === 'group of parts' ? 'part' : 'panel'
  return `${things} ${noun}${things === 1 ? '' : 's'}`
}

/** Weights the user set, with who set them and when, and the shares of the whole without them. */
export function WeightList({ judgement, readOnly, onWeight }: WeightListProps) {
  const { weightsSet, unweighed, weights } = judgement
  return (
    <Section
      head="Weights"
      level="column"
      beside="yours"
      action={<ActionKey keys="W" label="set" name="Set a weight" onAct={() => onWeight(null)} disabled={readOnly} />}
    >
      {weightsSet.length === 0 ? (
        <p className="place-note">None is set: a panel counts by its area and a part as one. W sets one.</p>
      ) : null}
      {weightsSet.map((weight) => (
        <button
          key={weight.weighs}
          type="button"
          className="line-button"
          disabled={readOnly}
          onClick={() => onWeight(weight.weighs)}
        >
          <span className="figures">{`× ${weight.factor}`}</span>
          <span>
            <span className="strong">{weight.label}</span> {weight.sort}, {countWords(weight)}
            <span className="under-line">
              set by {weight.setBy === '' ? 'nobody named' : weight.setBy}, {timeText(weight.setAt)}
              {weight.reason === '' ? '' : `: ${weight.reason}`}
            </span>
          </span>
        </button>
      ))}
      {unweighed === null ? null : (
        <p className="place-note">
          Without them the whole car stands at {boundsText(unweighed.originalMetal)} original metal,{' '}
          {boundsText(unweighed.factoryPaint)} factory finish
          {unweighed.parts === null ? '' : ` and ${boundsText(unweighed.parts)} of its parts`}.
        </p>
      )}
      <p className="place-note">{weights}</p>
    </Section>
  )
}
