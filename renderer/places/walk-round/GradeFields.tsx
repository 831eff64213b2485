import type { FindingDraft } from '../../../shared-types/finding.ts'
import type { FindingKind } from '../../../shared-types/words.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { gradesFor, gradeText } from './finding-draft.ts'

type Grade = FindingDraft['grade']

interface GradeFieldsProps {
  readonly kind: FindingKind | null
  readonly grade: Grade
  readonly onChange: (grade: Grade) => void
}

const wholeFigure = (value: number | null): number => Math.min(5, Math.max(0, Math.round(value ?? 0)))

/** Grade of rust or blistering by the published standards, where it applies. */
export function GradeFields({ kind, grade, onChange }: GradeFieldsProps) {
  const standards = gradesFor(kind)
  if (standards.length === 0 && grade === null) return null
  const choose = (chosen: string) => {
    if (chosen === 'ISO 4628-3') onChange({ standard: 'ISO 4628-3', affectedPercent: 0, basis: 'estimated' })
    else if (chosen === 'ISO 4628-2') onChange({ standard: 'ISO 4628-2', quantity: 2, size: 2 })
    else onChange(null)
  }
  return (
    <fieldset className="field-set">
      <legend>Grade</legend>
      <div className="field-row">
        <ChoiceField
          label="Standard"
          choices={['none', ...standards]}
          wordsFor={(choice) =>
            choice === 'ISO 4628-3' ? 'rust, ISO 4628-3' : choice === 'ISO 4628-2' ? 'blisters, ISO 4628-2' : choice
          }
          value={grade?.standard ?? 'none'}
          onChange={choose}
        />
        {grade?.standard === 'ISO 4628-3' ? (
          <>
            <NumberField
              label="Rusted share"
              unit="%"
              quantity="plain"
              least={0}
              most={100}
              value={grade.affectedPercent}
              onChange={(affectedPercent) =>
                onChange({ ...grade, affectedPercent: Math.min(100, Math.max(0, affectedPercent ?? 0)) })
              }
            />
            <ChoiceField
              label="Share"
              choices={['measured', 'estimated'] as const}
              value={grade.basis}
              onChange={(basis) => onChange({ ...grade, basis })}
            />
          </>
        ) : null}
        {grade?.standard === 'ISO 4628-2' ? (
          <>
            <NumberField
              label="Quantity 0–5"
              quantity="plain"
              value={grade.quantity}
              onChange={(quantity) => onChange({ ...grade, quantity: wholeFigure(quantity) })}
            />
            <NumberField
              label="Size 0–5"
              quantity="plain"
              value={grade.size}
              onChange={(size) => onChange({ ...grade, size: wholeFigure(size) })}
            />
          </>
        ) : null}
      </div>
      {grade === null ? null : <p className="note">{gradeText(grade)}</p>}
    </fieldset>
  )
}
