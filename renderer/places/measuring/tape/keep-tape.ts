import type { Exhibit, ExhibitWords, Measurement } from '../../../../shared-types/exhibit.ts'
import type { TapeAnswer } from '../../../../shared-types/tape-answer.ts'
import { captionOf } from '../../../../shared-types/tape-caption.ts'
import type { TapeTaken } from '../../../../shared-types/tape-question.ts'
import { change } from '../../../store/ask.ts'
import { panelOf } from '../measured-panel.ts'
import type { TapeEntry } from './tape-entry.ts'

const MOST_ON_A_LINE = 400

function wordsOf(said: TapeEntry, kept: Exhibit | null, place: string, answer: TapeAnswer): ExhibitWords {
  return {
    caption: captionOf(said.caption, answer),
    madeBy: said.madeBy,
    place: kept?.place ?? place,
    panelId: panelOf(said.panelId),
    view: kept?.view ?? null,
    at: kept?.at ?? null,
    inReport: kept?.inReport ?? true,
  }
}

/** Keeps readings with what comes of them: as a new exhibit, or in place of what one said before. Answers its number. */
export async function keepTape(
  said: TapeEntry,
  taken: TapeTaken,
  answer: TapeAnswer,
  { kept, place }: { readonly kept: Exhibit | null; readonly place: string },
): Promise<number | null> {
  const what = taken.where === '' ? said.what.trim() : `${said.what.trim()}, ${taken.where}`
  const { valueMm, uncertaintyMm, method } = answer.kept
  const measurement: Measurement = {
    what: what.slice(0, MOST_ON_A_LINE),
    value: valueMm,
    unit: 'mm',
    uncertainty: uncertaintyMm,
    method,
    instrument: said.instrument,
    taken,
  }
  const words = wordsOf(said, kept, place, answer)
  if (kept !== null) {
    await change('exhibit.remeasure', { number: kept.number, words, measurement })
    return kept.number
  }
  const { number } = await change('exhibit.add', { draft: { ...words, kind: 'measurement', measurement } })
  return number
}

/** Notes of a tell what an exhibit measured; the tell takes its value from there. */
export async function noteOfTell(tell: string, { kept }: TapeAnswer, from: number): Promise<void> {
  await change('observation.set', {
    observation: {
      tell,
      state: 'measured',
      value: null,
      surePercent: null,
      measured: { value: kept.valueMm, standardUncertainty: kept.uncertaintyMm / 2, from },
      exhibits: [from],
      note: '',
    },
  })
}
