import type { Measurement } from '../../shared-types/exhibit.ts'
import type { KeptSample, SampleTaken } from '../../shared-types/fastening-sample.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { sampleFastenings } from './fastening-sample.ts'

const refuse = (message: string): never => {
  throw new ProblemError('rule-of-the-trade', message, { field: 'draft.measurement.sample' })
}

/** What a sample says, reckoned from the positions looked at; a position looked at beside the drawn ones is refused. */
export function answerSample({ seen, ...plan }: SampleTaken): KeptSample['answer'] {
  const answer = sampleFastenings({ ...plan, looked: seen.length, wrong: seen.filter(({ wrong }) => wrong).length })
  const drawn = new Set(answer.positions)
  const twice = seen.find(({ position }, at) => seen.findIndex((each) => each.position === position) !== at)
  if (twice !== undefined) refuse(`Position ${twice.position} was looked at twice. Name it once.`)
  const picked = seen.find(({ position }) => !drawn.has(position))
  if (picked !== undefined)
    refuse(`Position ${picked.position} was not drawn, and what is picked by hand bounds nothing. Look at those drawn.`)
  return answer
}

/** Throws when a measurement says another count than its own sample. */
export function checkSample({ value, unit, sample }: Measurement): void {
  if (sample === undefined) return
  answerSample(sample)
  const wrong = sample.seen.filter((each) => each.wrong).length
  if (unit === 'count' && value === wrong) return
  refuse(`The sample counts ${wrong}, which is not the value to be kept. Keep what it counts.`)
}

/** Every sample of the record with what it says of the rest, in the order of the exhibits. */
export function keptSamples({ exhibits }: RecordView): readonly KeptSample[] {
  return exhibits.flatMap(({ number, measurement }) =>
    measurement?.sample === undefined
      ? []
      : [{ exhibit: number, sample: measurement.sample, answer: answerSample(measurement.sample) }],
  )
}
