import { z } from 'zod'
import { ownDimensions } from './body-dimensions.ts'
import { calendarDay, coatingUnit, instant, lengthUnit, lineText, noteText, requiredLine } from './units.ts'
import { bodyStyle, inspectionLevel, intrusiveStep, nameChoice } from './words.ts'

/** Conditions that decide which panels a car has, such as `sunroof`, `pillared` or, on one side, `filler-flap.L`. */
export const carConditions = z.array(z.string().max(60)).max(40)

/** What the car is, as far as it is told or known; one row in a record. */
export const particulars = z.strictObject({
  /** Shown at the head of every page: "Sedge coupé, 1960". */
  title: requiredLine,
  maker: lineText,
  line: lineText,
  body: bodyStyle,
  steering: z.enum(['left', 'right']),
  marketOfFirstSale: lineText,
  colourNow: lineText,
  /** Material and construction, described before condition is judged. */
  construction: noteText,
  builtFrom: calendarDay.nullable(),
  builtTo: calendarDay.nullable(),
  /** Grounds of the build interval; empty when the interval is not known. */
  builtGrounds: noteText,
  history: noteText,
  conditions: carConditions,
  /** What this car measures; whatever is left out is drawn as its body usually is. */
  dimensions: ownDimensions.default({}),
})
export type Particulars = z.infer<typeof particulars>

/** Who examines, for whom, for what use, and how things are shown; one row in a record. */
export const commission = z.strictObject({
  recordNumber: requiredLine,
  examiner: requiredLine,
  examinerRole: lineText,
  examinerContact: lineText,
  examinerCompetence: noteText,
  client: lineText,
  otherUsers: lineText,
  notForReliance: lineText,
  intendedUse: z.enum([
    'purchase',
    'condition report',
    'ledger of corrections',
    'check of claims',
    'insurance',
    'sale',
    'dispute',
    'other',
  ]),
  question: noteText,
  titleAsTold: lineText,
  titleVerified: z.boolean(),
  effectiveDate: calendarDay.nullable(),
  independence: noteText,
  helpers: lineText,
  review: noteText,
  retentionYears: z.number().int().min(0).max(100),
  assumptions: noteText,
  currency: z.string().regex(/^[A-Z]{3}$/, 'Write three capital letters, such as GBP'),
  names: nameChoice,
  lengthUnit,
  coatingUnit,
  level: inspectionLevel,
  /** Photograph positions go into reports only when this is true. */
  positionsInReports: z.boolean(),
})
export type Commission = z.infer<typeof commission>

/** One examination of the car: where, when, in what light. Number V1, V2... */
export const visitDraft = z.strictObject({
  beganAt: instant,
  endedAt: instant.nullable(),
  place: lineText,
  light: lineText,
  weather: lineText,
  surface: z.enum(['dry', 'wet', 'dirty', 'wet and dirty']),
  support: z.enum(['on the ground', 'on stands', 'on a lift']),
  temperatureC: z.number().min(-60).max(70).nullable(),
  present: lineText,
  odometer: lineText,
  stateOnArrival: noteText,
})
export const visit = visitDraft.extend({ number: z.number().int().positive() })
export type VisitDraft = z.infer<typeof visitDraft>
export type Visit = z.infer<typeof visit>

/** The owner's leave for one intrusive step; keyed by the step. */
export const consent = z.strictObject({
  step: intrusiveStep,
  given: z.boolean(),
  by: lineText,
  on: calendarDay.nullable(),
  /** What was disturbed, where, and how it was made good; empty while not done. */
  done: noteText,
})
export type Consent = z.infer<typeof consent>

/** A number found on the car or looked for: chassis, engine, gearbox, tag, plate. Number N1, N2... */
export const carNumberDraft = z.strictObject({
  kind: requiredLine,
  where: lineText,
  howRead: z.enum([
    'read character by character',
    'from a photograph',
    'from paper',
    'told',
    'not looked for',
    'not found',
  ]),
  asRead: lineText,
  onPaper: lineText,
  paper: lineText,
  exhibits: z.array(z.number().int().positive()).max(200),
  note: noteText,
})
export const carNumber = carNumberDraft.extend({ number: z.number().int().positive() })
export type CarNumberDraft = z.infer<typeof carNumberDraft>
export type CarNumber = z.infer<typeof carNumber>
