import type { Caution, HazardousStep } from '../../shared-types/caution.ts'
import { useRecordStore } from '../store/record-store.ts'

interface CautionLinesProps {
  /** Steps at hand that raise cautions. */
  readonly steps?: readonly HazardousStep[]
  /** Cautions that belong to the thing in hand whatever is done to it. */
  readonly of?: readonly Caution[]
}

const none: readonly never[] = []

/** What can hurt somebody here, each caution once and with its public source. */
export function CautionLines({ steps = none, of = none }: CautionLinesProps) {
  const all = useRecordStore((state) => state.cautions)
  const raised = all.filter((caution) => caution.raisedBy.some((step) => steps.includes(step)))
  const cautions = [...new Map([...raised, ...of].map((caution) => [caution.id, caution])).values()]
  if (cautions.length === 0) return null
  return (
    <div className="caution" role="note">
      {cautions.map((caution) => (
        <p key={caution.id}>
          <strong>Caution.</strong> {caution.text} <cite>{caution.source}.</cite>
        </p>
      ))}
      <p className="quiet">Local rules and licensed practice come first.</p>
    </div>
  )
}
