import { printedRules } from '../../../shared-types/tokens.ts'
import type { Composer } from '../layout/composer.ts'
import { stated } from '../layout/composer.ts'
import { gap, type Piece } from '../layout/flow.ts'
import { LINE_MM } from '../layout/page-geometry.ts'
import { inks, styles } from '../layout/text-style.ts'
import { dayText, instantText } from '../wording/dates.ts'
import { fixedTexts } from '../wording/fixed-texts.ts'
import { NARROW } from '../wording/numbers.ts'

/** What changed since the edition before, what the signature stands for, and the block to sign in; on a page of its own. */
export function composeCertification(composer: Composer): void {
  const { record, edition } = composer.content
  const { commission } = record
  const texts = fixedTexts()
  composer.flow.newPage()
  composer.openSection('certification', 'Edition and certification')
  composer.block({ title: 'Changes', note: 'since the edition before' }, (owner) =>
    edition.previous === null
      ? composer.text(owner, 'This is the first edition: no earlier record is compared.')
      : [
          ...composer.text(
            owner,
            `This edition replaces edition ${edition.previous.number}, ${edition.previous.reportNumber}, issued ${instantText(edition.previous.issuedAt)}. Reason: ${stated(edition.reason)}`,
          ),
          ...(edition.changes.length === 0
            ? composer.text(owner, 'Nothing in the record has changed since.')
            : edition.changes.flatMap((change) => composer.text(owner, change, { indentMm: 4 }))),
        ],
  )
  composer.block({ title: 'Verification' }, (owner) => [
    ...composer.text(owner, texts.verification),
    ...composer.text(owner, [
      { text: `SHA-256 of entry ${record.journalNumber} of the journal\n`, style: styles.text },
      { text: inTwoLines(record.journalHash), style: styles.mono },
    ]),
    ...composer.text(owner, texts.copying),
  ])
  composer.block({ title: 'Not a certificate' }, (owner) => composer.text(owner, texts.notACertificate))
  composer.block({ title: 'Kept' }, (owner) =>
    composer.text(
      owner,
      `${texts.retention} ${commission.retentionYears}${NARROW}${commission.retentionYears === 1 ? 'year' : 'years'} from issue.`,
    ),
  )
  composer.block({ title: 'Review', note: 'before issue' }, (owner) => composer.text(owner, stated(commission.review)))
  composer.block({ title: 'Certification' }, (owner) => [
    ...texts.certification.flatMap((text) => composer.text(owner, text)),
    gap(1),
    ...composer.labelled(owner, 'interest', [{ text: stated(commission.independence), style: styles.text }]),
    ...composer.labelled(owner, 'helpers', [{ text: stated(commission.helpers), style: styles.text }]),
  ])
  composer.block({ title: 'Signature' }, (owner) => signature(composer, owner))
  composer.flow.newPage()
}

/** A SHA-256 in groups of four digits, half of it on each line. */
const inTwoLines = (sha256: string): string =>
  [sha256.slice(0, 32), sha256.slice(32)].map((half) => half.replace(/(.{4})(?=.)/g, '$1 ')).join('\n')

const SIGNATURE_LINES = 5
const LINE_LENGTH_MM = 60

function signature(composer: Composer, owner: Composer['section']): Piece[] {
  const { mainLeftMm, mainWidthMm } = composer.geometry
  const { record, edition } = composer.content
  const rule: Piece = {
    lines: SIGNATURE_LINES,
    keep: true,
    draw: (page, topMm) => {
      page.belongTo('artifact')
      const y = topMm + SIGNATURE_LINES * LINE_MM - 0.5
      for (const left of [mainLeftMm, mainLeftMm + mainWidthMm - LINE_LENGTH_MM]) {
        page.line(left, y, left + LINE_LENGTH_MM, y, { weightMm: printedRules.signature, colour: inks.ink })
      }
    },
  }
  const { commission } = record
  const issued = edition.number === null ? 'not issued' : dayText(edition.issuedAt)
  return [
    rule,
    ...composer.text(owner, [
      {
        text: `${commission.examiner}${commission.examinerRole === '' ? '' : `, ${commission.examinerRole}`}; issued ${issued}. `,
        style: styles.text,
      },
      { text: 'Left line: signature. Right line: place and date of signing.', style: styles.soft },
    ]),
  ]
}
