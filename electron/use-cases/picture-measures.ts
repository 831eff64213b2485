import type { Exhibit, Measurement, PickedGeometry } from '../../shared-types/exhibit.ts'
import type { PictureMeasured } from '../../shared-types/measuring.ts'
import type { PictureAnswer } from '../../shared-types/measuring-view.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { shownUnit } from '../../shared-types/shown-measure.ts'
import type { ShownUnits } from '../../shared-types/units.ts'
import { roundedResult } from '../analysis/statistics/rounded-result.ts'
import { NARROW } from '../report/wording/numbers.ts'
import { computeAside } from './computing/compute-aside.ts'
import { addingPicked, checkExhibitPlace, exhibitInWords } from './exhibits.ts'
import { following, withFollowers } from './measured-followers.ts'
import { numberedRow } from './numbered-rows.ts'
import type { UseCases } from './program.ts'
import { rowMark, shortened } from './row-marks.ts'
import { rowChange, sendCommand } from './send-command.ts'

/** Share of a normal distribution within two standard deviations: makes the expanded uncertainty one of k = 2. */
const COVERAGE_OF_TWO = 0.954_499_736
const DRAWS = 10_000

function photographOf(view: RecordView, number: number): Exhibit & { photograph: NonNullable<Exhibit['photograph']> } {
  const exhibit = numberedRow(view, 'exhibits', number)
  const { photograph } = exhibit
  if (photograph !== null) return { ...exhibit, photograph }
  const message = `${rowMark('exhibits', number)} is no photograph. Choose one to measure on.`
  throw new ProblemError('input-refused', message, { field: 'picked.photograph' })
}

/** Measures what was picked on a photograph of the record; the same picks give the same answer. */
export async function measureOnPhotograph(view: RecordView, picked: PickedGeometry): Promise<PictureAnswer> {
  const { photograph: number, ...question } = picked
  const { photograph } = photographOf(view, number)
  const measured = await computeAside('picture-measure', {
    ...question,
    picture: { widthPx: photograph.widthPx, heightPx: photograph.heightPx },
    coverage: COVERAGE_OF_TWO,
    draws: DRAWS,
    seed: `photograph ${photograph.sha256}`,
  })
  const { value, uncertainty } = roundedResult(measured.value, measured.expanded)
  const camera = photograph.camera === '' ? 'camera not known' : photograph.camera
  return {
    measured,
    kept: {
      value,
      uncertainty,
      unit: measured.unit,
      method: shortened(methodWords(picked, measured, view.commission), 400),
      instrument: `photograph ${rowMark('exhibits', number)}, ${camera}`,
    },
  }
}

const planeWords: { readonly [K in PickedGeometry['plane']['kind']]: string } = {
  'known points': 'plane by known points',
  'scale bar': 'plane by a scale bar, seen squarely',
  'two pairs of parallels': 'plane by two pairs of parallels and one length',
}

/** How it was measured, and what its uncertainty is made of, in a line for register and report. */
function methodWords(
  { plane, pickPx, distortionPx, wanted }: PickedGeometry,
  { parts, unit: kept, offPlaneError }: PictureMeasured,
  units: ShownUnits,
): string {
  const { unit, per } = shownUnit(kept, units)
  // A figure in inches holds its unit: "in" is a word as well.
  const space = per === 1 ? ' ' : NARROW
  const figure = (standard: number) => `${Number((standard / per).toPrecision(2))}${space}${unit}`
  const distortion = distortionPx === null ? 'distortion not known' : `distortion ${figure(parts.distortion)}`
  const circle = wanted.kind === 'circle diameter' ? `, circle through ${wanted.points.length} points` : ''
  const off = offPlaneError === null ? '' : `; off the plane as stated it errs by up to ${figure(offPlaneError)}`
  return `${planeWords[plane.kind]}${circle}, picks good to ${pickPx} px; standard uncertainty of picking ${figure(parts.picking)}, reference ${figure(parts.reference)}, ${distortion}${off}`
}

function measurementOf(what: string, { kept }: PictureAnswer): Measurement {
  return { what, ...kept }
}

/** Measuring on a photograph, keeping it as an exhibit, and picking a kept one again. */
export const pictureMeasureUseCases: Pick<UseCases, 'measuring.picture' | 'exhibit.addPicked' | 'exhibit.repick'> = {
  'measuring.picture': (program, { picked }) => measureOnPhotograph(program.record().view(), picked),

  'exhibit.addPicked': async (program, input) => {
    const { what, words, picked } = input
    const measurement = measurementOf(what, await measureOnPhotograph(program.record().view(), picked))
    return sendCommand(program, 'exhibit.addPicked', input, (draft, at) => {
      photographOf(draft.now, picked.photograph)
      return addingPicked({ words, measurement, picked }, draft, at)
    })
  },

  'exhibit.repick': async (program, input) => {
    const { number, what, picked } = input
    const measurement = measurementOf(what, await measureOnPhotograph(program.record().view(), picked))
    return sendCommand(program, 'exhibit.repick', input, ({ now }) => {
      photographOf(now, picked.photograph)
      checkExhibitPlace(input.words, now, 'words.panelId')
      const before = numberedRow(now, 'exhibits', number)
      if (before.picked === null) {
        const message = `${rowMark('exhibits', number)} was not measured on a photograph, so there is nothing to pick again. Add a new measurement.`
        throw new ProblemError('rule-of-the-trade', message, { field: 'number' })
      }
      const row = { ...before, ...input.words, measurement, picked }
      const followers = following(now, number, measurement)
      return {
        changes: [rowChange('exhibits', String(number), row), ...followers],
        label: withFollowers(
          `Exhibit ${rowMark('exhibits', number)} picked again: ${exhibitInWords(row, now)}`,
          followers,
        ),
        number,
      }
    })
  },
}
