import { type IntrusiveStep, intrusiveStep } from '../../../shared-types/words.ts'
import { YesNoField } from '../../parts-of-page/YesNoField.tsx'
import { stepWords } from './inspection-levels.ts'

interface LeaveFieldsProps {
  readonly given: readonly IntrusiveStep[]
  readonly onChange: (given: readonly IntrusiveStep[]) => void
}

/** The owner's leave, step by step. What is not ticked is not given, and the report says so. */
export function LeaveFields({ given, onChange }: LeaveFieldsProps) {
  return (
    <div className="leave-steps">
      {intrusiveStep.options.map((step) => (
        <YesNoField
          key={step}
          label={step}
          hint={stepWords[step]}
          value={given.includes(step)}
          onChange={(leave) => onChange(leave ? [...given, step] : given.filter((other) => other !== step))}
        />
      ))}
    </div>
  )
}
