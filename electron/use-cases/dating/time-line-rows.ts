import type { TimeLine } from '../../../shared-types/dating.ts'
import type { Because } from '../../../shared-types/judgement.ts'
import type { DatedRow, DateStanding, WordedWindow } from '../../../shared-types/time-line-view.ts'
import { dayNumber, isoDay } from '../../analysis/dating/calendar.ts'
import { readingInWords } from '../../analysis/dating/dated-constraints.ts'
import { dayWords, intervalWords, type OpenInterval, stretchWords } from '../../analysis/dating/interval-words.ts'
import type { Resolved } from './conflict-arguments.ts'
import {
  BUILT,
  type DatedEvent,
  type DatedFact,
  type DatedThings,
  fittedFact,
  isFittedFact,
  leavesForBuilding,
  type PartLead,
} from './dated-things.ts'

type EventDays = TimeLine['events'][number]
type Steps = ReadonlyMap<string, Because>

/** A reading by its place among those of its fact, and why it is left no room. */
interface Dropped {
  readonly at: number
  readonly because: string
}

export const worded = ({ from, to }: OpenInterval): WordedWindow => ({ from, to, words: intervalWords({ from, to }) })

const kinds: readonly DatedRow['kind'][] = ['car', 'part', 'paper', 'work', 'claim', 'visit']

/** Rows of the time line: the car first, then parts, papers, work, claims and visits, each by day. */
export function timeLineRows(things: DatedThings, resolved: Resolved): readonly DatedRow[] {
  const days = new Map(resolved.line.events.map((event) => [event.id, event]))
  const built = days.get(BUILT) ?? null
  const steps = new Map([...things.facts, ...things.rules].map(({ id, step }) => [id, step]))
  return things.events
    .flatMap((event) => {
      const own = days.get(event.id)
      return own === undefined ? [] : [rowOf(event, own, built, things, resolved, steps)]
    })
    .sort((one, other) => kinds.indexOf(one.kind) - kinds.indexOf(other.kind) || byDays(one, other))
}

const startOf = ({ given, narrowed, id }: DatedRow): string =>
  id === BUILT ? '' : (given[0]?.from ?? narrowed.from ?? narrowed.to ?? '9999')
const byDays = (one: DatedRow, other: DatedRow): number =>
  startOf(one).localeCompare(startOf(other)) || one.label.localeCompare(other.label, 'en')

function rowOf(
  event: DatedEvent,
  own: EventDays,
  built: EventDays | null,
  things: DatedThings,
  resolved: Resolved,
  steps: Steps,
): DatedRow {
  const facts = things.facts.filter((fact) => fact.event === event.id)
  const readings = facts.filter(({ onTrial }) => !onTrial).flatMap((fact) => fact.readings)
  const lead = things.leads.find((each) => each.event === event.id) ?? null
  // A part held to be factory fitted bounds the building by a fact of its own; what is left of that is left of the part.
  const fitted = lead === null ? undefined : things.facts.find(({ id }) => id === fittedFact(lead.partId))
  const holds = fitted !== undefined && !resolved.setAside.has(fitted.id)
  const dropped = [...facts, ...(holds ? [fitted] : [])].flatMap((fact) =>
    droppedOf(fact, resolved, steps).map(({ at, because }) => ({
      reading: (fact === fitted ? readings : fact.readings)[at],
      because,
    })),
  )
  const kept = readings.filter((reading) => !dropped.some((each) => each.reading === reading))
  const narrowed = holds && lead !== null && built !== null ? keptOf(kept, lead, built) : own
  const inConflict = resolved.arguments.some(({ set }) =>
    set.some((said) => 'event' in said && said.event === event.id),
  )
  const isSimple = facts.length === 1 && own.fromBecause.length < 2 && own.toBecause.length < 2
  const because = [
    ...(isSimple ? [] : endStep('Not before', own.from, own.fromBecause, steps)),
    ...(isSimple ? [] : endStep('Not after', own.to, own.toBecause, steps)),
    ...(fitted === undefined ? facts.map(({ step }) => step) : [fitted.step]),
    ...(things.impossible.get(event.id) ?? []).map(
      (words): Because => ({ text: `Not possible: ${words}`, sort: 'computed', references: [], source: null }),
    ),
    ...things.rules.filter(({ before, onTrial }) => before === event.id && onTrial).map(({ step }) => step),
  ]
  return {
    ...event,
    // What parts say of the building is told with the parts.
    given: facts
      .filter(({ id, onTrial }) => !onTrial && !isFittedFact(id))
      .flatMap((fact) => fact.readings.map(worded)),
    dropped: dropped.flatMap(({ reading, because: why }) =>
      reading === undefined ? [] : [{ ...worded(reading), because: why }],
    ),
    narrowed: worded(narrowed),
    ...standingOf(event, kept.length === 0 ? readings : kept, lead, built, inConflict),
    leavesForBuilding:
      lead === null || readings.length === 0
        ? null
        : worded(hullOf((kept.length === 0 ? readings : kept).map((reading) => leavesForBuilding(reading, lead)))),
    because: [...new Map(because.map((step) => [`${step.sort} ${step.text}`, step])).values()],
  }
}

