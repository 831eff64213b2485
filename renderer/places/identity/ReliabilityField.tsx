import type { ClaimDraft } from '../../../shared-types/claim.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { reliabilityWords } from './claim-words.ts'

const STEPS = [
  ['only put to the test', null],
  ['almost always right, 95\u202f%', 95],
  ['mostly right, 80\u202f%', 80],
  ['more often right than not, 65\u202f%', 65],
  ['as often wrong as right, 50\u202f%', 50],
] as const
const ANOTHER = 'another share'

interface ReliabilityFieldProps {
  readonly draft: ClaimDraft
  readonly problem: string | null
  readonly onChange: (reliability: number | null) => void
}

/** How far a claimant is to be trusted: of a hundred such statements, how many hold; and what that does. */
export function ReliabilityField({ draft, problem, onChange }: ReliabilityFieldProps) {
  const step = STEPS.find(([, percent]) => percent === draft.reliability)?.[0] ?? ANOTHER
  return (
    <>
      <ChoiceField
        label="How reliable such a claimant is"
        choices={[...STEPS.map(([words]) => words), ANOTHER]}
        value={step}
        onChange={(choice) => {
          const taken = STEPS.find(([words]) => words === choice)
          if (taken !== undefined) onChange(taken[1])
        }}
      />
      <NumberField
        label="Of a hundred such statements hold"
        quantity="plain"
        unit="%"
        least={1}
        most={99}
        value={draft.reliability}
        onChange={onChange}
        problem={problem}
      />
      <p className="note" role="status">
        {reliabilityWords(draft)}
      </p>
    </>
  )
}
