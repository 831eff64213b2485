import type { Claim } from '../../../shared-types/claim.ts'
import type { Composer } from '../layout/composer.ts'
import { stated } from '../layout/composer.ts'
import { gap } from '../layout/flow.ts'
import { styles } from '../layout/text-style.ts'
import { dayText } from '../wording/dates.ts'
import { fixedTexts } from '../wording/fixed-texts.ts'
import { numbered, place } from '../wording/references.ts'

/** Each claim: the question, two propositions that exclude each other, the reasons, the verdict with its strength. */
export function composeClaims(composer: Composer): void {
  const { claims } = composer.content.record
  composer.openSection('claims', 'Claims')
  if (claims.length === 0) {
    composer.block({ title: 'Claims' }, (owner) => composer.text(owner, 'No claim is recorded.'))
  }
  for (const claim of claims) composeClaim(composer, claim)
  composer.block({ title: 'Words used', note: 'for the stronger proposition' }, (owner) => [
    ...composer.table(owner, {
      caption: [
        {
          text: 'How many times more probable the findings are under the stronger proposition.',
          style: styles.caption,
        },
      ],
      columns: [
        { head: 'ratio', widthMm: 50 },
        { head: 'word', widthMm: 80 },
      ],
      rows: fixedTexts().strengthBands.map(({ ratio, word }) => ({
        cells: [[{ text: ratio, style: styles.cell }], [{ text: word, style: styles.cell }]],
      })),
    }),
    ...composer.text(owner, [{ text: fixedTexts().strengthNote, style: styles.running }]),
  ])
}

function composeClaim(composer: Composer, claim: Claim): void {
  const target = place.claim(claim.number)
  composer.bookmark(`${numbered('C', claim.number)}  ${claim.words.slice(0, 60)}`, target)
  const line = (owner: Composer['section'], label: string, text: string) =>
    composer.labelled(owner, label, [{ text, style: styles.text }])
  const source = [claim.kind, claim.who, claim.on === null ? '' : dayText(claim.on), claim.where].filter(
    (word) => word !== '',
  )
  const titleRich = [{ text: `Claim ${numbered('C', claim.number)}`, style: styles.sideHead }]
  composer.block({ title: '', titleRich, note: source.join('; '), anchors: [target], whole: true }, (owner) => [
    ...composer
      .text(owner, [{ text: `“${claim.words}”`, style: styles.opinion }], { type: 'H3' })
      .map((piece) => ({ ...piece, keep: true })),
    ...(claim.repeats === null
      ? line(owner, 'source', 'a first source')
      : composer.labelled(owner, 'source', [
          { text: 'repeats ', style: styles.text },
          composer.linked(numbered('C', claim.repeats), styles.text, place.claim(claim.repeats)),
          { text: '; no second witness', style: styles.text },
        ])),
    ...line(owner, 'question', stated(claim.question)),
    ...composer.labelled(owner, 'P₁, if true', [{ text: stated(claim.ifTrue), style: styles.text }]),
    ...composer.labelled(owner, 'P₂, if not', [{ text: stated(claim.ifNot), style: styles.text }]),
    ...line(owner, 'taken as given', stated(claim.takenAsGiven)),
    ...line(owner, 'reasons', stated(claim.reasons)),
    ...composer.labelled(owner, 'findings', composer.findings(claim.findings, styles.reference, 'none cited')),
    ...composer.labelled(owner, 'exhibits', composer.exhibits(claim.exhibits, styles.text, 'none cited')),
    ...line(owner, 'set aside, why', stated(claim.setAside)),
    ...line(owner, 'would settle it', stated(claim.wouldSettle)),
    gap(1, true),
    ...composer.text(owner, [
      { text: 'Opinion. ', style: styles.opinion },
      { text: `The claim is ${claim.verdict}.`, style: styles.opinionStrong },
      { text: ` Strength of support: ${claim.strength}.`, style: styles.opinion },
    ]),
  ])
}
