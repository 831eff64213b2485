import type { TellView } from '../../../shared-types/identity-view.ts'
import type { Observation } from '../../../shared-types/observation.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'

/** How an uncertainty is stated: as a standard uncertainty, or expanded with k = 2 (JCGM 100:2008, 6.2). */
export type StatedAs = 'standard, k = 1' | 'expanded, k = 2'

/** What is being said of a tell; `state` is null before an answer was chosen. */
export interface TellDraft {
  readonly state: Exclude<Observation['state'], 'believed'> | null
  readonly value: string | null
  /** Null: certain. */
  readonly surePercent: number | null
  readonly measured: number | null
  readonly uncertainty: number | null
  readonly statedAs: StatedAs
  /** What was taken from a measurement of the record; kept as such while the figures stay. */
  readonly taken: Observation['measured']
  readonly exhibits: number[]
  readonly note: string
}

const untouched: TellDraft = {
  state: null,
  value: null,
  surePercent: null,
  measured: null,
  uncertainty: null,
  statedAs: 'expanded, k = 2',
  taken: null,
  exhibits: [],
  note: '',
}

/** A figure without the tail that doubling and halving leave: 0.1 and not 0.1000000001. */
const plain = (value: number): number => Number(value.toPrecision(12))

/** What stands of a tell so far, to be amended. */
export function draftOf({ observation }: Pick<TellView, 'observation'>): TellDraft {
  if (observation === null) return untouched
  const { state, value, surePercent, measured, exhibits, note } = observation
  return {
    ...untouched,
    state: state === 'believed' ? 'seen' : state,
    value,
    surePercent,
    measured: measured?.value ?? null,
    uncertainty: measured === null ? null : plain(2 * measured.standardUncertainty),
    taken: measured?.from === undefined ? null : measured,
    exhibits,
    note,
  }
}

const refuse = (message: string, field: keyof TellDraft): never => {
  throw new ProblemError('input-refused', message, { field })
}

function measuredOf(draft: TellDraft, unit: string | null): Observation['measured'] {
  const { measured, uncertainty, statedAs, taken, exhibits } = draft
  if (measured === null) return refuse(`Write what was measured, in ${unit}.`, 'measured')
  if (uncertainty === null || uncertainty <= 0)
    return refuse('Write its uncertainty: how far off it may be, more than nothing.', 'uncertainty')
  const standardUncertainty = plain(statedAs === 'expanded, k = 2' ? uncertainty / 2 : uncertainty)
  const still =
    taken?.from !== undefined &&
    exhibits.includes(taken.from) &&
    measured === taken.value &&
    standardUncertainty === plain(taken.standardUncertainty)
  return still ? taken : { value: measured, standardUncertainty }
}

/** The observation a draft comes to. Throws the problem `input-refused` that names the field where something is missing. */
export function observationOf(tell: Pick<TellView, 'key' | 'unit'>, draft: TellDraft): Observation {
  const { state, value, surePercent, exhibits, note } = draft
  const said = { tell: tell.key, value: null, surePercent: null, measured: null, exhibits: [...exhibits], note }
  if (state === 'measured') return { ...said, state, measured: measuredOf(draft, tell.unit) }
  if (state === 'cannot be seen' && note.trim() === '')
    return refuse('Write why it cannot be seen, so that the next one knows what to bring.', 'note')
  if (state === 'cannot be seen' || state === 'disturbed') return { ...said, state }
  if (state === null || value === null) return refuse('Choose what you see, or that it cannot be seen.', 'value')
  return surePercent === null
    ? { ...said, state: 'seen', value }
    : { ...said, state: 'believed', value, surePercent: Math.round(surePercent) }
}

/** Letters of the values, in their order; the others are taken by what else can be said of a tell. */
const VALUE_LETTERS = 'ABCDFGHIJKLNOPQRUVWZ'

/** Key of the value at this place; empty from the twenty-first on. */
export const valueKey = (at: number): string => VALUE_LETTERS[at] ?? ''
