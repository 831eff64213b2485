import type { ExtentChange, ReadingsCited } from '../../../shared-types/coating-change.ts'
import { coatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { Correction } from '../../../shared-types/correction.ts'
import type { Composer } from '../layout/composer.ts'
import { stated } from '../layout/composer.ts'
import type { Piece } from '../layout/flow.ts'
import { styles } from '../layout/text-style.ts'
import { costBounds } from '../wording/costs.ts'
import { dayText } from '../wording/dates.ts'
import { fixedTexts } from '../wording/fixed-texts.ts'
import { figure, NARROW } from '../wording/numbers.ts'
import { numbered, place } from '../wording/references.ts'

const groups = ['safety and legal', 'metal', 'coating', 'mechanical', 'trim and interior', 'papers'] as const

/** What is to be put right, has been, and has been verified; costs as ranges with their basis. Safety and legal first. */
export function composeCorrections(composer: Composer): void {
  const { corrections } = composer.content.record
  composer.openSection('corrections', 'Putting right')
  composer.block({ title: 'Cost to correct', note: 'bounds, no forecast' }, (owner) => [
    ...composer.text(owner, costBounds(composer.content.record)),
    ...composer.text(owner, [{ text: fixedTexts().costNote, style: styles.soft }]),
  ])
  if (corrections.length === 0) {
    composer.block({ title: 'Corrections' }, (owner) => composer.text(owner, 'No correction is recorded.'))
  }
  for (const group of groups) {
    for (const correction of corrections.filter((candidate) => candidate.group === group)) {
      composeCorrection(composer, correction)
    }
  }
}

function composeCorrection(composer: Composer, correction: Correction): void {
  const { currency } = composer.content.record.commission
  const line = (owner: Composer['section'], label: string, text: string) =>
    composer.labelled(owner, label, [{ text, style: styles.text }])
  const titleRich = [{ text: `Correction ${numbered('K', correction.number)}`, style: styles.sideHead }]
  const note = `${correction.group}\n${correction.state}`
  const done = correction.state !== 'planned'
  composer.block(
    { title: '', titleRich, note, anchors: [place.correction(correction.number)], whole: true },
    (owner) => [
      ...composer
        .text(owner, [{ text: correction.what, style: styles.strong }], { type: 'H3' })
        .map((piece) => ({ ...piece, keep: true })),
      ...composer.labelled(
        owner,
        'for findings',
        composer.findings(correction.findings, styles.reference, 'none named'),
      ),
      ...line(
        owner,
        'cost',
        correction.cost === null
          ? 'not estimated'
          : `${currency}${NARROW}${figure(correction.cost.low)} – ${figure(correction.cost.high)}, likely ${figure(correction.cost.likely)}; basis: ${stated(correction.cost.basis)}; priced ${correction.cost.pricedOn === null ? 'on no stated day' : `on ${dayText(correction.cost.pricedOn)}`}`,
      ),
      ...(done
        ? [
            ...line(
              owner,
              'done',
              `by ${stated(correction.by)}; ${correction.doneOn === null ? 'day not stated' : dayText(correction.doneOn)}; materials: ${stated(correction.materials)}`,
            ),
            ...composer.labelled(
              owner,
              'before',
              composer.exhibits(correction.exhibitsBefore, styles.text, 'no exhibit'),
            ),
            ...composer.labelled(owner, 'after', [
              ...composer.exhibits(correction.exhibitsAfter, styles.text, 'no exhibit'),
              { text: '; findings ', style: styles.text },
              ...composer.findings(correction.findingsAfter, styles.reference, 'none'),
            ]),
          ]
        : []),
      ...coatingLines(composer, owner, correction),
      ...(correction.state === 'verified'
        ? line(
            owner,
            'verified',
            `by ${stated(correction.verifiedBy)}; ${correction.verifiedOn === null ? 'day not stated' : dayText(correction.verifiedOn)}`,
          )
        : []),
      ...line(
        owner,
        'kept, reversible',
        `removed parts kept: ${stated(correction.removedPartsKept)}; reversible: ${correction.reversible}`,
      ),
      ...(correction.note === '' ? [] : line(owner, 'note', correction.note)),
    ],
  )
}

/** What the readings a correction cites say of the filler before and after it. */
function coatingLines(composer: Composer, owner: Composer['section'], correction: Correction): Piece[] {
  const change = composer.content.coatingChanges.find((own) => own.correction === correction.number)
  if (change === undefined) return []
  const line = (label: string, text: string) => composer.labelled(owner, label, [{ text, style: styles.text }])
  const { thickness } = coatingMeasures(composer.content.record.commission)
  const extent = (head: string, own: ExtentChange | null) =>
    own === null ? [] : line(head, `${own.change.words} Before: ${own.before.words} After: ${own.after.words}`)
  return [
    ...line('coating', `${change.panel}; before: ${citedWords(change.before)}; after: ${citedWords(change.after)}.`),
    ...extent(`over ${thickness.text(change.thresholdUm)}`, change.area),
    ...extent('volume above paint', change.volume),
    ...[change.problem, ...change.notes, change.problem === null ? change.cannotTell : null].flatMap((words) =>
      words === null ? [] : line('', words),
    ),
  ]
}

function citedWords(cited: ReadingsCited | null): string {
  if (cited === null) return 'no reading cited'
  const { spots, from, to } = cited
  const days = from === to ? dayText(from) : `${dayText(from)} to ${dayText(to)}`
  const names = `${numbered('R', Math.min(...spots))} and ${numbered('R', Math.max(...spots))}`
  return `${spots.length} ${spots.length === 1 ? 'spot' : `spots between ${names}`}, read ${days}`
}
