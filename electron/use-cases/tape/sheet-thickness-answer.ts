import type { TapeQuestionOf } from '../../../shared-types/tape-question.ts'
import { sheetFromTime } from '../../analysis/geometry/sheet-thickness.ts'
import { figure, NARROW } from '../../report/wording/numbers.ts'
import type { ShownLengths } from './shown-lengths.ts'
import { coverageWords, keptAs, normalFactor, type Worked } from './tape-words.ts'

/** Thickness of sheet from the time of an echo, and what paint taken for metal would have added. */
export function sheetThicknessAnswer(
  { kind: _kind, ...asked }: TapeQuestionOf<'sheet thickness'>,
  shown: ShownLengths,
): Worked {
  const { thicknessMm, expandedMm, paintErrorMm, lossPercent, expandedLossPercent, notes } = sheetFromTime(asked)
  const k = normalFactor(asked.coverage)
  const loss =
    lossPercent === null || expandedLossPercent === null
      ? []
      : [
          {
            label: 'less than nominal',
            words: `${figure(lossPercent, 0)} ± ${figure(expandedLossPercent, 0)}${NARROW}% of ${shown.asRead([asked.nominalMm ?? 0])}`,
          },
        ]
  const paint =
    asked.paintUm === 0
      ? 'no paint entered'
      : `${shown.coating(asked.paintUm)} taken for metal would read ${shown.length(paintErrorMm, paintErrorMm)} too thick`
  return {
    headline: shown.measured(thicknessMm, expandedMm),
    coverage: coverageWords(asked.coverage, k, null),
    decision: null,
    verdict: '',
    candidates: [],
    lines: [
      ...loss,
      { label: 'paint error', words: paint },
      ...(asked.echoToEcho ? [{ label: 'paint', words: 'left out by the two echoes' }] : []),
    ],
    notes,
    kept: keptAs(
      thicknessMm,
      expandedMm / k,
      `ultrasound, ${figure(asked.travelTimeUs, 3)}${NARROW}µs ${asked.echoToEcho ? 'between two echoes' : 'from the surface of the paint'}, ${figure(asked.velocityMetalMs)}${NARROW}m/s in metal; paint ${shown.coating(asked.paintUm)} (ASTM E797)`,
    ),
  }
}
