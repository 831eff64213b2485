import type { InterchangeRow, PartExpectation, PartsReported } from '../../../shared-types/part-expectation.ts'
import { intervalWords } from '../../analysis/dating/interval-words.ts'
import type { Composer } from '../layout/composer.ts'
import { gap, type Piece } from '../layout/flow.ts'
import { LINES_BESIDE_HEAD } from '../layout/table.ts'
import { styles } from '../layout/text-style.ts'

/** Parts worth a line: something was found that the sheets can weigh. */
const weighed = ({ parts }: PartsReported): readonly PartExpectation[] =>
  parts.filter(({ support, dates }) => support !== null || dates.some(({ agrees }) => agrees === 'later than the car'))

/** Parts against what this very car should carry, with support, reasons and interchange; left out without a sheet. */
export function composePartsExpected(composer: Composer): void {
  const judged = composer.content.partsJudged
  if (judged === null) return
  if (judged.problem !== null) {
    const { problem } = judged
    composer.block({ title: 'Against the sheets' }, (owner) => composer.text(owner, problem))
    return
  }
  const parts = weighed(judged)
  if (parts.length === 0) return
  const unknown = judged.parts.filter(({ known, seen }) => seen && !known).length
  composer.block({ title: 'Against the sheets', note: 'support, no probability of being original' }, (owner) => [
    ...composer.text(
      owner,
      `What the reference sheets expect of this very car, over all builds still possible, what was read on a part left out; what was found; and how far that supports fitted at the factory against come from other cars, years or spares. Of ${unknown} parts looked at the sheets say nothing. A word the facts suggest is a judgement; the state above is the surveyor’s own.`,
    ),
    ...composer.text(owner, [{ text: `${judged.scale} ${judged.notes.join(' ')}`, style: styles.running }]),
  ])
  composer.block({ title: 'Expected and found' }, () => [
    gap(LINES_BESIDE_HEAD, true),
    ...expectedTable(composer, parts),
  ])
  for (const part of parts.filter(({ suggestion }) => suggestion !== null)) composeReasons(composer, part)
  const used = judged.interchange.filter(
    ({ match, belongsPercent }) => match === 'agrees' && (belongsPercent ?? 100) < 1,
  )
  if (used.length > 0)
    composer.block({ title: 'Interchange', note: 'used above' }, (owner) =>
      used.flatMap((row) => composer.text(owner, interchangeText(row))),
    )
}

function expectedTable(composer: Composer, parts: readonly PartExpectation[]): Piece[] {
  const cell = (text: string, style = styles.cell) => [{ text, style }]
  return composer.table(
    composer.section,
    {
      caption: cell('Parts on which the sheets expect something and something was found.', styles.caption),
      columns: [
        { head: 'part', widthMm: 30 },
        { head: 'expected', widthMm: 44 },
        { head: 'found', widthMm: 38 },
        { head: 'support (ENFSI 2015)', widthMm: 36 },
        { head: 'facts suggest', widthMm: 22 },
      ],
      rows: parts.map((part) => ({
        cells: [
          cell(part.name),
          cell(part.expected === '' ? 'no sheet says' : part.expected),
          cell(foundText(part)),
          cell((part.group ?? part).support?.words ?? 'not weighed'),
          cell(part.suggestion ?? 'no word', part.suggestion === null ? styles.cellSoft : styles.cellStrong),
        ],
      })),
    },
    true,
  )
}

function foundText({ facts, dates }: PartExpectation): string {
  const read = facts.flatMap(({ kind, found }) => (kind === 'tell' && found !== null ? [found] : []))
  const dated = dates.map(({ asRead, from, to, agrees }) => `${asRead}: ${intervalWords({ from, to })}, ${agrees}`)
  return [...read, ...dated].join('; ')
}

function composeReasons(composer: Composer, part: PartExpectation): void {
  const range = (part.group ?? part).support
  composer.block({ title: part.name, note: part.suggestion ?? '' }, (owner) => [
    ...composer.text(
      owner,
      `Support: ${range === null ? 'not weighed' : `${range.words}; ${range.ratio}`}. Written: ${part.written}.`,
    ),
    ...part.because.flatMap(({ words, source }) =>
      composer.text(owner, [
        { text: `${words} `, style: styles.text },
        { text: `${source}.`, style: styles.soft },
      ]),
    ),
  ])
}

const interchangeText = ({ partName, name, on, carriers, source }: InterchangeRow) => [
  { text: `${partName}: ${name} (${on}). `, style: styles.text },
  {
    text: `${carriers
      .map(({ line, from, until, altered }) => `${line}, ${carriedWords(from, until)}: ${altered}`)
      .join(' ')} `,
    style: styles.text,
  },
  { text: `${source}.`, style: styles.soft },
]

/** When a line carried a part; open ends are said to be unknown. */
const carriedWords = (from: string | null, until: string | null): string =>
  from === null && until === null ? 'dates not known' : intervalWords({ from, to: until })
