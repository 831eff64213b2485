import type { Composer } from '../layout/composer.ts'
import { numberedList } from '../layout/listed.ts'
import { styles } from '../layout/text-style.ts'
import { fixedTexts } from '../wording/fixed-texts.ts'
import { place } from '../wording/references.ts'

/** How things were learned, with which instruments, and how far it reaches; then the cautions that concern the work. */
export function composeMethod(composer: Composer): void {
  const texts = fixedTexts()
  composer.openSection('method', 'Method and limits')
  const cell = (text: string, style = styles.cell) => [{ text, style }]
  composer.block({ title: 'Methods', note: 'for each kind of finding' }, (owner) =>
    composer.table(owner, {
      caption: cell('How each kind of thing was established, and after which source.', styles.caption),
      columns: [
        { head: 'kind', widthMm: 26 },
        { head: 'how', widthMm: 68 },
        { head: 'source', widthMm: 36 },
      ],
      rows: texts.methods.map(({ kind, text, source }) => ({
        cells: [cell(kind, styles.cellStrong), cell(text), cell(source, styles.cellSoft)],
      })),
    }),
  )
  composer.block({ title: 'Instruments' }, (owner) => [
    ...composer.text(owner, [
      { text: 'Gauges with their identity, last check and substrate mode: ', style: styles.text },
      composer.page(place.section('readings'), styles.text),
      {
        text: '. Instruments of single measurements stand beside each measurement among the exhibits, ',
        style: styles.text,
      },
      composer.page(place.section('exhibits'), styles.text),
      { text: '.', style: styles.text },
    ]),
  ])
  composer.block({ title: 'Limits' }, (owner) => [
    ...composer.text(owner, texts.unseen),
    ...composer.text(owner, texts.sampling),
    ...composer.text(owner, texts.numberForms),
    ...composer.text(owner, texts.competence),
    ...composer.text(owner, 'No limit or pass mark is applied in this report; nothing is stated to be met or not met.'),
  ])
  composer.block({ title: 'Supplied\nby others' }, (owner) => composer.text(owner, texts.supplied))
  composer.block({ title: 'Photographs' }, (owner) => composer.text(owner, texts.originals))
  composer.block({ title: 'Cautions', note: 'for whoever works on the car; local rules first' }, (owner) =>
    numberedList(
      composer,
      owner,
      composer.content.cautions.map((caution) => [
        { text: `${caution.text} `, style: styles.cell },
        { text: caution.source, style: styles.sideNote },
      ]),
      styles.cellSoft,
    ),
  )
}
