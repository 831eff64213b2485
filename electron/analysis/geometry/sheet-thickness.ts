import type { z } from 'zod'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { sheetThickness } from '../../../shared-types/tape-measures.ts'
import { normalQuantile } from '../statistics/quantiles.ts'
import { inMm } from './tape-reading.ts'

/** Below about this, ordinary contact probes are at their end (recalled). */
const THIN_MM = 1

/**
 * Thickness of sheet from a travel time there and back, T = v t / 2 (ASTM E797). Paint is slower than steel, so that its
 * time taken for metal adds p v / v_paint, more than twice its own thickness; it is taken off unless the time runs between
 * two echoes. Uncertainty to first order.
 * @throws ProblemError when the time is nothing or is used up by the paint.
 */
export function sheetFromTime(question: z.infer<typeof sheetThickness.input>): z.infer<typeof sheetThickness.output> {
  const { travelTimeUs, uTimeUs, velocityMetalMs, uVelocityMetalMs, echoToEcho, paintUm, uPaintUm } = question
  if (!(travelTimeUs > 0))
    throw new ProblemError('input-refused', 'The travel time must be greater than nothing: enter microseconds.', {
      field: 'travelTimeUs',
    })
  const mmPerUs = velocityMetalMs / 1000
  const ratio = velocityMetalMs / question.velocityPaintMs
  const paintErrorMm = (paintUm / 1000) * ratio
  const raw = (mmPerUs * travelTimeUs) / 2
  const thicknessMm = echoToEcho ? raw : raw - paintErrorMm
  if (!(thicknessMm > 0))
    throw new ProblemError(
      'input-refused',
      'Paint alone would take that long: check its thickness and the travel time.',
      {
        field: 'paintUm',
      },
    )
  const standard = Math.hypot(
    (mmPerUs * uTimeUs) / 2,
    (thicknessMm * uVelocityMetalMs) / velocityMetalMs,
    echoToEcho ? 0 : (uPaintUm / 1000) * ratio,
  )
  const expandedMm = normalQuantile((1 + question.coverage) / 2) * standard
  const { nominalMm } = question
  return {
    thicknessMm,
    expandedMm,
    paintErrorMm,
    lossPercent: nominalMm === null ? null : (100 * (nominalMm - thicknessMm)) / nominalMm,
    expandedLossPercent: nominalMm === null ? null : (100 * expandedMm) / nominalMm,
    notes: [
      `Sound takes ${inMm(ratio)} times as long through paint as through the same thickness of this metal.`,
      ...(echoToEcho
        ? []
        : ['The paint was taken off by its own thickness; a reading between two echoes needs no such step.']),
      ...(thicknessMm < THIN_MM
        ? ['So thin a sheet is at the end of ordinary contact probes: confirm it another way.']
        : []),
      ...(nominalMm === null ? [] : ['The uncertainty of the loss leaves out that of the nominal thickness.']),
    ],
  }
}
