import type { Caution, HazardousStep } from '../../../shared-types/caution.ts'
import type { PanelDefinition } from '../../../shared-types/panel.ts'
import { useRecordStore } from '../../store/record-store.ts'

interface CautionNotesProps {
  readonly panel: PanelDefinition
  /** Steps that what is being entered raises, beside the panel's own cautions. */
  readonly steps: readonly HazardousStep[]
}

/** Cautions of a panel and of the steps at hand, each once. */
export function cautionsFor(
  panel: PanelDefinition,
  all: readonly Caution[],
  steps: readonly HazardousStep[],
): readonly Caution[] {
  const raised = all.filter((caution) => caution.raisedBy.some((step) => steps.includes(step)))
  return [...new Map([...raised, ...panel.cautions].map((caution) => [caution.id, caution])).values()]
}

/** What can hurt somebody at this step, with its public source. */
export function CautionNotes({ panel, steps }: CautionNotesProps) {
  const all = useRecordStore((state) => state.cautions)
  const cautions = cautionsFor(panel, all, steps)
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
