import type { Composer } from '../layout/composer.ts'
import { stated } from '../layout/composer.ts'
import { gap, type Piece } from '../layout/flow.ts'
import type { Rich } from '../layout/line-breaking.ts'
import { keptTogether, LINES_BESIDE_HEAD } from '../layout/table.ts'
import { styles, type TextStyle } from '../layout/text-style.ts'
import { fixedTexts } from '../wording/fixed-texts.ts'
import { phaseName } from '../wording/references.ts'
import { levelCovers } from '../wording/sentences.ts'

const layerWords = { outer: 'outer', inner: 'inner', under: 'underneath' } as const

const cell = (text: string, style: TextStyle = styles.cell): Rich => [{ text, style }]

/** How many of how many panels were looked at, and every place that was not, with the reason. */
export function composeCoverage(composer: Composer): void {
  const { judgement } = composer.content
  composer.openSection('coverage', 'Coverage')
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
  const groups = unseenGroups(composer)
  composer.block({ title: 'Not seen', note: 'place by place, with the reason' }, (owner) =>
    groups.length === 0
      ? composer.text(owner, 'Every panel of this body was inspected.')
      : [
          ...keptTogether(composer.text(owner, [{ text: 'Unseen is not free of defect.', style: styles.strong }])),
          gap(LINES_BESIDE_HEAD - 1, true),
          ...unseenTable(composer, groups),
        ],
  )
}

function unseenTable(composer: Composer, groups: readonly UnseenGroup[]): Piece[] {
  const { panels } = composer.content
  const count = groups.reduce((sum, { names }) => sum + names.length, 0)
  return composer.table(
    composer.section,
    {
      caption: cell(`${count} of ${panels.panels.length} panels of this body, and why.`, styles.caption),
      columns: [
        { head: 'state', widthMm: 26 },
        { head: 'part of the walk', widthMm: 24 },
        { head: 'panels, with their number', widthMm: 62 },
        { head: 'reason', widthMm: 58 },
      ],
      rows: groups.map(({ inspection, part, names, reason }) => ({
        cells: [cell(inspection, styles.cellStrong), cell(part), cell(names.join('; ')), cell(reason)],
      })),
    },
    true,
  )
}

interface UnseenGroup {
  readonly inspection: 'not inspected' | 'not accessible'
  readonly part: string
  readonly names: string[]
  readonly reason: string
}

/** Unseen panels, those that could not be reached first, gathered by part of the walk and reason. */
function unseenGroups(composer: Composer): UnseenGroup[] {
  const { record, panels } = composer.content
  const states = new Map(record.panels.map((state) => [state.panelId, state]))
  const groups = new Map<string, UnseenGroup>()
  for (const panel of panels.panels) {
    const state = states.get(panel.id)
    const inspection = state?.inspection ?? 'not inspected'
    if (inspection === 'inspected') continue
    const leftOut = panel.walked
      ? 'in the walk, not looked at; reason not stated'
      : levelCovers(record.commission.level)
    const reason = inspection === 'not accessible' ? stated(state?.reason ?? '') : leftOut
    const part = phaseName[panel.phase]
    const key = [inspection, part, reason].join('|')
    const group = groups.get(key) ?? { inspection, part, names: [], reason }
    group.names.push(`${panel.stop} ${composer.panelName(panel.id)}`)
    groups.set(key, group)
  }
  const order = ['not accessible', 'not inspected']
  return [...groups.values()].sort((a, b) => order.indexOf(a.inspection) - order.indexOf(b.inspection))
}
