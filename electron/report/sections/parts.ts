import { compareFastening } from '../../analysis/sampling/compare-fastening.ts'
import type { Composer } from '../layout/composer.ts'
import { gap, type Piece } from '../layout/flow.ts'
import { keptTogether, LINES_BESIDE_HEAD } from '../layout/table.ts'
import { styles } from '../layout/text-style.ts'
import { place } from '../wording/references.ts'
import { composePartsExpected } from './parts-expected.ts'

/** The parts register by group: state, numbers and dates as read, what was expected. Parts without a row were not seen. */
export function composeParts(composer: Composer): void {
  const { record, judgement } = composer.content
  composer.openSection('parts', 'Parts')
  composer.block({ title: 'How many', note: 'not seen is a word, not a fault' }, (owner) => [
    ...keptTogether(
      composer.text(
        owner,
        `${record.parts.filter(({ state }) => state !== 'not seen').length} parts of the list were looked at. ${judgement.parts[0] === undefined ? '' : `${judgement.parts[0].basis}. `}A part without a line here was not seen.`,
      ),
    ),
    ...(record.parts.length === 0 ? [] : [gap(LINES_BESIDE_HEAD - 1, true), ...partsTable(composer)]),
  ])
  composePartsExpected(composer)
}

function partsTable(composer: Composer): Piece[] {
  const { record, parts, partGroups } = composer.content
  const definition = (id: string) => parts.find((part) => part.id === id.replace(/\.([LR]|[1-9][0-9]?)$/, ''))
  const cell = (text: string, style = styles.cell) => [{ text, style }]
  const groups = Object.keys(partGroups)
  const order = new Map(parts.map(({ id, group }, index) => [id, groups.indexOf(group) * parts.length + index]))
  const rows = [...record.parts].sort((a, b) => {
    const at = (id: string) => order.get(definition(id)?.id ?? '') ?? groups.length * parts.length
    return at(a.partId) - at(b.partId) || (a.partId < b.partId ? -1 : 1)
  })
  return composer.table(
    composer.section,
    {
      caption: cell('Parts looked at, by group.', styles.caption),
      columns: [
        { head: 'group', widthMm: 19 },
        { head: 'part', widthMm: 34 },
        { head: 'state', widthMm: 25 },
        { head: 'number and date as read', widthMm: 34 },
        { head: 'expected; note', widthMm: 40 },
        { head: 'learned; see', widthMm: 18 },
      ],
      rows: rows.map((entry, index) => {
        const part = definition(entry.partId)
        const group = partGroups[part?.group ?? ''] ?? part?.group ?? ''
        const before = rows[index - 1]
        const again = before !== undefined && definition(before.partId)?.group === part?.group
        return {
          anchors: [place.part(entry.partId)],
          cells: [
            cell(again ? '' : group, styles.cellSoft),
            cell(composer.partName(entry.partId)),
            cell(entry.state, styles.cellStrong),
            readAs(entry.numberAsRead, entry.dateAsRead, entry.marks),
            cell(
              [
                entry.expected === '' ? '' : `expected: ${entry.expected}`,
                entry.note,
                entry.fastening === null ? '' : `Fastening: ${compareFastening(entry.fastening).words}`,
              ]
                .filter(Boolean)
                .join('. ') || '—',
            ),
            [...cell(`${entry.learned}; `), ...composer.exhibits(entry.exhibits)],
          ],
        }
      }),
    },
    true,
  )
}

function readAs(numberAsRead: string, dateAsRead: string, marks: string) {
  const parts = [
    ...(numberAsRead === '' ? [] : [{ text: numberAsRead, style: styles.cellMono }]),
    ...(dateAsRead === ''
      ? []
      : [{ text: `${numberAsRead === '' ? '' : '; '}date ${dateAsRead}`, style: styles.cell }]),
    ...(marks === '' ? [] : [{ text: `${numberAsRead + dateAsRead === '' ? '' : '; '}${marks}`, style: styles.cell }]),
  ]
  return parts.length === 0 ? [{ text: 'nothing read', style: styles.cellSoft }] : parts
}