/** The end of a window as a step, with what sets it; left out where the one thing said of the event does. */
function endStep(
  words: string,
  day: string | null,
  reasons: EventDays['fromBecause'],
  steps: Steps,
): readonly Because[] {
  if (day === null || reasons.length === 0) return []
  const said = reasons.flatMap(({ id }) => steps.get(id) ?? [])
  const cites = new Map(said.flatMap((step) => step.references).map((each) => [`${each.kind} ${each.key}`, each]))
  return [
    {
      text: `${words} ${dayWords(day)}, set by: ${said.map(({ text }) => text).join(' ')}`,
      sort: 'computed',
      references: [...cites.values()],
      source: null,
    },
  ]
}

/** Readings of a fact that are left no room, with the steps that leave none. */
function droppedOf(fact: DatedFact, { line }: Resolved, steps: Steps): readonly Dropped[] {
  return line.droppedReadings.flatMap(({ fact: id, reading, because }) => {
    const at = id === fact.id ? fact.readings.findIndex((each) => readingInWords(spanOf(each)) === reading) : -1
    if (at < 0) return []
    return [{ at, because: [...new Set(because.flatMap((reason) => steps.get(reason.id)?.text ?? []))].join(' ') }]
  })
}

const spanOf = ({ from, to }: OpenInterval) => ({
  from: from === null ? Number.NEGATIVE_INFINITY : dayNumber(from),
  to: to === null ? Number.POSITIVE_INFINITY : dayNumber(to),
})

/** First and last day of several readings. */
function hullOf(readings: readonly OpenInterval[]): OpenInterval {
  const [from, to] = [readings.map((each) => each.from), readings.map((each) => each.to)]
  return {
    from: from.includes(null) ? null : (from.filter((day) => day !== null).sort()[0] ?? null),
    to: to.includes(null)
      ? null
      : (to
          .filter((day) => day !== null)
          .sort()
          .at(-1) ?? null),
  }
}

/** Days left to a part that came with the car: what is kept of its readings, within the lead time before the building. */
function keptOf(readings: readonly OpenInterval[], { minDays, maxDays }: PartLead, built: EventDays): OpenInterval {
  const { from, to } = hullOf(readings)
  const earliest = built.from === null || maxDays === null ? null : isoDay(dayNumber(built.from) - maxDays)
  const latest = built.to === null ? null : isoDay(dayNumber(built.to) - minDays)
  return {
    from: from === null || (earliest !== null && earliest > from) ? earliest : from,
    to: to === null || (latest !== null && latest < to) ? latest : to,
  }
}

type Standing = Pick<DatedRow, 'standing' | 'standingWords'>

function standingOf(
  event: DatedEvent,
  given: readonly OpenInterval[],
  lead: PartLead | null,
  built: EventDays | null,
  inConflict: boolean,
): Standing {
  if (event.kind === 'part') return partStanding(given, lead, built)
  const standing: DateStanding = inConflict
    ? 'in a conflict'
    : event.kind === 'car'
      ? 'holds with the rest'
      : 'not compared'
  return { standing, standingWords: '' }
}

/** A part against the days left to the building of the car, by every reading of its date. */
function partStanding(given: readonly OpenInterval[], lead: PartLead | null, built: EventDays | null): Standing {
  const last = built?.to ?? null
  const first = built?.from ?? null
  const earliest = given.map(({ from }) => from ?? '').sort()[0] ?? ''
  const latest =
    given
      .map(({ to }) => to ?? '9999-12-31')
      .sort()
      .at(-1) ?? ''
  if (last === null || first === null)
    return {
      standing: 'not compared',
      standingWords: 'Nothing bounds the days of building, so it is compared with nothing.',
    }
  if (earliest > last) {
    const words = `At least ${stretchWords(last, earliest)} after the last day the car can have been built, ${dayWords(last)}: it came later, whatever its type.`
    return { standing: 'later than the car', standingWords: words }
  }
  if (lead === null)
    return {
      standing: 'not compared',
      standingWords: 'No lead time is known for such a part: only that it is not later than the car.',
    }
  const left = hullOf(given.map((reading) => leavesForBuilding(reading, lead)))
  if (left.from !== null && left.from > last) {
    const words = `Nearer to the building than the ${lead.minDays} days such a part takes: it came later, or the lead time was shorter.`
    return { standing: 'later than the car', standingWords: words }
  }
  if (left.to !== null && left.to < first) {
    const words = `More than ${lead.maxDays} days before the first day the car can have been built, ${dayWords(first)}, counted from ${dayWords(latest)}: from stock, or from an earlier car.`
    return { standing: 'earlier than usual', standingWords: words }
  }
  return {
    standing: 'may have come with the car',
    standingWords: 'Its days and its lead time agree with the building. That does not show that it came with this car.',
  }
}
