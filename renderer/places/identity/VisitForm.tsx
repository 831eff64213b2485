import { useMemo } from 'react'
import type { Visit, VisitDraft } from '../../../shared-types/car.ts'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import type { FormOfRow } from './form-props.ts'
import { FirstVisitFields, FurtherVisitFields } from './VisitFields.tsx'

const beganNow = (): VisitDraft => ({
  beganAt: new Date().toISOString(),
  endedAt: null,
  place: '',
  light: '',
  weather: '',
  surface: 'dry',
  support: 'on the ground',
  temperatureC: null,
  present: '',
  odometer: '',
  stateOnArrival: '',
})

/** Adds or amends a visit. */
export function VisitForm({ row, focusOn, onLeave }: FormOfRow<Visit>) {
  const fresh = useMemo(beganNow, [])
  const { number, ...initial } = row ?? { ...fresh, number: null }
  const entry = useEntry<VisitDraft>({
    name: number === null ? 'visit.add' : `visit.amend ${number}`,
    initial,
    focusOn,
    keep: (draft) => (number === null ? change('visit.add', { draft }) : change('visit.amend', { number, draft })),
    kept: onLeave,
  })
  return (
    <EntrySheet
      title={number === null ? 'A visit' : `Visit V ${number}`}
      over="when, where, in what light"
      entry={entry}
      onLeave={onLeave}
    >
      <FirstVisitFields field={entry.field} />
      <FurtherVisitFields field={entry.field} />
    </EntrySheet>
  )
}
