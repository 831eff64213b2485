import type { TimeLineInput, TimeLineReason } from '../../../shared-types/dating.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { type DaySpan, dayNumber, isoDay } from './calendar.ts'
import { type Bound, ORIGIN } from './temporal-network.ts'

/** A fact with its possible readings as days, or a rule of order; open ends are infinite. */
export type Constraint = { readonly reason: TimeLineReason } & (
  | { readonly kind: 'fact'; readonly node: number; readonly readings: readonly DaySpan[] }
  | { readonly kind: 'rule'; readonly before: number; readonly after: number; readonly lead: DaySpan }
)

/**
 * Facts and rules of a time line in one list, facts first; nodes are events in their order, from 1.
 * @throws ProblemError when an id is used twice, an event is not there or an interval ends before it begins.
 */
export function constraintsOf({ events, facts, rules }: TimeLineInput): readonly Constraint[] {
  const refuse = (message: string, field: string): never => {
    throw new ProblemError('input-refused', message, { field })
  }
  for (const [field, list] of Object.entries({ events, facts, rules })) {
    const seen = new Set<string>()
    const twice = list.map(({ id }) => id).find((id) => seen.has(id) || !seen.add(id))
    if (twice !== undefined) refuse(`“${twice}” is the name of two ${field}; give each its own.`, field)
  }
  const nodes = new Map(events.map(({ id }, at) => [id, at + 1]))
  const nodeOf = (id: string, field: string): number =>
    nodes.get(id) ?? refuse(`There is no event “${id}”; add it or choose one of the list.`, field)
  return [
    ...facts.map((fact): Constraint => {
      const readings = fact.readings.map(({ from, to }) => ({
        from: from === null ? Number.NEGATIVE_INFINITY : dayNumber(from),
        to: to === null ? Number.POSITIVE_INFINITY : dayNumber(to),
      }))
      if (readings.some(({ from, to }) => from > to))
        refuse(`“${fact.label}” ends before it begins; exchange its two days.`, 'facts')
      const reason = { kind: 'fact' as const, id: fact.id, label: fact.label }
      return { kind: 'fact', reason, node: nodeOf(fact.event, 'facts'), readings }
    }),
    ...rules.map((rule): Constraint => {
      const lead = { from: rule.lead.minDays, to: rule.lead.maxDays ?? Number.POSITIVE_INFINITY }
      if (lead.from > lead.to) refuse(`“${rule.label}”: the shortest lead time is longer than the longest.`, 'rules')
      const reason = { kind: 'rule' as const, id: rule.id, label: rule.label }
      return { kind: 'rule', reason, before: nodeOf(rule.before, 'rules'), after: nodeOf(rule.after, 'rules'), lead }
    }),
  ]
}

/** Adds the bounds of one constraint; a fact bounds by the hull of the readings left to it. */
export function addBounds(
  bounds: Bound[],
  constraint: Constraint,
  because: number,
  readings: readonly DaySpan[],
): void {
  const rule = constraint.kind === 'rule'
  const from = rule ? constraint.before : ORIGIN
  const to = rule ? constraint.after : constraint.node
  const { from: least, to: most } = rule ? constraint.lead : hullOf(readings)
  if (most !== Number.POSITIVE_INFINITY) bounds.push({ from, to, atMost: most, because })
  if (least !== Number.NEGATIVE_INFINITY) bounds.push({ from: to, to: from, atMost: -least, because })
}

function hullOf(readings: readonly DaySpan[]): DaySpan {
  let from = Number.POSITIVE_INFINITY
  let to = Number.NEGATIVE_INFINITY
  for (const reading of readings) {
    from = Math.min(from, reading.from)
    to = Math.max(to, reading.to)
  }
  return { from, to }
}

export const readingInWords = ({ from, to }: DaySpan): string => {
  if (from === Number.NEGATIVE_INFINITY) return to === Number.POSITIVE_INFINITY ? 'any day' : `until ${isoDay(to)}`
  if (to === Number.POSITIVE_INFINITY) return `from ${isoDay(from)}`
  return from === to ? isoDay(from) : `${isoDay(from)} to ${isoDay(to)}`
}
