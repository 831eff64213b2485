import { capital } from '../../../shared-types/capital.ts'
import type { CarNumber } from '../../../shared-types/car.ts'
import { featuresText } from '../../../shared-types/car-features.ts'
import type { NumberChecked } from '../../../shared-types/number-format.ts'
import { carFeatures } from '../../sheets/car-features.ts'
import { dimensionList } from '../../sheets/dimension-list.ts'
import type { Composer } from '../layout/composer.ts'
import { stated } from '../layout/composer.ts'
import { gap } from '../layout/flow.ts'
import { LINES_BESIDE_HEAD } from '../layout/table.ts'
import { styles } from '../layout/text-style.ts'
import { ownDimensionsWords } from '../wording/own-dimensions.ts'
import { numbered, place } from '../wording/references.ts'
import { builtInterval } from '../wording/sentences.ts'

/** What the car is: description, construction, build interval, every number on paper and on the car, history as told. */
export function composeIdentity(composer: Composer): void {
  const { particulars, commission } = composer.content.record
  const measures = ownDimensionsWords(dimensionList(particulars.body).dimensions, composer.content.record)
  composer.openSection('identity', 'Identification')
  const line = (label: string, text: string) => (owner: Composer['section']) =>
    composer.labelled(owner, label, [{ text, style: styles.text }])
  composer.block({ title: 'The car' }, (owner) => [
    ...line('maker, line', `${stated(particulars.maker)}; ${stated(particulars.line)}`)(owner),
    ...line('body', `${bodyWords(composer)}; ${particulars.steering}-hand drive`)(owner),
    ...line('first sold in', stated(particulars.marketOfFirstSale))(owner),
    ...line('colour now', stated(particulars.colourNow))(owner),
    ...line(
      'has',
      stated(featuresText(carFeatures(particulars.body), particulars.conditions, commission.names)),
    )(owner),
    ...(measures === ''
      ? []
      : line('measures', `${measures}; uncertainty not stated. The plans are drawn to these.`)(owner)),
  ])
  composer.block({ title: 'Material and\nconstruction' }, (owner) =>
    composer.text(owner, stated(particulars.construction)),
  )
  composer.block({ title: 'Built', note: 'an interval, with its grounds' }, (owner) => [
    ...composer.text(
      owner,
      builtInterval(particulars) === '' ? 'Not stated.' : `${capital(builtInterval(particulars))}.`,
    ),
    ...line('grounds', stated(particulars.builtGrounds))(owner),
  ])
  composer.block({ title: 'History', note: 'as told; gaps are gaps' }, (owner) =>
    composer.text(owner, stated(particulars.history)),
  )
  composer.block({ title: 'Numbers', note: 'on paper and on the car' }, (owner) =>
    composer.content.record.carNumbers.length === 0
      ? composer.text(owner, 'No number was looked for.')
      : [gap(LINES_BESIDE_HEAD, true), ...numbersTable(composer)],
  )
  if (composer.content.record.carNumbers.length > 0) {
    composer.block({ title: 'Seventeen\ncharacters', note: '49 CFR part 565' }, (owner) =>
      numberFormat(composer, owner),
    )
  }
}

/** Whether the format of 17 characters concerns the car, and each number of it with how every check came out and why. */
function numberFormat(composer: Composer, owner: Composer['section']) {
  const { applies, numbers } = composer.content.numberFormat
  const cell = (text: string, style = styles.cell) => [{ text, style }]
  return [
    ...composer.text(owner, applies),
    ...numbers.flatMap((number) => [
      ...composer.table(owner, {
        caption: cell(
          `${number.rows.map((row) => numbered('N', row)).join(', ')}, ${number.from}: ${number.text}. ${formatSays(number)}`,
          styles.caption,
        ),
        columns: [
          { head: 'check', widthMm: 24 },
          { head: 'result', widthMm: 22 },
          { head: 'because', widthMm: 58 },
          { head: 'source', widthMm: 26 },
        ],
        rows: number.checks.map((check) => ({
          cells: [
            cell(check.id),
            cell(check.result, styles.cellStrong),
            cell(check.because),
            cell(check.source, styles.cellSoft),
          ],
        })),
      }),
    ]),
  ]
}

