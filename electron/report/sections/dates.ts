import type { Because, Reference } from '../../../shared-types/judgement.ts'
import type { DateConflict, DatedRow, TimeLineView } from '../../../shared-types/time-line-view.ts'
import { timeLineFigure } from '../../figures/time-line-figure.ts'
import { timeLinePieces } from '../drawing/time-line-drawing.ts'
import type { Composer } from '../layout/composer.ts'
import { gap, type Piece } from '../layout/flow.ts'
import type { Rich, Span } from '../layout/line-breaking.ts'
import { textPieces } from '../layout/text-block.ts'
import { styles, type TextStyle } from '../layout/text-style.ts'
import { joined } from '../wording/dates.ts'
import { numbered, place } from '../wording/references.ts'

/** Everything dated, as a figure and a table, with conflicts as arguments; left out where nothing of the car is dated. */
export function composeDates(composer: Composer): void {
  const { timeLine } = composer.content
  if (!timeLine.rows.some(({ kind }) => kind === 'car' || kind === 'part')) return
  composer.openSection('dates', 'Dates')
  composer.block({ title: 'When the car\nwas built' }, (owner) => composer.text(owner, buildingWords(timeLine)))
  composer.flow.place(figurePieces(composer, timeLine))
  for (const conflict of timeLine.conflicts) composeConflict(composer, conflict)
  composer.block({ title: 'Every date', note: 'alone, and with the rest' }, (owner) => [
    ...composer.text(owner, `${timeLine.rows.length} dated things. Days are counted with the first and the last.`),
    gap(1, true),
    ...rowsTable(composer, timeLine),
  ])
  if (timeLine.unread.length > 0)
    composer.block({ title: 'Not read' }, (owner) =>
      timeLine.unread.flatMap(({ label, asRead, why }) =>
        composer.labelled(owner, label, [
          { text: `“${asRead}” `, style: styles.text },
          { text: why, style: styles.soft },
        ]),
      ),
    )
  composer.block({ title: 'Odometer' }, (owner) => composer.text(owner, timeLine.odometer))
  composer.block({ title: 'Method' }, (owner) =>
    composer.text(owner, [{ text: timeLine.method, style: styles.running }]),
  )
}

function buildingWords({ built, problem, rows, conflicts, allConflictsFound }: TimeLineView): string {
  const [building] = rows.filter(({ id }) => id === 'car:built')
  const ends = (building?.because ?? []).filter(
    ({ sort, text }) => sort === 'computed' && /^Not (before|after) /.test(text),
  )
  const found =
    conflicts.length === 0
      ? 'No conflict among the dates was found.'
      : `${conflicts.length === 1 ? 'One conflict' : `${conflicts.length} conflicts`} among the dates ${conflicts.length === 1 ? 'was' : 'were'} found.`
  return [
    built === null
      ? 'Nothing in the record bounds the day of building.'
      : `Built ${built.words}${built.days === null ? '' : `: ${built.days} days`}, by everything dated together.`,
    ...ends.map(({ text }) => text),
    problem ?? '',
    found,
    allConflictsFound ? '' : 'The search for conflicts was ended by its bound: there may be more.',
  ]
    .filter((text) => text !== '')
    .join(' ')
}

function figurePieces(composer: Composer, timeLine: TimeLineView): Piece[] {
  const { section, document, geometry } = composer
  const figure = timeLineFigure(timeLine)
  const element = section.add('Figure', { alternative: figure.textAlternative })
  const caption = [
    { text: `${composer.nextFigure()} `, style: styles.captionStrong },
    {
      text: 'Time line of everything dated. Years without a date are left out where the axis is broken. The table below says the same.',
      style: styles.caption,
    },
  ]
  const drawn = timeLinePieces(composer, element, figure)
  return [
    gap(1, true),
    ...drawn,
    ...textPieces(document, caption, {
      leftMm: geometry.leftMm,
      widthMm: geometry.mainWidthMm + geometry.sideWidthMm,
      owner: section.add('Caption'),
    }).map((piece, at, all) => ({ ...piece, keep: at < all.length - 1 })),
  ]
}

