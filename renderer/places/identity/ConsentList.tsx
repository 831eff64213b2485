import { intrusiveStep } from '../../../shared-types/words.ts'
import { Section } from '../../parts-of-page/Section.tsx'
import type { CarRows } from './car-rows.ts'
import { dayText } from './day-text.ts'

interface ConsentListProps {
  readonly record: CarRows
  readonly onOpen: (key: string) => void
}

/** The owner's leave for each intrusive step; a step nobody asked about is not given. */
export function ConsentList({ record, onOpen }: ConsentListProps) {
  const given = record.consents.filter((consent) => consent.given).length
  return (
    <Section head="The owner’s leave" level="column" beside={`${given} of ${intrusiveStep.options.length} steps given`}>
      <ul>
        {intrusiveStep.options.map((step) => {
          const consent = record.consents.find((row) => row.step === step)
          return (
            <li key={step}>
              <button type="button" className="line-button" onClick={() => onOpen(step)} disabled={record.readOnly}>
                <span>{step}</span>
                <span className={consent?.given === true ? 'strong' : 'quiet'}>
                  {consent?.given === true ? 'given' : consent === undefined ? 'not asked' : 'not given'}
                  {consent?.given === true ? (
                    <span className="under-line">
                      {consent.by === '' ? 'by whom not stated' : `by ${consent.by}`}, {dayText(consent.on)}
                    </span>
                  ) : null}
                  {consent === undefined || consent.done === '' ? null : (
                    <span className="under-line">done: {consent.done}</span>
                  )}
                </span>
              </button>
            </li>
          )
        })}
      </ul>
    </Section>
  )
}
