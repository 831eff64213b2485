import { capital } from '../../../shared-types/capital.ts'
import type { StructureElement } from '../document/structure-tree.ts'
import { shareBars } from '../drawing/share-bars.ts'
import type { Composer } from '../layout/composer.ts'
import { gap, type Piece } from '../layout/flow.ts'
import { textPieces } from '../layout/text-block.ts'
import { styles } from '../layout/text-style.ts'
import { costBounds } from '../wording/costs.ts'
import { findingSentence } from '../wording/finding-sentence.ts'
import { fixedTexts } from '../wording/fixed-texts.ts'
import { numbered, place } from '../wording/references.ts'
import { builtInterval } from '../wording/sentences.ts'

const MOST_FINDINGS = 6
const MOST_UNSEEN = 8
const severityOrder = ['severe', 'marked', 'slight', 'none']

/** The page for a reader in a hurry: what it is, what is dangerous, what was found, shares, claims, cost, what was not seen. */
export function composeSummary(composer: Composer): void {
  composer.openSection('summary', 'Summary')
  composer.block({ title: 'What it is,\nand how sure' }, (owner) => composer.text(owner, whatItIs(composer)))
  const dangerous = composer.content.record.findings.filter((finding) => finding.dangerous)
  if (dangerous.length > 0) {
    composer.block({ title: 'Can hurt somebody', note: 'told to the owner at once' }, (owner) =>
      findingLines(
        composer,
        owner,
        dangerous.map(({ number }) => number),
      ),
    )
  }
  composer.block({ title: 'What was found', note: 'besides the above, worst first' }, (owner) =>
    whatWasFound(composer, owner),
  )
  composer.block({ title: 'Originality', note: 'computed from what was seen' }, (owner) => originality(composer, owner))
  composer.block({ title: 'Claims', note: 'in the claimants’ words' }, (owner) => claims(composer, owner))
  composer.block({ title: 'Cost to correct', note: 'the examiner’s estimates' }, (owner) => costs(composer, owner))
  composer.block({ title: 'Not seen', note: 'not the same as sound' }, (owner) => notSeen(composer, owner))
  composer.block({ title: 'Look at next', note: 'what would settle most, first' }, (owner) => [
    ...lookNext(composer, owner),
    gap(1),
    ...composer.text(owner, [{ text: fixedTexts().numberForms, style: styles.running }]),
  ])
}

function whatItIs({ content }: Composer): string {
  const { particulars, carNumbers } = content.record
  const built = builtInterval(particulars)
  const found = carNumbers.filter(({ asRead }) => asRead !== '').length
  const whole = content.judgement.whole
  return [
    `${particulars.title}${particulars.maker === '' ? '' : `, ${particulars.maker}`}.`,
    built === '' ? 'When it was built is not stated.' : `${capital(built)}.`,
    `${found}\u00A0of\u00A0${carNumbers.length} numbers looked for were read on the car.`,
    `${whole.panelsSeen}\u00A0of\u00A0${whole.panels} panels were inspected at the level “${content.record.commission.level}”.`,
  ].join(' ')
}

/** Number, sentence and page of findings, in this order. */
function findingLines(composer: Composer, owner: StructureElement, numbers: readonly number[]): Piece[] {
  const list = owner.add('L')
  const { mainLeftMm, mainWidthMm } = composer.geometry
  return numbers.flatMap((number) => {
    const finding = composer.content.record.findings.find((candidate) => candidate.number === number)
    if (finding === undefined) return []
    const item = list.add('LI')
    const label = textPieces(composer.document, [composer.finding(number, styles.reference)], {
      leftMm: mainLeftMm,
      widthMm: 11,
      owner: item.add('Lbl'),
    })
    const body = textPieces(composer.document, [{ text: findingSentence(composer, finding), style: styles.text }], {
      leftMm: mainLeftMm + 12,
      widthMm: mainWidthMm - 28,
      owner: item.add('LBody'),
    })
    const page = textPieces(composer.document, [composer.page(place.finding(number), styles.soft)], {
      leftMm: mainLeftMm + mainWidthMm - 14,
      widthMm: 14,
      owner: item.add('LBody'),
      align: 'right',
    })
    return body.map(
      (piece, index): Piece => ({
        ...piece,
        draw: (canvas, topMm) => {
          if (index === 0) label[0]?.draw(canvas, topMm)
          piece.draw(canvas, topMm)
          if (index === 0) page[0]?.draw(canvas, topMm)
        },
      }),
    )
  })
}

