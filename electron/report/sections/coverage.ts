import type { Composer } from '../layout/composer.ts'
import { stated } from '../layout/composer.ts'
import { styles } from '../layout/text-style.ts'
import { fixedTexts } from '../wording/fixed-texts.ts'
import { phaseName } from '../wording/references.ts'

const layerWords = { outer: 'outer', inner: 'inner', under: 'underneath' } as const

/** How many of how many panels were looked at, and every place that was not, with the reason. */
export function composeCoverage(composer: Composer): void {
  const { judgement, panels, record } = composer.content
  composer.openSection('coverage', 'Coverage')
  const cell = (text: string, style = styles.cell) => [{ text, style }]
  composer.block({ title: 'How much\nwas seen' }, (owner) => [
    ...composer.text(owner, fixedTexts().unseen),
    ...composer.table(owner, {
      caption: cell('Panels by layer.', styles.caption),
      columns: [
        { head: 'layer', widthMm: 40 },
        { head: 'inspected', widthMm: 22, align: 'right' },
        { head: 'not accessible', widthMm: 24, align: 'right' },
        { head: 'in the walk', widthMm: 22, align: 'right' },
        { head: 'of this body', widthMm: 22, align: 'right' },
      ],
      rows: judgement.coverage.map((row) => ({
        cells: [
          cell(layerWords[row.layer]),
          cell(String(row.seen)),
          cell(String(row.notAccessible)),
          cell(String(row.walked)),
          cell(String(row.all)),
        ],
      })),
    }),
  ])
  const states = new Map(record.panels.map((state) => [state.panelId, state]))
  const unseen = panels.panels.flatMap((panel) => {
    const state = states.get(panel.id)
    const inspection = state?.inspection ?? 'not inspected'
    if (inspection === 'inspected') return []
    const reason =
      inspection === 'not accessible'
        ? stated(state?.reason ?? '')
        : panel.walked
          ? 'in the walk, not looked at; reason not stated'
          : 'left out by the level of inspection'
    return [{ panel, inspection, reason }]
  })
  composer.block({ title: 'Not seen', note: 'place by place, with the reason' }, (owner) =>
    unseen.length === 0
      ? composer.text(owner, 'Every panel of this body was inspected.')
      : composer.table(owner, {
          caption: cell(`${unseen.length} of ${panels.panels.length} panels, and why.`, styles.caption),
          columns: [
            { head: '', widthMm: 8 },
            { head: 'panel', widthMm: 42 },
            { head: 'part of the walk', widthMm: 24 },
            { head: 'state', widthMm: 22 },
            { head: 'reason', widthMm: 34 },
          ],
          rows: unseen.map(({ panel, inspection, reason }) => ({
            cells: [
              cell(String(panel.stop), styles.cellSoft),
              cell(composer.panelName(panel.id)),
              cell(phaseName[panel.phase].replace(', everything shut', ''), styles.cellSoft),
              cell(inspection),
              cell(reason),
            ],
          })),
        }),
  )
}
