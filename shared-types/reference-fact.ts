import { z } from 'zod'
import { dateCodeGrammar } from './date-code-grammar.ts'
import { panelId } from './panel.ts'
import { partId } from './part.ts'
import { sheetName } from './sheet-copy.ts'
import { calendarDay, lineText, noteText, requiredLine } from './units.ts'

/** A name of this sheet or of one it imports; `sheet/name` where two would answer to it. */
export const sheetReference = z
  .string()
  .regex(/^([a-z0-9]+(-[a-z0-9]+)*\/)?[a-z0-9]+(-[a-z0-9]+)*$/, 'Small letters, figures and dashes; sheet/name.')
  .max(161)

/** Line drawing in a square of 100 by 100, the first corner at the top left: SVG path data (W3C SVG 2, chapter 9). */
const sketchPaths = z
  .array(
    z
      .string()
      .regex(/^[MmLlHhVvCcSsQqTtAaZz0-9.,\s-]+$/, 'Only path letters and numbers.')
      .max(4000),
  )
  .max(40)
export const sheetSketch = z.strictObject({
  /** What the drawing shows, for those who cannot see it. */
  words: requiredLine,
  /** Outlines. */
  paths: sketchPaths.min(1),
  /** Thin lines: what lies behind, folds, shading. */
  fine: sketchPaths.default([]),
  /** The place to look at, drawn in the accent colour. */
  marked: sketchPaths.default([]),
})
export type SheetSketch = z.infer<typeof sheetSketch>

const share = z.number().min(0, 'A share is at least 0.').max(1, 'A share is at most 1.')
/** Value to share; values left out have 0. */
const shares = z.record(sheetName, share)
/** Every variable named has one of the values (or groups of values) listed. Empty: every car. */
export const sheetCondition = z.record(sheetReference, z.array(sheetName).min(1).max(5000))
export type SheetCondition = z.infer<typeof sheetCondition>

/** A day something changed on; an interval when only that is known. */
export const changeDay = z.union([calendarDay, z.strictObject({ earliest: calendarDay, latest: calendarDay })])
export type ChangeDay = z.infer<typeof changeDay>

/** Days in which a fact holds, both counted; null ends are open. Read against the sheet's date variable. */
const days = { from: changeDay.nullable().default(null), until: changeDay.nullable().default(null) }

const fact = {
  id: sheetName,
  /** Source of the fact; null: none, and every because-chain says so. */
  source: sheetName.nullable().default(null),
  note: noteText.default(''),
}
/** What a rule may also say: how sure it is. Under 100 it may be wrong as a whole, and evidence can speak against it. */
const rule = { ...fact, surePercent: z.number().min(1).max(100).default(100) }

const price = z.strictObject({ amount: z.number().min(0), currency: requiredLine })

export const sheetRule = z.discriminatedUnion('kind', [
  /** No car was built that meets the whole condition (within the days). */
  z.strictObject({ ...rule, kind: z.literal('not built together'), when: sheetCondition, ...days }),
  /** A car that meets `when` also has at least one of `needs`. */
  z.strictObject({ ...rule, kind: z.literal('requires'), when: sheetCondition, needs: sheetCondition, ...days }),
  /** Cars that meet `when` were built from that day on, or up to that day, it counted. */
  z.strictObject({ ...rule, kind: z.literal('only from'), when: sheetCondition, day: changeDay }),
  z.strictObject({ ...rule, kind: z.literal('only until'), when: sheetCondition, day: changeDay }),
  /** Cars that meet `on` had `value` unless an option of the same variable took its place. */
  z.strictObject({
    ...rule,
    kind: z.literal('standard'),
    variable: sheetReference,
    value: sheetName,
    on: sheetCondition,
    ...days,
  }),
  /**
   * `value` could be ordered on cars that meet `on`. A value with options is built only where one of them, or a standard
   * fitment, says so. `share`: part of those cars that had it; null when not known.
   */
  z.strictObject({
    ...rule,
    kind: z.literal('option'),
    variable: sheetReference,
    value: sheetName,
    on: sheetCondition,
    share: share.nullable().default(null),
    price: price.nullable().default(null),
    ...days,
  }),
])
export type SheetRule = z.infer<typeof sheetRule>

/** One value, or several with the share of such cars that show each (sum 1). */
const shown = z.union([sheetName, shares])

/** What the tell shows on cars that meet `when` within the days, where no case before it applies. */
export const tellCase = z.strictObject({
  when: sheetCondition,
  ...days,
  shows: shown,
  /** Source of this case where it is not the tell's own. */
  source: sheetName.nullable().default(null),
})

const tellValue = z.strictObject({
  id: sheetName,
  name: requiredLine,
  /** How it looks, in a line. */
  looks: lineText.default(''),
  /** For a tell with a unit: what one measures when it is this value, with its spread (one standard deviation). */
  measure: z
    .strictObject({ mean: z.number(), standardDeviation: z.number().min(0) })
    .nullable()
    .default(null),
  sketch: sheetSketch.nullable().default(null),
})

