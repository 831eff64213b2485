import type { FasteningAnswer, FasteningSample } from '../../shared-types/fastening-sample.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { compareFastening } from '../analysis/sampling/compare-fastening.ts'
import { seededSample } from '../analysis/sampling/random-sample.ts'
import { boundFromSample, sizeOfSample } from '../analysis/sampling/sample-bound.ts'
import type { UseCases } from './program.ts'

/** Names of the positions, `1` and on where none are given; throws when some are given but not all. */
function positionsOf({ positions, ofHowMany }: FasteningSample): readonly string[] {
  if (positions.length === 0) return Array.from({ length: ofHowMany }, (_, at) => String(at + 1))
  if (positions.length === ofHowMany && new Set(positions).size === ofHowMany) return positions
  const message =
    positions.length === ofHowMany
      ? 'Two positions have one name. Give each a name of its own, or leave the names empty.'
      : `There are ${ofHowMany} fastenings and ${positions.length} names. Name each, or leave the names empty.`
  throw new ProblemError('input-refused', message, { field: 'positions' })
}

/** What a sample of alike fastenings says of all of them, how many to look at, and which, drawn at random. */
export function sampleFastenings(asked: FasteningSample): FasteningAnswer {
  const { what, ofHowMany, looked, wrong, wantedAtMost, seed } = asked
  const confidence = asked.confidencePercent / 100
  const from = positionsOf(asked)
  const size = wantedAtMost >= ofHowMany ? null : sizeOfSample({ ofHowMany, atMost: wantedAtMost, confidence })
  const draw = Math.max(1, Math.min(ofHowMany, size?.look ?? 1))
  const sample = seededSample({ from: [...from], draw, seed })
  const drawn = new Set(sample.drawn)
  return {
    bound: looked === 0 && wrong === 0 ? null : boundFromSample({ looked, found: wrong, ofHowMany, confidence, what }),
    size,
    positions: from.filter((position) => drawn.has(position)),
    drawnBy: `${sample.method} “${seed}”`,
  }
}

export const fasteningUseCases: Pick<UseCases, 'parts.sample' | 'parts.fastening'> = {
  'parts.sample': async (_program, asked) => sampleFastenings(asked),
  'parts.fastening': async (_program, asked) => compareFastening(asked),
}