function composeConflict(composer: Composer, conflict: DateConflict): void {
  const line = (owner: Parameters<Composer['labelled']>[0], label: string, text: string) =>
    text === '' ? [] : composer.labelled(owner, label, [{ text, style: styles.text }])
  composer.block({ title: `Conflict ${conflict.number}`, note: 'these cannot all be so' }, (owner) => [
    ...composer.text(owner, [
      { text: `${conflict.title}. `, style: styles.strong },
      {
        text: conflict.by === null ? '' : `They miss each other by ${conflict.by} or more.`,
        style: styles.text,
      },
    ]),
    ...conflict.cannotAllBe.flatMap((step) => composer.labelled(owner, step.sort, stepText(composer, step))),
    ...line(
      owner,
      'the same follows from',
      conflict.alsoAgainst.length === 0
        ? ''
        : `each of ${conflict.alsoAgainst.length} more grounds, in place of the last: see the rows of the table that bound the building.`,
    ),
    ...line(
      owner,
      'no further witness',
      conflict.travelWithIt.length === 0
        ? ''
        : `${joined(conflict.travelWithIt)}: such parts travel together and count once.`,
    ),
    ...conflict.waysOut.flatMap((way, at) => line(owner, at === 0 ? 'ways out' : '', way)),
  ])
}

/** A step with the rows it cites and its source. */
function stepText(composer: Composer, { text, references, source }: Because): Rich {
  return [
    { text, style: styles.text },
    ...cited(composer, references, styles.soft),
    ...(source === null ? [] : [{ text: ` ${source}.`, style: styles.soft }]),
  ]
}

function cited(composer: Composer, references: readonly Reference[], style: TextStyle): readonly Span[] {
  const spans = references.flatMap((reference) => spanOf(composer, reference, style))
  if (spans.length === 0) return []
  return [{ text: ' (', style }, ...composer.list(spans, '', style), { text: ').', style }]
}

function spanOf(composer: Composer, { kind, key }: Reference, style: TextStyle): readonly Span[] {
  const number = Number(key)
  switch (kind) {
    case 'exhibit':
      return [composer.exhibit(number, style)]
    case 'claim':
      return [composer.linked(numbered('C', number), style, place.claim(number))]
    case 'carNumber':
      return [composer.linked(numbered('N', number), style, place.carNumber(number))]
    case 'correction':
      return [composer.linked(numbered('K', number), style, place.correction(number))]
    default:
      return []
  }
}

function rowsTable(composer: Composer, { rows }: TimeLineView): Piece[] {
  const cell = (text: string, style = styles.cell) => [{ text, style }]
  return composer.table(
    composer.section,
    {
      caption: cell('Everything dated: what is said of it alone, and what everything together leaves.', styles.caption),
      columns: [
        { head: 'what', widthMm: 38 },
        { head: 'as read', widthMm: 26 },
        { head: 'said of it alone', widthMm: 38 },
        { head: 'left by everything', widthMm: 32 },
        { head: 'against the building; see', widthMm: 36 },
      ],
      rows: rows.map((row) => ({
        cells: [
          cell(row.label),
          cell(row.asRead === '' ? '—' : row.asRead, row.asRead === '' ? styles.cellSoft : styles.cellMono),
          cell(saidAlone(row)),
          cell(row.narrowed.words, styles.cellStrong),
          [
            ...cell(row.standing === 'not compared' ? '—' : row.standing),
            ...cited(composer, numbersOf(row), styles.cellSoft).map((span) =>
              span.text === ').' ? { ...span, text: ')' } : span,
            ),
          ],
        ],
      })),
    },
    true,
  )
}

function saidAlone({ given, dropped }: DatedRow): string {
  const out = new Set(dropped.map(({ words }) => words))
  const left = [...new Set(given.map(({ words }) => words))].map((words) =>
    out.has(words) ? `${words} (no room left)` : words,
  )
  return left.length === 0 ? '—' : left.join('; ')
}

const numbersOf = ({ because, kind }: DatedRow): readonly Reference[] => {
  if (kind === 'car') return []
  const own = because.flatMap(({ references }) => references)
  return [...new Map(own.map((each) => [`${each.kind} ${each.key}`, each])).values()].slice(0, 4)
}
