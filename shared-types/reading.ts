import { z } from 'zod'
import { coatingSubstrate } from './coating.ts'
import { viewId } from './finding.ts'
import { panelId } from './panel.ts'
import { calendarDay, coatingUnit, instant, lineText, noteText, requiredLine, thicknessUm } from './units.ts'

/** What the gauge was set to when it read. */
export const gaugeMode = z.enum(['magnetic', 'eddy current', 'ultrasonic', 'not noted'])

/** One value of a spot. Saturated means "more than"; a reading that failed is a result too. */
export const readingValue = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('value'), um: thicknessUm }),
  z.strictObject({ kind: z.literal('more than'), um: thicknessUm }),
  z.strictObject({ kind: z.literal('no reading') }),
])
export type ReadingValue = z.infer<typeof readingValue>

/** Up to ten readings within 40 mm of one point of a panel. Number R1, R2... */
export const spotDraft = z.strictObject({
  panelId,
  view: viewId,
  /** Place in the view's millimetres; null when only the panel was noted. */
  at: z.strictObject({ u: z.number().min(-20_000).max(20_000), v: z.number().min(-20_000).max(20_000) }).nullable(),
  where: lineText,
  values: z.array(readingValue).min(1).max(10),
  /** The unit the values were read in; they are stored in micrometres. */
  enteredIn: coatingUnit,
  gauge: z.number().int().positive().nullable(),
  mode: gaugeMode,
  /** What lies below the coating there. */
  substrate: coatingSubstrate.default('unknown'),
  readAt: instant,
  exhibits: z.array(z.number().int().positive()).max(200),
  note: noteText,
})
export const spot = spotDraft.extend({ number: z.number().int().positive() })
export type SpotDraft = z.infer<typeof spotDraft>
export type Spot = z.infer<typeof spot>

/** A coating gauge. Its error model is ±(a + b·t) as its maker declares it. Number G1, G2... */
export const gaugeDraft = z.strictObject({
  name: requiredLine,
  serial: lineText,
  principle: z.enum(['magnetic induction', 'eddy current', 'dual', 'ultrasonic']),
  rangeUm: thicknessUm.nullable(),
  /** Constant part of the declared error, µm; null when not declared. */
  errorUm: thicknessUm.nullable(),
  /** Proportional part of the declared error, per cent of the reading. */
  errorPercent: z.number().min(0).max(100).nullable(),
  probeDiameterMm: z.number().min(0).max(200).nullable(),
  certifiedOn: calendarDay.nullable(),
  certificate: lineText,
})
export const gauge = gaugeDraft.extend({ number: z.number().int().positive() })
export type GaugeDraft = z.infer<typeof gaugeDraft>
export type Gauge = z.infer<typeof gauge>

/** A check of a gauge against a shim or bare metal. Number H1, H2... */
export const gaugeCheckDraft = z.strictObject({
  gauge: z.number().int().positive(),
  when: z.enum(['before', 'during', 'after']),
  at: instant,
  /** Certified thickness of the shim; 0 is bare metal. */
  shimUm: thicknessUm,
  readUm: z.array(thicknessUm).min(1).max(10),
  note: lineText,
})
export const gaugeCheck = gaugeCheckDraft.extend({ number: z.number().int().positive() })
export type GaugeCheckDraft = z.infer<typeof gaugeCheckDraft>
export type GaugeCheck = z.infer<typeof gaugeCheck>
