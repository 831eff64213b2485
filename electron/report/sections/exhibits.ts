import type { Exhibit } from '../../../shared-types/exhibit.ts'
import type { Composer } from '../layout/composer.ts'
import { gap, type Piece } from '../layout/flow.ts'
import { styles } from '../layout/text-style.ts'
import { cameraTime, instantText } from '../wording/dates.ts'
import { fixedTexts } from '../wording/fixed-texts.ts'
import { measuredValue } from '../wording/numbers.ts'
import { place } from '../wording/references.ts'
import { endMark } from './end-mark.ts'
import { captionRunsOn, citedBy, placeWords } from './exhibits-words.ts'
import { photographRows } from './photograph-rows.ts'

/** List of all exhibits, then the photographs two to four a page, then the end mark. */
export function composeExhibits(composer: Composer): void {
  const { exhibits } = composer.content.record
  composer.openSection('exhibits', 'Exhibits')
  composer.block({ title: 'Originals' }, (owner) => composer.text(owner, fixedTexts().originals))
  if (exhibits.length === 0) {
    composer.block({ title: 'Exhibits' }, (owner) => composer.text(owner, 'No exhibit is recorded.'))
  }
  const listed = exhibits.length === 0 ? [] : [gap(1), ...exhibitTable(composer, exhibits)]
  const printed = exhibits.filter(({ number }) => composer.stored.pictures.has(number))
  if (printed.length === 0) {
    composer.flow.place([...keptWithNext(listed), ...endMark(composer)])
    return
  }
  composer.flow.place(listed)
  composer.flow.place([gap(2), ...keptWithNext(photographRows(composer, printed)), ...endMark(composer)])
}

/** The end mark has no page to itself. */
const keptWithNext = (pieces: readonly Piece[]): readonly Piece[] =>
  pieces.map((piece, index) => (index === pieces.length - 1 ? { ...piece, keep: true } : piece))

function exhibitTable(composer: Composer, exhibits: readonly Exhibit[]) {
  const cell = (text: string, style = styles.cell) => [{ text, style }]
  return composer.table(
    composer.section,
    {
      caption: cell('All exhibits. SHA-256: its first 12 digits, of the file as imported.', styles.caption),
      columns: [
        { head: '', widthMm: 10 },
        { head: 'kind, what it shows', widthMm: 48 },
        { head: 'place', widthMm: 23 },
        { head: 'date; made by', widthMm: 34 },
        { head: 'SHA-256', widthMm: 25 },
        { head: 'cited by', widthMm: 30 },
      ],
      rows: exhibits.map((exhibit) => {
        const pictured = composer.stored.pictures.has(exhibit.number)
        return {
          anchors: pictured ? [] : [place.exhibit(exhibit.number)],
          cells: [
            [composer.exhibit(exhibit.number, styles.cellStrong)],
            pictured && !captionRunsOn(exhibit)
              ? [...cell('photograph, ', styles.cellSoft), composer.page(place.exhibit(exhibit.number), styles.cell)]
              : [...cell(`${exhibit.kind}. `, styles.cellSoft), ...cell(describe(composer, exhibit, pictured))],
            placeWords(composer, exhibit, styles.cell),
            cell(`${dateWords(exhibit)}; ${exhibit.madeBy === '' ? 'maker not stated' : exhibit.madeBy}`),
            exhibit.photograph === null
              ? cell('—')
              : cell(exhibit.photograph.sha256.slice(0, 12).replace(/(.{4})(?=.)/g, '$1 '), styles.cellMono),
            citedBy(composer, exhibit.number, styles.cell),
          ],
        }
      }),
    },
    true,
  )
}

/** Caption, and for a measurement its value; says so when a photograph is kept in the record and not printed. */
function describe({ content }: Composer, exhibit: Exhibit, pictured: boolean): string {
  const { measurement } = exhibit
  const tape = content.measurements.find((each) => each.exhibit === exhibit.number)
  const picture = content.photographMeasures.find((each) => each.exhibit === exhibit.number)
  const parts = [(tape?.caption ?? exhibit.caption) || 'No caption.']
  if (measurement !== null) {
    const { sample } = measurement
    const value =
      sample === undefined
        ? measuredValue(measurement, content.record.commission)
        : `${measurement.value} of ${sample.seen.length} looked at, of ${sample.ofHowMany} in all`
    const method = tape?.method ?? picture?.answer.kept.method ?? measurement.method
    parts.push(
      `${measurement.what}: ${value}; ${method || 'method not stated'}; ${measurement.instrument || 'instrument not stated'}.`,
    )
  }
  if (exhibit.photograph !== null && !pictured) {
    parts.push(
      exhibit.inReport
        ? 'No report copy could be made of it; the original is in the record.'
        : 'Kept in the record, not printed.',
    )
  }
  return parts.join(' ')
}

const dateWords = (exhibit: Exhibit): string =>
  exhibit.photograph === null
    ? `added ${instantText(exhibit.addedAt)}`
    : cameraTime(exhibit.photograph.takenAt, exhibit.photograph.takenOffset)
