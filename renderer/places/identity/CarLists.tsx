import { memo } from 'react'
import { ClaimList } from './ClaimList.tsx'
import { CommissionLines } from './CommissionLines.tsx'
import { ConsentList } from './ConsentList.tsx'
import { type CarRows, carRowNames } from './car-rows.ts'
import type { Opened } from './IdentitySheet.tsx'
import { NumberList } from './NumberList.tsx'
import { ParticularsLines } from './ParticularsLines.tsx'
import { VisitList } from './VisitList.tsx'

interface CarListsProps {
  readonly record: CarRows
  readonly opened: Opened | null
  /** Opens an entry; without a key a new one. */
  readonly onOpen: (what: Opened['what'], key?: string | null) => void
}

const alike = (one: CarListsProps, other: CarListsProps): boolean =>
  one.opened === other.opened &&
  one.onOpen === other.onOpen &&
  carRowNames.every((name) => one.record[name] === other.record[name])

/** What the car is said to be and what its numbers say; drawn again only when some of it is another. */
export const CarLists = memo(function CarLists({ record, opened, onOpen }: CarListsProps) {
  return (
    <div className="identity-columns">
      <div>
        <ParticularsLines record={record} onAmend={() => onOpen('particulars')} />
        <CommissionLines record={record} onAmend={() => onOpen('commission')} />
      </div>
      <div>
        <NumberList record={record} opened={opened} onOpen={(key) => onOpen('carNumber', key)} />
        <ClaimList record={record} opened={opened} onOpen={(key) => onOpen('claim', key)} />
      </div>
      <div className="identity-third">
        <VisitList record={record} onOpen={(key) => onOpen('visit', key)} />
        <ConsentList record={record} onOpen={(key) => onOpen('consent', key)} />
      </div>
    </div>
  )
}, alike)
