import { z } from 'zod'
import { dateCodeField, dateCodeGrammar } from './date-code-grammar.ts'
import { calendarDay, lineText, requiredLine } from './units.ts'

/** Days from the first to the last, both counted. */
export const dateInterval = z.strictObject({ from: calendarDay, to: calendarDay })
export type DateInterval = z.infer<typeof dateInterval>

/** How a check of a written number came out. None of them says that a number is forged. */
const checkResult = z.enum(['passes', 'fails', 'does not apply'])
const numberCheck = z.strictObject({ id: z.string(), result: checkResult, because: z.string(), source: z.string() })
export type NumberCheck = z.infer<typeof numberCheck>

export const identificationNumber = {
  about: 'A 17-character identification number against 49 CFR part 565: characters, check digit, model year, maker.',
  input: z.strictObject({
    /** As read; `?` for each character that could not be read. */
    asRead: requiredLine,
    /** Market the car was first sold in: the check digit is law only in the first two. */
    market: z.enum(['United States', 'Canada', 'elsewhere', 'not known']),
    /** Position 7 tells the two cycles of model years apart only on these. */
    vehicle: z.enum(['car or light vehicle up to 4536 kg', 'other', 'not known']),
    /** Model years the car may be of, from other evidence; null when open. */
    modelYearFrom: z.number().int().min(1880).max(2100).nullable().default(null),
    modelYearTo: z.number().int().min(1880).max(2100).nullable().default(null),
    maxCompletions: z.number().int().min(1).max(5000).default(200),
  }),
  output: z.strictObject({
    normalised: z.string(),
    checks: z.array(numberCheck).readonly(),
    /** Years position 10 can mean, every cycle that is not ruled out. */
    modelYears: z.array(z.number().int()).readonly(),
    makerCode: z.string().nullable(),
    lowVolumeMaker: z.boolean().nullable(),
    /** Numbers that fill the unreadable places; with the check digit right where it is law. */
    completions: z.array(z.string()).readonly(),
    /** How many there are, in figures; more than are listed when `bounded`. */
    completionCount: z.string(),
    bounded: z.boolean(),
  }),
}

export const tyreCode = {
  about: 'The date group of a tyre identification number by 49 CFR 574.5, every reading as days.',
  input: z.strictObject({
    /** Last group of the code: three figures (before July 2000) or four. A triangle after it is left out. */
    asRead: requiredLine,
    notBefore: calendarDay.nullable().default(null),
    notAfter: calendarDay.nullable().default(null),
  }),
  output: z.strictObject({
    readings: z
      .array(
        z.strictObject({
          interval: dateInterval,
          week: z.number().int(),
          year: z.number().int(),
          era: z.enum(['three figures', 'four figures']),
          /** Days of the same numbers read as an ISO 8601 week; null when that year has no such week. */
          isoWeek: dateInterval.nullable(),
        }),
      )
      .readonly(),
    impossible: z.array(z.strictObject({ reading: z.string(), because: z.string() })).readonly(),
    notes: z.array(z.string()).readonly(),
  }),
}

export const dateCode = {
  about: 'One date code read under several grammars: every reading as days, and what is impossible with the reason.',
  input: z.strictObject({
    asRead: requiredLine,
    grammars: z.array(dateCodeGrammar).min(1).max(50),
    notBefore: calendarDay.nullable().default(null),
    notAfter: calendarDay.nullable().default(null),
  }),
  output: z.strictObject({
    readings: z
      .array(
        z.strictObject({
          grammar: z.string(),
          label: z.string(),
          interval: dateInterval,
          said: z.array(z.strictObject({ field: dateCodeField, text: z.string(), meaning: z.string() })).readonly(),
          source: z.string(),
        }),
      )
      .readonly(),
    impossible: z
      .array(z.strictObject({ grammar: z.string(), label: z.string(), reading: z.string(), because: z.string() }))
      .readonly(),
    /** True when there were more ways to read the code than are followed; the readings are then not all. */
    bounded: z.boolean(),
  }),
}
export type DateCodeAnswer = z.infer<typeof dateCode.output>

