import { type FeatureState, featureStates, stateWords } from '../../../shared-types/car-features.ts'
import type { CarFeature } from '../../../shared-types/panel.ts'
import type { BodyStyle, NameChoice } from '../../../shared-types/words.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { YesNoField } from '../../parts-of-page/YesNoField.tsx'
import { useAnswer } from '../../store/use-answer.ts'
import './car-own.css'

interface FeatureFieldsProps {
  readonly body: BodyStyle
  readonly names: NameChoice
  readonly stateOf: (feature: CarFeature) => FeatureState
  readonly onState: (id: string, state: FeatureState) => void
}

/** What only some cars of a body have, as named choices. Each decides about panels: what is not there is not walked to. */
export function FeatureFields({ body, names, stateOf, onState }: FeatureFieldsProps) {
  const features = useAnswer('lists.features', { body })
  return (
    <div className="car-own">
      <ProblemNote problem={features.problem} />
      {(features.value ?? []).map((feature) => {
        const state = stateOf(feature)
        const hint = feature.means === '' ? {} : { hint: feature.means }
        return feature.onOneSide ? (
          <ChoiceField
            key={feature.id}
            label={feature[names]}
            {...hint}
            choices={featureStates}
            wordsFor={stateWords}
            value={state}
            onChange={(chosen) => onState(feature.id, chosen)}
          />
        ) : (
          <YesNoField
            key={feature.id}
            label={feature[names]}
            {...hint}
            value={state !== 'absent'}
            onChange={(there) => onState(feature.id, there ? 'present' : 'absent')}
          />
        )
      })}
    </div>
  )
}
