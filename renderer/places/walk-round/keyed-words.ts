import type { FindingKind, MetalState, PaintState } from '../../../shared-types/words.ts'
import type { KeyedChoice } from '../../parts-of-page/KeyChoice.tsx'

/** Letters of the metal states. */
export const metalKeys: readonly KeyedChoice<MetalState>[] = [
  { choice: 'original metal', keys: 'O' },
  { choice: 'repaired metal', keys: 'R' },
  { choice: 'patch panel', keys: 'P' },
  { choice: 'replacement skin', keys: 'S' },
  { choice: 'replacement panel', keys: 'N', means: 'a new or second-hand panel' },
  { choice: 'filler over metal', keys: 'F' },
  { choice: 'filler in place of metal', keys: 'I', means: 'needs its back seen, or a magnet void' },
  { choice: 'not determined', keys: 'D', means: 'looked at, and not settled' },
  { choice: 'not inspected', keys: 'U', means: 'nobody has looked' },
]

/** Letters of the paint states. */
export const paintKeys: readonly KeyedChoice<PaintState>[] = [
  { choice: 'factory finish', keys: 'F' },
  { choice: 'refinished', keys: 'R' },
  { choice: 'stripped', keys: 'S' },
  { choice: 'not determined', keys: 'D' },
  { choice: 'not inspected', keys: 'U' },
]

/** Letters of the kinds of finding: the word's own letter where it is free. */
export const findingKeys: readonly KeyedChoice<FindingKind>[] = [
  { choice: 'corrosion', keys: 'C' },
  { choice: 'perforation', keys: 'P' },
  { choice: 'filler', keys: 'F' },
  { choice: 'dent', keys: 'D' },
  { choice: 'crack', keys: 'K' },
  { choice: 'distortion', keys: 'T' },
  { choice: 'overspray', keys: 'O' },
  { choice: 'masking edge', keys: 'M' },
  { choice: 'seam disturbed', keys: 'S' },
  { choice: 'weld', keys: 'W' },
  { choice: 'wrong or disturbed fastening', keys: 'B', words: 'fastening wrong or disturbed' },
  { choice: 'missing', keys: 'N' },
  { choice: 'added', keys: 'A' },
  { choice: 'wear', keys: 'R' },
  { choice: 'other', keys: 'X' },
]

/** Words chosen by figures, in their own order from 1. */
export const byFigure = <Choice extends string>(choices: readonly Choice[]): readonly KeyedChoice<Choice>[] =>
  choices.map((choice, index) => ({ choice, keys: String(index + 1) }))
