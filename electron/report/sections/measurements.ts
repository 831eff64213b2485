import type { KeptSample } from '../../../shared-types/fastening-sample.ts'
import type { KeptPicture, TellMeasured } from '../../../shared-types/measuring-view.ts'
import { decimalsFor, shownUnit } from '../../../shared-types/shown-measure.ts'
import type { KeptTape } from '../../../shared-types/tape-answer.ts'
import type { ShownUnits } from '../../../shared-types/units.ts'
import type { Composer } from '../layout/composer.ts'
import { styles } from '../layout/text-style.ts'
import { figure, measuredValue } from '../wording/numbers.ts'

/** Measurements worked out of readings by tape or calliper, or of picks on a photograph, with what each decides; left out without any. */
export function composeMeasurements(composer: Composer): void {
  const { measurements, photographMeasures, samples } = composer.content
  if (measurements.length + photographMeasures.length + samples.length === 0) return
  composer.openSection('measurements', 'Measurements')
  composer.block({ title: 'How' }, (owner) =>
    composer.text(
      owner,
      'Worked out of the readings and picks kept in the record. Uncertainties are expanded, with their coverage beside them (JCGM 100:2008); limits are decided by the three-way rule of ISO 14253-1. Measurements entered as a value alone stand among the exhibits.',
    ),
  )
  for (const measurement of measurements) composeMeasurement(composer, measurement)
  for (const picture of photographMeasures) composePicture(composer, picture)
  for (const sample of samples) composeSample(composer, sample)
}

/** A random sample: what was drawn and seen, the exact bounds for the whole, and how anybody can draw it again. */
const LABEL_MM = 32

/** Lines of one block, each a label and what it says; none where nothing is said. */
const saidOf = (composer: Composer, owner: Composer['section']) => (label: string, text: string) =>
  text === '' ? [] : composer.labelled(owner, label, [{ text, style: styles.text }], LABEL_MM)

function composeSample(composer: Composer, { exhibit, sample, answer }: KeptSample): void {
  const positions = (wrong: boolean) => sample.seen.filter((each) => each.wrong === wrong).map((each) => each.position)
  const listed = (some: readonly string[]) => (some.length === 0 ? 'none' : some.join(', '))
  const left = answer.positions.length - sample.seen.length
  composer.block({ title: sample.what, note: 'by random sample', whole: true }, (owner) => {
    const line = saidOf(composer, owner)
    return [
      ...composer.labelled(
        owner,
        'result',
        [{ text: `${answer.bound?.words ?? ''} `, style: styles.strong }, ...composer.exhibits([exhibit])],
        LABEL_MM,
      ),
      ...line('method', `${answer.bound?.method ?? 'none'}; drawn by ${answer.drawnBy}.`),
      ...line(
        'drawn',
        `${listed(answer.positions)}${left > 0 ? `; ${left} of them not looked at, so the bounds hold if it is chance which` : ''}.`,
      ),
      ...line('wrong', `${listed(positions(true))}.`),
      ...line('right', `${listed(positions(false))}.`),
    ]
  })
}

/** A measure on a photograph: its value, what its uncertainty is made of, and the tells that rest on it. */
function composePicture(composer: Composer, { exhibit, photograph, what, answer, tells }: KeptPicture): void {
  const { measured, kept } = answer
  composer.block({ title: what, note: 'on a photograph', whole: true }, (owner) => {
    const line = saidOf(composer, owner)
    return [
      ...composer.labelled(
        owner,
        'result',
        [
          { text: `${measuredValue(kept, composer.content.record.commission)} `, style: styles.strong },
          ...composer.exhibits([exhibit, photograph]),
        ],
        LABEL_MM,
      ),
      ...line(
        'coverage',
        `${figure(100 * measured.coverage, 2)} % coverage; ${measured.drawn.draws} draws (JCGM 101:2008).`,
      ),
      ...tells.flatMap((tell) => line('decides', decisionWords(tell, composer.content.record.commission))),
      ...line('measured', `${kept.method}; ${kept.instrument}.`),
      ...line('not said', measured.notes.join(' ')),
    ]
  })
}

/** What a value says of a tell: for which of its values it decides, or how exact it would have to be. */
function decisionWords({ name, values, unit, exactness }: TellMeasured, units: ShownUnits): string {
  const { decision, likeliest, likelihoodRatio, wouldDecide } = exactness
  const nearest = values.find(({ id }) => id === likeliest)?.name ?? likeliest
  if (decision === 'fits none') return `${name}: it fits none of the values of the sheet.`
  const most = 1e6
  const others =
    likelihoodRatio === null || likelihoodRatio > most
      ? `more than ${figure(most)}`
      : figure(likelihoodRatio, likelihoodRatio < 10 ? 1 : 0)
  const by = `${others} times likelier than the next`
  if (decision === 'decides') return `${name}: it decides for ${nearest}, ${by}.`
  const shown = shownUnit(unit, units)
  const decimals = shown.per === 1 ? 2 : decimalsFor((wouldDecide ?? 0) / shown.per)
  const enough =
    wouldDecide === null
      ? 'no exactness would do'
      : `${figure(wouldDecide / shown.per, decimals)} ${shown.unit} standard would do`
  return `${name}: it does not decide; ${nearest} is ${by}, and ${enough}.`
}

function composeMeasurement(composer: Composer, { exhibit, what, answer }: KeptTape): void {
  const kept = composer.content.record.exhibits.find(({ number }) => number === exhibit)?.measurement
  const fitting = answer.candidates.filter(({ possible }) => possible)
  const ruledOut = answer.candidates.filter(({ possible }) => !possible)
  const listed = (rows: typeof answer.candidates) =>
    rows.map(({ label, source, words }) => `${label} (${source}; ${words})`).join('; ')
  composer.block({ title: what, note: answer.kind, whole: true }, (owner) => {
    const line = saidOf(composer, owner)
    return [
      ...composer.labelled(
        owner,
        'result',
        [{ text: `${answer.headline} `, style: styles.strong }, ...composer.exhibits([exhibit])],
        LABEL_MM,
      ),
      ...line('coverage', `${answer.coverage}.`),
      ...line('decides', answer.verdict),
      ...line('fits', fitting.length === 0 ? '' : `${listed(fitting)}.`),
      ...line('ruled out', ruledOut.length === 0 ? '' : `${listed(ruledOut)}.`),
      ...line('measured', `${answer.kept.method}; ${kept?.instrument || 'instrument not stated'}.`),
      ...answer.lines.flatMap(({ label, words }) => line(label, words)),
      ...line('not said', answer.notes.join(' ')),
    ]
  })
}
