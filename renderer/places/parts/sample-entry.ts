import type { Exhibit, Measurement } from '../../../shared-types/exhibit.ts'
import type { FasteningSample, SampleTaken } from '../../../shared-types/fastening-sample.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { ask, change } from '../../store/ask.ts'

/** Figures of a sample that are typed. */
export type SampleFigure = 'ofHowMany' | 'looked' | 'wrong' | 'confidencePercent' | 'wantedAtMost'

/**
 * A sample as it stands in the form; what was counted by hand counts only while no position is marked. A figure is null
 * while what was typed is none.
 */
export interface SampleEntry
  extends Omit<FasteningSample, 'positions' | SampleFigure>,
    Readonly<Record<SampleFigure, number | null>> {
  readonly names: string
  readonly seen: SampleTaken['seen']
}

export const begunSample: SampleEntry = {
  what: 'fastenings with a wrong head, drive or mark',
  ofHowMany: 24,
  looked: 0,
  wrong: 0,
  confidencePercent: 95,
  wantedAtMost: 2,
  names: '',
  seed: 'first sample',
  seen: [],
}

/** A kept sample opened again; null where the exhibit holds none. */
export function entryOfSample(kept: Exhibit | null): SampleEntry | null {
  const sample = kept?.measurement?.sample
  if (sample === undefined) return null
  const { positions, ...plan } = sample
  return { ...plan, names: positions.join(', '), looked: 0, wrong: 0 }
}

/** The sample as it is asked about: counted from the positions that are marked, where any is. Null while a figure is none. */
export function asked({ names, seen, ...entered }: SampleEntry): FasteningSample | null {
  const counted = { looked: seen.length, wrong: seen.filter(({ wrong }) => wrong).length }
  const { ofHowMany, looked, wrong, confidencePercent, wantedAtMost, ...words } = {
    ...entered,
    ...(seen.length === 0 ? {} : counted),
  }
  if (ofHowMany === null || looked === null || wrong === null) return null
  if (confidencePercent === null || wantedAtMost === null) return null
  const positions = names
    .split(/[,;]/)
    .map((name) => name.trim())
    .filter((name) => name !== '')
  return { ...words, ofHowMany, looked, wrong, confidencePercent, wantedAtMost, positions }
}

/** The first figure that was left empty, as a problem of its field. */
function figureMissing(entry: SampleEntry): ProblemError {
  const figures = ['ofHowMany', 'looked', 'wrong', 'wantedAtMost', 'confidencePercent'] as const
  const field = figures.find((figure) => entry[figure] === null) ?? 'ofHowMany'
  return new ProblemError('input-refused', 'Write a number here, then keep the sample.', { field })
}

/** Keeps a sample with what was seen at each position: as a new exhibit, or in place of what one said before. */
export async function keepSample(
  entry: SampleEntry,
  kept: Exhibit | null,
  { madeBy, place }: { readonly madeBy: string; readonly place: string },
): Promise<void> {
  const question = asked(entry)
  if (question === null) throw figureMissing(entry)
  const { looked: _, wrong, ...plan } = question
  if (entry.seen.length === 0)
    throw new ProblemError('input-refused', 'Mark what was found at the positions drawn, then keep the sample.')
  const { bound } = await ask('parts.sample', question)
  const measurement: Measurement = {
    what: plan.what,
    value: wrong,
    unit: 'count',
    uncertainty: null,
    method: `random sample, ${bound?.method ?? ''}`,
    instrument: 'by eye',
    sample: { ...plan, seen: entry.seen },
  }
  const words = {
    caption: bound?.words ?? '',
    madeBy: kept?.madeBy ?? madeBy,
    place: kept?.place ?? place,
    panelId: kept?.panelId ?? null,
    view: kept?.view ?? null,
    at: kept?.at ?? null,
    inReport: kept?.inReport ?? true,
  }
  await (kept === null
    ? change('exhibit.add', { draft: { ...words, kind: 'measurement', measurement } })
    : change('exhibit.remeasure', { number: kept.number, words, measurement }))
}
