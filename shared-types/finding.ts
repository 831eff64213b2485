import { z } from 'zod'
import { panelId } from './panel.ts'
import { lengthMm, lineText, noteText, percent } from './units.ts'
import { findingKind, findingLayer, howLearned, recommendedAction, severity, urgency } from './words.ts'

/** Views of the plan. Axes are given in `figure.ts`. */
export const viewId = z.enum(['left', 'roof', 'right', 'front', 'rear', 'under', 'openings', 'bay', 'floor'])
export type ViewId = z.infer<typeof viewId>

const coordinateMm = z.number().min(-20_000).max(20_000)
/** A place on the plan, in the millimetres of its view. */
export const planPoint = z.strictObject({ u: coordinateMm, v: coordinateMm })
export type PlanPoint = z.infer<typeof planPoint>

/** Where a finding lies: a point, a line or a closed area drawn on the outline; null when the whole panel is meant. */
export const extent = z.strictObject({
  view: viewId,
  shape: z.enum(['point', 'line', 'area']),
  points: z.array(planPoint).min(1).max(500),
})
export type Extent = z.infer<typeof extent>

/**
 * Grade of rust by ISO 4628-3:2016 or blistering by ISO 4628-2:2016.
 * `affectedPercent` is the share of the looked-at area that shows it.
 */
export const surfaceGrade = z.discriminatedUnion('standard', [
  z.strictObject({
    standard: z.literal('ISO 4628-3'),
    affectedPercent: percent,
    basis: z.enum(['measured', 'estimated']),
  }),
  z.strictObject({
    standard: z.literal('ISO 4628-2'),
    quantity: z.number().int().min(0).max(5),
    size: z.number().int().min(0).max(5),
  }),
])

/** What the surveyor concludes at a place. Number F1, F2... for ever. */
export const findingDraft = z.strictObject({
  panelId,
  kind: findingKind,
  layer: findingLayer,
  extent: extent.nullable(),
  /** Measured size of what is described; null when not measured. */
  lengthMm: lengthMm.nullable(),
  widthMm: lengthMm.nullable(),
  depthMm: lengthMm.nullable(),
  /** Expanded uncertainty (k = 2) of the sizes, mm; null when not stated. */
  sizeUncertaintyMm: lengthMm.nullable(),
  severity,
  urgency,
  action: recommendedAction,
  learned: howLearned,
  /** Who told it or what it was inferred from; empty when seen, felt or measured. */
  learnedFrom: lineText,
  grade: surfaceGrade.nullable(),
  /** Suspected cause, kept apart from what was observed. */
  suspectedCause: noteText,
  /** True when it can hurt somebody: told to the owner at once and printed on the summary page. */
  dangerous: z.boolean(),
  exhibits: z.array(z.number().int().positive()).max(200),
  note: noteText,
})
export const finding = findingDraft.extend({ number: z.number().int().positive() })
export type FindingDraft = z.infer<typeof findingDraft>
export type Finding = z.infer<typeof finding>
