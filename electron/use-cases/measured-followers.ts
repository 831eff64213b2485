import type { Measurement } from '../../shared-types/exhibit.ts'
import type { Observation } from '../../shared-types/observation.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Change, RecordView } from '../../shared-types/record.ts'
import type { CompiledTell } from '../sheets/reference/compile-tells.ts'
import { unitOfTells } from './measured-tells.ts'
import { numberedRow } from './numbered-rows.ts'
import { listOfMarks, rowMark } from './row-marks.ts'
import { rowChange } from './send-command.ts'

/** The value a tell takes from a measurement, whose uncertainty is expanded with k = 2; null when it states none. */
function takenFrom({ value, uncertainty }: Measurement, from: number): NonNullable<Observation['measured']> | null {
  return uncertainty === null || uncertainty === 0 ? null : { value, standardUncertainty: uncertainty / 2, from }
}

function refuse(message: string, field: string): never {
  throw new ProblemError('rule-of-the-trade', message, { field })
}

/** Throws when an observation names a measurement its value was taken from, and that measurement does not say so. */
export function checkTakenFrom({ measured, exhibits }: Observation, { tell }: CompiledTell, now: RecordView): void {
  const from = measured?.from
  if (from === undefined) return
  const field = 'observation.measured.from'
  const mark = rowMark('exhibits', from)
  const { measurement } = numberedRow(now, 'exhibits', from)
  if (measurement === null) refuse(`${mark} is no measurement. Take the value from one that is.`, field)
  const { unit } = measurement
  if (unitOfTells[unit] !== tell.unit)
    refuse(`${mark} is in ${unit}, “${tell.name}” in ${tell.unit}. Take one in the same unit.`, field)
  const taken = takenFrom(measurement, from)
  if (taken?.value !== measured?.value || taken?.standardUncertainty !== measured?.standardUncertainty)
    refuse(`${mark} says another value. Take its own, or enter yours without naming it.`, field)
  if (!exhibits.includes(from)) refuse(`Cite ${mark} too: the value comes from it.`, 'observation.exhibits')
}

/**
 * The observations that take their value from a measurement, as they are once it says something else: they are changed
 * in the same step, so that one undo gives both back. Throws when the measurement could no longer give them a value.
 */
export function following(now: RecordView, number: number, measurement: Measurement): readonly Change[] {
  const followers = now.observations.filter(({ measured }) => measured?.from === number)
  if (followers.length === 0) return []
  const named = listOfMarks(followers.map(({ tell }) => tell))
  const before = numberedRow(now, 'exhibits', number).measurement
  if (before?.unit !== measurement.unit)
    refuse(`${named} is measured in ${before?.unit}: keep that unit, or note the tell anew first.`, 'unit')
  const measured = takenFrom(measurement, number)
  if (measured === null) refuse(`${named} takes its value from this measurement: state how exact it is.`, 'uncertainty')
  return followers.map((row) => rowChange('observations', row.tell, { ...row, measured }))
}

/** A label, with how many tells follow. */
export function withFollowers(label: string, { length }: readonly Change[]): string {
  if (length === 0) return label
  return `${label}; ${length === 1 ? 'one tell follows' : `${length} tells follow`}`
}
