import type { HazardousStep } from '../../shared-types/caution.ts'
import { useAnswer } from '../store/use-answer.ts'

/** The cautions a step raises, each with its public source. */
export function CautionLines({ steps }: { readonly steps: readonly HazardousStep[] }) {
  const cautions = useAnswer('lists.cautions', {})
  const raised = (cautions.value ?? []).filter((caution) => caution.raisedBy.some((step) => steps.includes(step)))
  return raised.map((caution) => (
    <p className="caution" key={caution.id}>
      <span className="strong">Caution.</span> {caution.text} <cite>{caution.source}</cite>
    </p>
  ))
}