const lead = z.strictObject({
  minDays: z.number().int().min(-3650).max(36_500),
  /** Null: no longest. */
  maxDays: z.number().int().min(-3650).max(36_500).nullable(),
})

/** A fact or a rule, as a reason. */
const timeLineReason = z.strictObject({ kind: z.enum(['fact', 'rule']), id: z.string(), label: z.string() })
export type TimeLineReason = z.infer<typeof timeLineReason>

export const timeLine = {
  about: 'Dated facts and rules of order together: each event narrowed, with reasons; conflicts as smallest sets.',
  input: z.strictObject({
    /** What happened once: cast, assembled, built, first registered. */
    events: z
      .array(z.strictObject({ id: requiredLine, label: requiredLine }))
      .min(1)
      .max(1000),
    /** What says when an event was. Several intervals are readings of which one holds; empty ends are open. */
    facts: z
      .array(
        z.strictObject({
          id: requiredLine,
          event: requiredLine,
          label: requiredLine,
          readings: z
            .array(z.strictObject({ from: calendarDay.nullable(), to: calendarDay.nullable() }))
            .min(1)
            .max(60),
          source: lineText,
        }),
      )
      .max(1000),
    /** `after` followed `before` by the lead time. */
    rules: z
      .array(
        z.strictObject({
          id: requiredLine,
          before: requiredLine,
          after: requiredLine,
          lead,
          label: requiredLine,
          source: lineText,
        }),
      )
      .max(4000),
    /** Smallest sets looked for before the search says that there may be more. */
    maxConflicts: z.number().int().min(1).max(50).default(20),
  }),
  output: z.strictObject({
    consistent: z.boolean(),
    events: z
      .array(
        z.strictObject({
          id: z.string(),
          label: z.string(),
          from: calendarDay.nullable(),
          to: calendarDay.nullable(),
          /** Facts and rules that together set the first and the last day, in order from a date to the event. */
          fromBecause: z.array(timeLineReason).readonly(),
          toBecause: z.array(timeLineReason).readonly(),
        }),
      )
      .readonly(),
    /** Readings of a fact that the others leave no room for. */
    droppedReadings: z
      .array(z.strictObject({ fact: z.string(), reading: z.string(), because: z.array(timeLineReason).readonly() }))
      .readonly(),
    /** Facts and rules that cannot all hold; take any one away and the rest of that set can. */
    conflicts: z.array(z.array(timeLineReason).readonly()).readonly(),
    allConflictsFound: z.boolean(),
    /** What the days of the events were worked out without, because it is part of a conflict. */
    setAside: z.array(timeLineReason).readonly(),
  }),
}
export type TimeLineInput = z.infer<typeof timeLine.input>
export type TimeLine = z.infer<typeof timeLine.output>

const odometerReading = z.strictObject({
  id: requiredLine,
  when: dateInterval,
  value: z.number().min(0).max(10_000_000),
  unit: z.enum(['km', 'mile']),
  label: requiredLine,
})

export const odometer = {
  about: 'Odometer readings in order of time: none may run back, unless the counter rolled over.',
  input: z.strictObject({
    readings: z.array(odometerReading).min(1).max(1000),
    /** Figures of the counter without tenths; null when not seen. */
    figures: z.number().int().min(4).max(7).nullable(),
  }),
  output: z.strictObject({
    runsBack: z
      .array(
        z.strictObject({
          earlier: z.string(),
          later: z.string(),
          byDistance: z.number(),
          unit: z.enum(['km', 'mile']),
          explanations: z.array(z.string()).readonly(),
        }),
      )
      .readonly(),
    /** Pairs whose days overlap: nothing is said about their order. */
    notOrdered: z.number().int(),
    words: z.string(),
  }),
}