/** Something one can look at that separates possibilities. */
export const sheetTell = z.strictObject({
  ...fact,
  name: requiredLine,
  lookAt: noteText,
  where: z.strictObject({
    panels: z.array(panelId).max(50).default([]),
    parts: z.array(partId).max(50).default([]),
    words: lineText.default(''),
  }),
  how: noteText.default(''),
  /** 1 at a glance, 2 a minute, 3 some minutes and a lamp, 4 tools, 5 a workshop and hours. */
  effort: z.number().int().min(1).max(5),
  access: z.enum(['from outside', 'doors and lids open', 'from below', 'trim or a cover lifted', 'taken apart']),
  unit: z.enum(['mm', 'degrees', 'kg', 'turns', 'volts', 'count']).nullable().default(null),
  /** `as built`: the values are those of the variable. `by cases`: own values, each following from the build. */
  follows: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('as built'), variable: sheetReference }),
    z.strictObject({
      kind: z.literal('by cases'),
      values: z.array(tellValue).min(2).max(200),
      cases: z.array(tellCase).min(1).max(500),
      /** Where no case applies; null: not known, every value alike. */
      otherwise: shown.nullable().default(null),
    }),
  ]),
  /** Share misread into any other value alike, or value as fitted to value as read to share (rows sum to 1). */
  misread: z.union([share, z.record(sheetName, shares)]).default(0),
  /** Share replaced in service since, and what is fitted then (sum 1). Null: never. */
  replaced: z.strictObject({ share, by: shares }).nullable().default(null),
  /** Share of cars on which what one sees has nothing to do with the build. */
  wrong: share.default(0),
  /** Donor group whose parts travel together. */
  travelsWith: sheetReference.nullable().default(null),
  caution: lineText.default(''),
  sketch: sheetSketch.nullable().default(null),
})
export type SheetTell = z.infer<typeof sheetTell>

/** Parts that come off one other car together, and what each kind of donor brings: tell to value to share. */
export const sheetDonor = z.strictObject({
  ...fact,
  name: requiredLine,
  kinds: z
    .array(z.strictObject({ id: sheetName, name: requiredLine, share, brings: z.record(sheetReference, shares) }))
    .min(1)
    .max(50),
})

/** How many were built, by one source, over some variables. Sources may overlap and disagree. */
export const sheetCount = z.strictObject({
  ...fact,
  name: requiredLine,
  /** Counts of one account are taken to hold together; accounts are weighed against each other. Null: the source's own. */
  account: sheetName.nullable().default(null),
  cells: z
    .array(z.strictObject({ when: sheetCondition, built: z.number() }))
    .min(1)
    .max(20_000),
  /** Number built of what no cell names; 0 when the cells are all there were. Null: every combination has a cell. */
  others: z.number().nullable().default(null),
})
export type SheetCount = z.infer<typeof sheetCount>

/** Another car that carried the same part, and what is altered when it is made to fit. */
export const sheetInterchange = z.strictObject({
  ...fact,
  part: partId,
  name: requiredLine,
  /** Cars of this sheet the part belongs to. */
  on: sheetCondition.default({}),
  carriers: z
    .array(
      z.strictObject({
        line: requiredLine,
        from: calendarDay.nullable().default(null),
        until: calendarDay.nullable().default(null),
        altered: lineText.default(''),
        toldBy: lineText.default(''),
      }),
    )
    .min(1)
    .max(200),
})

/** Tell that is read off these very marks: what is noted of it and the number are one observation. */
const readBy = sheetReference.nullable().default(null)

/** One place of a number: marks that must stand there, marks that tell of the build, or figures in sequence. */
const numberPlace = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('fixed'),
    texts: z.array(requiredLine).min(1).max(20),
    optional: z.boolean().default(false),
  }),
  z.strictObject({
    kind: z.literal('marks'),
    name: requiredLine,
    rows: z
      .array(z.strictObject({ text: requiredLine, means: sheetCondition, words: lineText.default('') }))
      .min(1)
      .max(500),
    readBy,
  }),
  z.strictObject({
    kind: z.literal('sequence'),
    name: requiredLine,
    minDigits: z.number().int().min(1).max(12),
    maxDigits: z.number().int().min(1).max(12),
    /** Stretches of the sequence, both ends counted, and what cars within them are. */
    stretches: z
      .array(
        z.strictObject({
          first: z.number().int().min(0),
          last: z.number().int().min(0),
          means: sheetCondition.default({}),
          ...days,
        }),
      )
      .max(2000)
      .default([]),
    readBy,
  }),
])

/** How one kind of number on the car is written: chassis, engine, body, commission number. */
export const sheetNumber = z.strictObject({
  ...fact,
  name: requiredLine,
  where: lineText.default(''),
  part: partId.nullable().default(null),
  /** Spaces, dots, dashes and strokes as found say nothing. */
  passOverSeparators: z.boolean().default(true),
  /** Share of single characters read wrong by a careful reader on the car. The default is common practice, no source. */
  misread: share.default(0.005),
  /**
   * Share of cars whose number is not the one they left with: stamped anew, or on a plate or part that was changed. It is
   * then any number of this form. The default is common practice, no source.
   */
  replaced: share.default(0.03),
  places: z.array(numberPlace).min(1).max(20),
})
export type SheetNumber = z.infer<typeof sheetNumber>

/** How one kind of date on a part is written, and how long before the car it usually is. */
export const sheetDateCode = z.strictObject({
  ...fact,
  part: partId,
  grammar: dateCodeGrammar,
  leadDays: z.strictObject({ least: z.number().int(), most: z.number().int() }).nullable().default(null),
})
export type SheetDateCode = z.infer<typeof sheetDateCode>

/** All kinds of facts, as they stand in a sheet. */
export const referenceFacts = {
  rules: z.array(sheetRule).max(20_000).default([]),
  tells: z.array(sheetTell).max(5000).default([]),
  donors: z.array(sheetDonor).max(200).default([]),
  counts: z.array(sheetCount).max(500).default([]),
  interchange: z.array(sheetInterchange).max(5000).default([]),
  numbers: z.array(sheetNumber).max(200).default([]),
  dateCodes: z.array(sheetDateCode).max(500).default([]),
}
