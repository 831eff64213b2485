import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import type { CarRows } from './car-rows.ts'
import { timeText } from './day-text.ts'

interface VisitListProps {
  readonly record: CarRows
  readonly onOpen: (key: string | null) => void
}

/** Visits: where and when the car was looked at, and what limited the looking. */
export function VisitList({ record, onOpen }: VisitListProps) {
  return (
    <Section
      head="Visits"
      level="column"
      action={
        <ActionKey keys="V" label="add" name="Add a visit" onAct={() => onOpen(null)} disabled={record.readOnly} />
      }
    >
      <ul>
        {record.visits.map((visit) => (
          <li key={visit.number}>
            <button
              type="button"
              className="line-button"
              onClick={() => onOpen(String(visit.number))}
              disabled={record.readOnly}
            >
              <span className="figures">{`V\u202f${visit.number}`}</span>
              <span>
                {visit.place === '' ? 'place not stated' : visit.place}
                <span className="under-line">
                  {timeText(visit.beganAt)} · {visit.light === '' ? 'light not stated' : visit.light} · {visit.surface}{' '}
                  · {visit.support}
                  {visit.endedAt === null ? ' · not ended' : ''}
                </span>
              </span>
            </button>
          </li>
        ))}
      </ul>
    </Section>
  )
}