function whatWasFound(composer: Composer, owner: StructureElement): Piece[] {
  const { findings } = composer.content.record
  if (findings.length === 0) return composer.text(owner, 'No finding is recorded.')
  const others = findings.filter(({ dangerous }) => !dangerous)
  const worst = others.sort(
    (a, b) => severityOrder.indexOf(a.severity) - severityOrder.indexOf(b.severity) || a.number - b.number,
  )
  const rest = others.length - MOST_FINDINGS
  return [
    ...findingLines(
      composer,
      owner,
      worst.slice(0, MOST_FINDINGS).map(({ number }) => number),
    ),
    ...(rest > 0
      ? composer.text(owner, [
          { text: `and ${rest} more, `, style: styles.soft },
          composer.page(place.section('findings'), styles.soft),
        ])
      : []),
  ]
}

function originality(composer: Composer, owner: StructureElement): Piece[] {
  const { whole, parts } = composer.content.judgement
  const bars = [
    { ...whole.originalMetal, label: 'Original metal' },
    { ...whole.factoryPaint, label: 'Factory paint' },
    ...parts.slice(0, 1),
  ]
  return shareBars(composer, owner, bars, [
    { text: `${composer.nextFigure()} `, style: styles.captionStrong },
    {
      text: 'Share still as it left the works: at least the solid bar, at most the solid and the open bar. ',
      style: styles.caption,
    },
    composer.page(place.section('originality'), styles.caption),
  ])
}

function claims(composer: Composer, owner: StructureElement): Piece[] {
  const { claims: rows } = composer.content.record
  if (rows.length === 0) return composer.text(owner, 'No claim is recorded.')
  const column = styles.cell
  return composer.table(owner, {
    caption: [{ text: 'Claims and the verdicts on them.', style: styles.caption }],
    columns: [
      { head: '', widthMm: 10 },
      { head: 'claim', widthMm: 62 },
      { head: 'verdict', widthMm: 24 },
      { head: 'strength of support', widthMm: 24 },
      { head: 'page', widthMm: 10, align: 'right' },
    ],
    rows: rows.map((claim) => ({
      cells: [
        [composer.linked(numbered('C', claim.number), column, place.claim(claim.number))],
        [{ text: shortened(claim.words), style: column }],
        [{ text: claim.verdict, style: styles.cellStrong }],
        [{ text: claim.strength, style: column }],
        [composer.page(place.claim(claim.number), column)],
      ],
    })),
  })
}

/** The summary quotes the head of a long text; the section it points to has it in full. */
function shortened(text: string): string {
  const line = text.replace(/\s+/g, ' ')
  return line.length > 90 ? `${line.slice(0, 80).trimEnd()} …` : line
}

function costs(composer: Composer, owner: StructureElement): Piece[] {
  const { corrections } = composer.content.record
  if (corrections.length === 0) return composer.text(owner, 'No correction is recorded.')
  return composer.text(owner, [
    { text: `${costBounds(composer.content.record)} `, style: styles.text },
    composer.page(place.section('corrections'), styles.soft),
  ])
}

function notSeen(composer: Composer, owner: StructureElement): Piece[] {
  const { record, judgement } = composer.content
  const unreached = record.panels.filter(({ inspection }) => inspection === 'not accessible')
  const names = unreached.slice(0, MOST_UNSEEN).map(({ panelId }) => composer.panelName(panelId))
  const more = unreached.length > MOST_UNSEEN ? `; and ${unreached.length - MOST_UNSEEN} more` : ''
  const seen = judgement.coverage.map(
    ({ layer, seen: count, all, notAccessible }) =>
      `${layer} ${count} of ${all} inspected${notAccessible > 0 ? `, ${notAccessible} not accessible` : ''}`,
  )
  return [
    ...composer.text(owner, [
      { text: `By layer: ${seen.join('; ')}. `, style: styles.text },
      composer.page(place.section('coverage'), styles.soft),
    ]),
    ...(names.length === 0 ? [] : composer.text(owner, `Not accessible: ${names.join('; ')}${more}.`)),
  ]
}

function lookNext(composer: Composer, owner: StructureElement): Piece[] {
  const next = composer.content.judgement.lookNext.slice(0, 4)
  if (next.length === 0) return composer.text(owner, 'Nothing is named.')
  return next.flatMap(({ what, why }, index) =>
    composer.text(owner, [
      { text: `${index + 1}  ${what} `, style: styles.text },
      { text: why, style: styles.soft },
    ]),
  )
}
