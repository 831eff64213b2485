import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import type { CarRows } from './car-rows.ts'
import { dayText } from './day-text.ts'
import { SaidLines } from './SaidLines.tsx'

/** Who examines, for whom, for what use, how far. */
export function CommissionLines({ record, onAmend }: { readonly record: CarRows; readonly onAmend: () => void }) {
  const { commission } = record
  return (
    <Section
      head="Commission"
      level="column"
      action={
        <ActionKey keys="M" label="amend" name="Amend the commission" onAct={onAmend} disabled={record.readOnly} />
      }
    >
      <SaidLines
        lines={[
          ['Level of inspection', commission.level],
          ['Use', commission.intendedUse],
          ['Question', commission.question],
          ['For', commission.client],
          ['May rely on it too', commission.otherUsers],
          ['May not', commission.notForReliance],
          ['Examiner', [commission.examiner, commission.examinerRole].filter((word) => word !== '').join(', ')],
          ['Contact', commission.examinerContact],
          ['Competence', commission.examinerCompetence],
          ['Independence', commission.independence],
          ['Title as told', commission.titleAsTold],
          ['Title verified', commission.titleVerified ? 'yes, by the examiner' : 'no'],
          ['Effective date', commission.effectiveDate === null ? null : dayText(commission.effectiveDate)],
          ['Helpers', commission.helpers],
          ['Review', commission.review],
          ['Assumptions', commission.assumptions],
        ]}
      />
    </Section>
  )
}