function formatSays({ text, modelYears, makerCode, lowVolumeMaker, completions, completionCount }: NumberChecked) {
  const years = modelYears.length === 0 ? [] : [`model year ${modelYears.join(' or ')} by position 10`]
  const maker =
    makerCode === null ? [] : [`maker’s code ${makerCode}${lowVolumeMaker === true ? ', few vehicles' : ''}`]
  const shown = completions.length === 0 ? '' : `: ${completions.join(', ')}`
  const filled = text.includes('?') ? [`${completionCount} numbers fill what could not be read${shown}`] : []
  const said = [...years, ...maker, ...filled].join('; ')
  return said === '' ? '' : `${capital(said)}.`
}

function bodyWords({ content }: Composer): string {
  const us = content.record.commission.names === 'us'
  const words = {
    saloon2: us ? 'two-door sedan' : 'two-door saloon',
    saloon4: us ? 'four-door sedan' : 'four-door saloon',
    coupe: us ? 'coupe' : 'coupé',
    convertible: us ? 'convertible' : 'drophead',
    estate: us ? 'station wagon' : 'estate',
    pickup: us ? 'pickup truck' : 'pickup',
    van: us ? 'panel van' : 'van',
  }
  return words[content.record.particulars.body]
}

type Agreement =
  | 'agrees'
  | 'agrees as far as read'
  | 'differs'
  | 'not legible'
  | 'not found'
  | 'not looked for'
  | 'on the car only'
  | 'on paper only'

/** How paper and car stand to each other. Spaces, hyphens and case are left out of the comparison. */
export function agreement(row: CarNumber): Agreement {
  if (row.howRead === 'not looked for' || row.howRead === 'not found') return row.howRead
  const plain = (text: string) => text.replace(/[\s\-–./]/g, '').toUpperCase()
  const [found, onPaper] = [plain(row.asRead), plain(row.onPaper)]
  if (found === '') return onPaper === '' ? 'not found' : 'on paper only'
  if (onPaper === '') return 'on the car only'
  if (found === onPaper) return 'agrees'
  // A question mark is one letter that could not be read; the others may still agree.
  const [read, paper] = [[...found], [...onPaper]]
  const mayAgree = read.length === paper.length && read.every((letter, at) => letter === '?' || letter === paper[at])
  if (mayAgree) return read.every((letter) => letter === '?') ? 'not legible' : 'agrees as far as read'
  return 'differs'
}

function numbersTable(composer: Composer) {
  const { carNumbers } = composer.content.record
  const cell = (text: string, style = styles.cell) => [{ text, style }]
  return composer.table(
    composer.section,
    {
      caption: cell('Each number on paper, as found on the car, and whether they agree.', styles.caption),
      columns: [
        { head: '', widthMm: 9 },
        { head: 'number, where', widthMm: 52 },
        { head: 'on paper', widthMm: 33 },
        { head: 'as found', widthMm: 30 },
        { head: 'result', widthMm: 20 },
        { head: 'how read; exhibits', widthMm: 26 },
      ],
      rows: carNumbers.map((row) => ({
        anchors: [place.carNumber(row.number)],
        cells: [
          cell(numbered('N', row.number)),
          [
            ...cell(row.kind, styles.cellStrong),
            ...(row.where === '' ? [] : cell(`, ${row.where}`)),
            ...(row.note === '' ? [] : cell(`. ${row.note}`, styles.cellSoft)),
          ],
          row.onPaper === ''
            ? cell('nothing', styles.cellSoft)
            : [
                ...cell(row.onPaper, styles.cellMono),
                ...(row.paper === '' ? [] : cell(`, ${row.paper}`, styles.cellSoft)),
              ],
          row.asRead === '' ? cell('nothing', styles.cellSoft) : cell(row.asRead, styles.cellMono),
          cell(agreement(row), styles.cellStrong),
          [...cell(`${row.howRead}; `), ...composer.exhibits(row.exhibits)],
        ],
      })),
    },
    true,
  )
}
