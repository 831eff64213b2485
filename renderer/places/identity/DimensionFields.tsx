import { useState } from 'react'
import type { DimensionChoice, OwnDimensions } from '../../../shared-types/body-dimensions.ts'
import type { Problem } from '../../../shared-types/problem.ts'
import type { LengthUnit } from '../../../shared-types/units.ts'
import type { BodyStyle, NameChoice } from '../../../shared-types/words.ts'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { useAnswer } from '../../store/use-answer.ts'
import { dimensionFigure, withDimension } from './own-dimensions.ts'
import './car-own.css'

interface DimensionFieldsProps {
  readonly body: BodyStyle
  readonly names: NameChoice
  readonly lengthUnit: LengthUnit
  readonly value: OwnDimensions
  readonly onChange: (value: OwnDimensions) => void
  /** The problem of the whole form; what concerns one dimension is shown under it. */
  readonly problem: Problem | null
}

/** What this car measures. A field left empty is drawn with the usual value, which stands under it. */
export function DimensionFields({ body, names, lengthUnit, value, onChange, problem }: DimensionFieldsProps) {
  const list = useAnswer('lists.dimensions', { body })
  const given = Object.keys(value).length
  const [open, setOpen] = useState(given > 0)
  const concerns = problem?.field?.includes('dimensions') ?? false
  const problemOfAll = problem?.field?.endsWith('dimensions') ? problem : null
  const problemOf = (choice: DimensionChoice): string | null => {
    if (problem?.field?.endsWith(`dimensions.${choice.name}`)) return problem.message
    const own = value[choice.name]
    if (own === undefined || (own >= choice.least && own <= choice.greatest)) return null
    const [least, greatest] = [choice.least, choice.greatest].map((of) => dimensionFigure(of, choice, lengthUnit))
    return `Drawn from ${least} to ${greatest} for this body. Measure again, or leave it empty.`
  }
  return (
    <details className="car-own-fold" open={open || concerns} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {given === 0
          ? 'none given: drawn as its body usually is'
          : `${given} of ${list.value?.dimensions.length ?? given} given, the rest drawn as usual`}
      </summary>
      <div className="car-own">
        <ProblemNote problem={problemOfAll ?? list.problem} />
        {(list.value?.dimensions ?? []).map((choice) => (
          <NumberField
            key={choice.name}
            label={choice[names]}
            hint={`Empty: drawn with ${dimensionFigure(choice.usual, choice, lengthUnit)}. ${names === 'us' ? choice.howUs : choice.howUk}`}
            quantity={choice.quantity === 'length' ? 'length' : 'plain'}
            lengthUnit={lengthUnit}
            unit="°"
            value={value[choice.name] ?? null}
            onChange={(figure) => onChange(withDimension(value, choice.name, figure))}
            problem={problemOf(choice)}
          />
        ))}
      </div>
    </details>
  )
}
