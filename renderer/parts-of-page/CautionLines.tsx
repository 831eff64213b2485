import type { HazardousStep } from '../../shared-types/caution.ts'
import { useRecordStore } from '../store/record-store.ts'

/** The cautions a step raises, each with its public source. */
export function CautionLines({ steps }: { readonly steps: readonly HazardousStep[] }) {
  const cautions = useRecordStore((state) => state.cautions)
  const raised = cautions.filter((caution) => caution.raisedBy.some((step) => steps.includes(step)))
  if (raised.length === 0) return null
  return (
    <div className="caution" role="note">
      {raised.map((caution) => (
        <p key={caution.id}>
          <strong>Caution.</strong> {caution.text} <cite>{caution.source}.</cite>
        </p>
      ))}
      <p className="quiet">Local rules and licensed practice come first.</p>
    </div>
  )
}
