import type { Measurement } from '../../../shared-types/exhibit.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { KeptTape, TapeAnswer } from '../../../shared-types/tape-answer.ts'
import { captionOf } from '../../../shared-types/tape-caption.ts'
import type { TapeQuestion, TapeTaken } from '../../../shared-types/tape-question.ts'
import { coatingUnit, lengthUnit, metricUnits, type ShownUnits } from '../../../shared-types/units.ts'
import type { CarRecord } from '../../record/car-record.ts'
import { gapJoints } from '../../sheets/joint-list.ts'
import type { UseCases } from '../program.ts'
import { sheetsOfRecord } from '../sheets-of-record.ts'
import { answerTape, type TapeSurroundings } from './answer-tape.ts'
import { shownLengths } from './shown-lengths.ts'

const FIELD = 'tell'
const NOTHING_AROUND: TapeSurroundings = { ofSheet: [], joint: '' }

/** Sizes a tell of the record's sheets has; throws where there is no such tell, or it is not measured in millimetres. */
async function sizesOfTell(record: CarRecord, key: string): Promise<TapeSurroundings['ofSheet']> {
  const { compiled } = await sheetsOfRecord(record)
  const found = compiled?.tells.find((tell) => tell.key === key)
  if (found === undefined) {
    const message = `No reference sheet of this record has a tell “${key}”. Take the sheet in first, or compare with none.`
    throw new ProblemError('not-found', message, { field: FIELD })
  }
  const { unit, follows } = found.tell
  if (unit !== 'mm') {
    const message = `“${found.tell.name}” is not measured in millimetres, so a length cannot be compared with it. Choose another, or none.`
    throw new ProblemError('rule-of-the-trade', message, { field: FIELD })
  }
  if (follows.kind !== 'by cases') return []
  return follows.values.flatMap(({ name, measure }) =>
    measure === null
      ? []
      : [{ label: name, mm: measure.mean, spreadMm: measure.standardDeviation, source: `sheet: ${found.tell.name}` }],
  )
}

function jointWords(view: RecordView, question: TapeQuestion): string {
  if (question.kind !== 'gaps' || question.jointId === null) return ''
  const { body } = view.particulars
  const joint = gapJoints(body, view.commission.names).find(({ id }) => id === question.jointId)
  if (joint === undefined) {
    const message = `This body has no gap “${question.jointId}”. Choose a joint that is listed.`
    throw new ProblemError('not-found', message, { field: 'question.jointId' })
  }
  return joint.name
}

async function answerFor(
  record: CarRecord,
  { question, tell }: TapeTaken,
  units: ShownUnits = record.view().commission,
): Promise<TapeAnswer> {
  const view = record.view()
  const around = {
    ofSheet: tell === null ? [] : await sizesOfTell(record, tell),
    joint: jointWords(view, question),
  }
  return answerTape(question, shownLengths(units), around)
}

/** Every measurement of the record that came of readings, worked out again from them, in the order of the exhibits. */
export async function keptTapes(record: CarRecord): Promise<readonly KeptTape[]> {
  const kept: KeptTape[] = []
  for (const { number, measurement, caption } of record.view().exhibits) {
    if (measurement?.taken === undefined) continue
    const { what, taken, method } = measurement
    const answer = await answerOrAlone(record, taken, record.view().commission)
    const captionIsOwn = await isOwn(record, taken, (told) => captionOf('', told) === caption)
    const methodIsOwn = await isOwn(record, taken, (told) => told.kept.method === method)
    kept.push({
      ...{ exhibit: number, what, answer, captionIsOwn },
      caption: captionIsOwn ? captionOf('', answer) : caption,
      method: methodIsOwn ? answer.kept.method : method,
    })
  }
  return kept
}

/** Whether words are those the program has for readings, in one unit or another. */
async function isOwn(record: CarRecord, taken: TapeTaken, same: (told: TapeAnswer) => boolean): Promise<boolean> {
  const choices = lengthUnit.options.flatMap((length) =>
    coatingUnit.options.map((coating) => ({ lengthUnit: length, coatingUnit: coating })),
  )
  for (const units of choices) if (same(await answerOrAlone(record, taken, units))) return true
  return false
}

/** A sheet may have left the record since: what was measured stays, the comparison goes. */
async function answerOrAlone(record: CarRecord, taken: TapeTaken, units: ShownUnits): Promise<TapeAnswer> {
  try {
    return await answerFor(record, taken, units)
  } catch (fault) {
    if (!(fault instanceof ProblemError)) throw fault
    const alone = answerTape(taken.question, shownLengths(units), NOTHING_AROUND)
    return { ...alone, notes: [...alone.notes, fault.problem.message] }
  }
}

/** Throws when a measurement says another value than its own readings give. */
export function checkTaken({ value, unit, uncertainty, taken }: Measurement): void {
  if (taken === undefined) return
  const { kept } = answerTape(taken.question, shownLengths(metricUnits), NOTHING_AROUND)
  if (unit === 'mm' && value === kept.valueMm && uncertainty === kept.uncertaintyMm) return
  const message = `The readings give ${kept.valueMm} ± ${kept.uncertaintyMm} mm, which is not the value to be kept. Keep what the readings give, or leave the readings out.`
  throw new ProblemError('rule-of-the-trade', message, { field: 'draft.measurement.value' })
}

export const measuringUseCases: Pick<UseCases, 'measuring.tape' | 'measuring.kept'> = {
  'measuring.tape': (program, taken) => answerFor(program.record(), taken),
  'measuring.kept': (program) => keptTapes(program.record()),
}
