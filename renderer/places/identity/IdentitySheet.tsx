import type { RecordView } from '../../../shared-types/record.ts'
import { ClaimForm } from './ClaimForm.tsx'
import { CommissionForm } from './CommissionForm.tsx'
import { ConsentForm } from './ConsentForm.tsx'
import { NumberForm } from './NumberForm.tsx'
import { ParticularsForm } from './ParticularsForm.tsx'
import { VisitForm } from './VisitForm.tsx'

/** What is open in the sheet; `key` is null for a new row. */
export interface Opened {
  readonly what: 'carNumber' | 'claim' | 'visit' | 'particulars' | 'commission' | 'consent'
  readonly key: string | null
  /** Name of the field to begin at, where it is not the first. */
  readonly field?: string | undefined
}

interface IdentitySheetProps {
  readonly record: RecordView
  readonly opened: Opened
  readonly onLeave: () => void
}

/** The form of whatever row is open. */
export function IdentitySheet({ record, opened, onLeave }: IdentitySheetProps) {
  const { what, key, field } = opened
  const numbered = <Row extends { readonly number: number }>(rows: readonly Row[]): Row | null =>
    rows.find((row) => String(row.number) === key) ?? null
  if (what === 'carNumber') {
    const row = numbered(record.carNumbers)
    return <NumberForm key={`n${key}`} row={row} focusOn={field} follows={record.sheets} onLeave={onLeave} />
  }
  if (what === 'claim') {
    return <ClaimForm key={`c${key}`} row={numbered(record.claims)} focusOn={field} onLeave={onLeave} />
  }
  if (what === 'visit') {
    return <VisitForm key={`v${key}`} row={numbered(record.visits)} focusOn={field} onLeave={onLeave} />
  }
  if (what === 'consent') {
    const consent = record.consents.find((row) => row.step === key) ?? null
    return <ConsentForm key={`s${key}`} step={key ?? ''} row={consent} onLeave={onLeave} />
  }
  if (what === 'particulars') return <ParticularsForm record={record} focusOn={field} onLeave={onLeave} />
  return <CommissionForm record={record} focusOn={field} onLeave={onLeave} />
}
