import type { TimeLineInput, TimeLineReason } from '../../../shared-types/dating.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { type DaySpan, dayNumber, isoDay } from './calendar.ts'
import { type Network, networkOf, ORIGIN } from './temporal-network.ts'

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

/** Network of the bounds of all constraints: constraint n has bound 2n, at most so long, and 2n + 1, at least. */
export function boundsOf(events: number, constraints: readonly Constraint[]): Network {
  const from = new Int32Array(2 * constraints.length)
  const to = new Int32Array(2 * constraints.length)
  for (const [at, constraint] of constraints.entries()) {
    const [before, after] =
      constraint.kind === 'rule' ? [constraint.before, constraint.after] : [ORIGIN, constraint.node]
    from.set([before, after], 2 * at)
    to.set([after, before], 2 * at)
  }
  return networkOf(events + 1, from, to)
}

/** Number of the constraint a bound belongs to. */
export const constraintOf = (bound: number): number => bound >> 1

/** Some of the constraints alone: their events numbered anew, so that little is laid out for few. */
export function someOf(constraints: readonly Constraint[], some: readonly number[]) {
  const nodes = new Map<number, number>()
  const nodeOf = (node: number): number => {
    const known = nodes.get(node) ?? nodes.size + 1
    nodes.set(node, known)
    return known
  }
  const chosen = some.flatMap((at): Constraint[] => {
    const constraint = constraints[at]
    if (constraint === undefined) return []
    if (constraint.kind === 'fact') return [{ ...constraint, node: nodeOf(constraint.node) }]
    return [{ ...constraint, before: nodeOf(constraint.before), after: nodeOf(constraint.after) }]
  })
  return { events: nodes.size, constraints: chosen }
}

export const readingInWords = ({ from, to }: DaySpan): string => {
  if (from === Number.NEGATIVE_INFINITY) return to === Number.POSITIVE_INFINITY ? 'any day' : `until ${isoDay(to)}`
  if (to === Number.POSITIVE_INFINITY) return `from ${isoDay(from)}`
  return from === to ? isoDay(from) : `${isoDay(from)} to ${isoDay(to)}`
}
