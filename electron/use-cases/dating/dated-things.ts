import type { Because } from '../../../shared-types/judgement.ts'
import type { DatedRow, UnreadDate } from '../../../shared-types/time-line-view.ts'
import { dayNumber, isoDay } from '../../analysis/dating/calendar.ts'
import type { OpenInterval } from '../../analysis/dating/interval-words.ts'

/** Something that happened once, as a row of the time line. */
export interface DatedEvent {
  readonly id: string
  readonly kind: DatedRow['kind']
  readonly label: string
  readonly asRead: string
  readonly state: string
}

/** How readily something is given up where things cannot all be so: what is only supposed goes first. */
export const givenUp = {
  supposedByClaim: 0,
  supposedByRegister: 1,
  claimedDay: 2,
  dateOfPart: 3,
  paper: 4,
  registration: 5,
  number: 6,
  particulars: 7,
  window: 8,
  order: 9,
} as const

/** What is said, in one step of a chain, and what it would mean were it not so. */
interface Said {
  readonly id: string
  readonly step: Because
  /** "the casting date was misread" */
  readonly ifNot: string
  readonly givenUp: number
  /** True when it is put to the test and narrows nothing: what somebody claims. */
  readonly onTrial: boolean
}

/** When an event was: readings of which one holds. */
export interface DatedFact extends Said {
  readonly event: string
  readonly readings: readonly OpenInterval[]
}

/** `before` came that many days before `after`. */
export interface OrderRule extends Said {
  readonly before: string
  readonly after: string
  readonly minDays: number
  readonly maxDays: number | null
}

/** How long before its car such a part is dated. */
export interface PartLead {
  readonly event: string
  readonly partId: string
  readonly minDays: number
  readonly maxDays: number | null
  readonly source: string
}

/** Days of building that a date on a part leaves when the part came with the car. */
export function leavesForBuilding({ from, to }: OpenInterval, { minDays, maxDays }: PartLead): OpenInterval {
  return {
    from: from === null ? null : isoDay(dayNumber(from) + minDays),
    to: to === null || maxDays === null ? null : isoDay(dayNumber(to) + maxDays),
  }
}

/** Id of the fact that a part came with the car, so that its date bounds the building. */
export const fittedFact = (partId: string): string => `${FITTED}${partId}`
export const isFittedFact = (id: string): boolean => id.startsWith(FITTED)
const FITTED = 'fitted '

/** Everything dated, as collected from a record. */
export interface DatedThings {
  readonly events: readonly DatedEvent[]
  readonly facts: readonly DatedFact[]
  readonly rules: readonly OrderRule[]
  readonly leads: readonly PartLead[]
  readonly unread: readonly UnreadDate[]
  /** By event: readings of its code that are impossible, with the reason. */
  readonly impossible: ReadonlyMap<string, readonly string[]>
}

export const BUILT = 'car:built'
export const REGISTERED = 'car:registered'

/** Several collections as one. */
export const together = (things: readonly Partial<DatedThings>[]): DatedThings => ({
  events: things.flatMap(({ events }) => events ?? []),
  facts: things.flatMap(({ facts }) => facts ?? []),
  rules: things.flatMap(({ rules }) => rules ?? []),
  leads: things.flatMap(({ leads }) => leads ?? []),
  unread: things.flatMap(({ unread }) => unread ?? []),
  impossible: new Map(things.flatMap(({ impossible }) => [...(impossible ?? [])])),
})

export const COMMON_PRACTICE = 'common practice, no source'
export const references = (kind: Because['references'][number]['kind'], keys: readonly (string | number)[]) =>
  keys.map((key) => ({ kind, key: String(key) }))
