import type { Because } from '../../../shared-types/judgement.ts'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { usePanelNames } from '../../store/panel-names.ts'
import { usePartNames } from '../../store/part-names.ts'

/** How the rows of the record that a step cites are named: panels and parts in words, the rest by number. */
function useReferenceWords(): (reference: Because['references'][number]) => string | undefined {
  const panelWords = usePanelNames()
  const partWords = usePartNames()
  return ({ kind, key }) => {
    if (kind === 'panel') return panelWords(key)
    if (kind === 'part') return partWords(key)
    return undefined
  }
}

/** A because-chain: each step with how it was learned, the rows it cites, and its published source. */
export function Chain({ because }: { readonly because: readonly Because[] }) {
  const wordsFor = useReferenceWords()
  if (because.length === 0) return <p className="note">No step is recorded for this line.</p>
  return (
    <ol className="chain-steps">
      {because.map((step) => (
        <li key={`${step.sort} ${step.text}`}>
          <span className="quiet">{step.sort}</span>
          <span>
            {step.text}{' '}
            <span className="reference-row">
              {step.references.map((reference) => {
                const words = wordsFor(reference)
                return (
                  <ReferenceLink
                    key={`${reference.kind} ${reference.key}`}
                    reference={reference}
                    {...(words === undefined ? {} : { words })}
                  />
                )
              })}
            </span>
            {step.source === null ? null : <cite className="note">{step.source}</cite>}
          </span>
        </li>
      ))}
    </ol>
  )
}
