import { type Commission, commission } from '../../../shared-types/car.ts'
import { coatingUnit, lengthUnit } from '../../../shared-types/units.ts'
import { inspectionLevel, nameChoice } from '../../../shared-types/words.ts'
import type { BindField } from '../../parts-of-page/bind-part.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { DayField } from '../../parts-of-page/DayField.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import { YesNoField } from '../../parts-of-page/YesNoField.tsx'

interface CommissionFieldsProps {
  readonly field: BindField<Commission>
}

/** Who examines, and what makes their word worth having. */
export function ExaminerFields({ field }: CommissionFieldsProps) {
  return (
    <>
      <TextField label="Who examines" required {...field('examiner')} />
      <TextField label="Role" {...field('examinerRole')} />
      <TextField label="Contact" {...field('examinerContact')} />
      <NoteField label="Competence" hint="training, years, cars of this kind" {...field('examinerCompetence')} />
      <NoteField
        label="Independence"
        hint="who pays, and any interest in a sale, a repair or a claim; none alters a finding"
        {...field('independence')}
      />
    </>
  )
}

/** For whom the report is, what for, and which question it answers. */
export function PurposeFields({ field }: CommissionFieldsProps) {
  return (
    <>
      <TextField label="For whom" {...field('client')} />
      <TextField label="Who else may rely on it" {...field('otherUsers')} />
      <TextField label="Who may not" {...field('notForReliance')} />
      <ChoiceField label="For what use" choices={commission.shape.intendedUse.options} {...field('intendedUse')} />
      <NoteField
        label="Question to answer"
        hint="before looking; the report answers this and no more"
        {...field('question')}
      />
      <TextField label="Title to the car, as told" {...field('titleAsTold')} />
      <YesNoField label="Title verified by the examiner" {...field('titleVerified')} />
    </>
  )
}

/** How things are named and measured on screen and in print. */
export function ShownAsFields({ field }: CommissionFieldsProps) {
  const currency = field('currency')
  return (
    <>
      <TextField label="Record number" figures required {...field('recordNumber')} />
      <ChoiceField
        label="Names"
        choices={nameChoice.options}
        wordsFor={(choice) => (choice === 'uk' ? 'UK: wing, bonnet, boot, sill' : 'US: fender, hood, trunk, rocker')}
        {...field('names')}
      />
      <ChoiceField label="Lengths" choices={lengthUnit.options} {...field('lengthUnit')} />
      <ChoiceField label="Coating" choices={coatingUnit.options} {...field('coatingUnit')} />
      <TextField
        label="Currency of costs"
        figures
        hint="three letters, such as GBP"
        {...currency}
        onChange={(letters) => currency.onChange(letters.toUpperCase())}
      />
    </>
  )
}

/** What is settled towards the end of the job. */
export function FurtherCommission({ field }: CommissionFieldsProps) {
  const retention = field('retentionYears')
  return (
    <>
      <ChoiceField label="Level of inspection" choices={inspectionLevel.options} {...field('level')} />
      <DayField label="Effective date" {...field('effectiveDate')} />
      <TextField label="Helpers" {...field('helpers')} />
      <NoteField label="Review by another" {...field('review')} />
      <NoteField label="Assumptions" {...field('assumptions')} />
      <NumberField
        label="Kept for"
        quantity="plain"
        unit="years"
        least={0}
        most={100}
        value={retention.value}
        problem={retention.problem}
        onChange={(years) => retention.onChange(Math.round(years ?? 0))}
      />
      <YesNoField
        label="Photograph positions may stand in reports"
        hint="where a photograph was taken can show where the car is kept"
        {...field('positionsInReports')}
      />
    </>
  )
}
