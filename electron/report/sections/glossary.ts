import type { Composer } from '../layout/composer.ts'
import { styles } from '../layout/text-style.ts'
import { glossary } from '../wording/fixed-texts.ts'

/** Words and grades of the report, with their source. */
export function composeGlossary(composer: Composer): void {
  composer.openSection('glossary', 'Glossary')
  const cell = (text: string, style = styles.cell) => [{ text, style }]
  composer.flow.place(
    composer.table(
      composer.section,
      {
        caption: cell('Words of this report.', styles.caption),
        columns: [
          { head: 'word', widthMm: 40 },
          { head: 'meaning', widthMm: 90 },
          { head: 'source', widthMm: 40 },
        ],
        rows: glossary().entries.map(({ word, meaning, source }) => ({
          cells: [cell(word, styles.cellStrong), cell(meaning), cell(source, styles.cellSoft)],
        })),
      },
      true,
    ),
  )
}
