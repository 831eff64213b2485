import type { CountedPart } from '../../../shared-types/computations.ts'
import type { Because, ShareRange } from '../../../shared-types/judgement.ts'
import type { PartState } from '../../../shared-types/words.ts'
import { type Standing, shareRange } from './shares.ts'

const standing: { readonly [P in PartState]: Standing } = {
  'factory fitted': 'yes',
  'period accessory': 'no',
  'right type, wrong date': 'no',
  'new old stock': 'no',
  reproduction: 'no',
  'later fitment': 'no',
  'home-made': 'no',
  missing: 'no',
  'not determined': 'open',
  'not seen': 'open',
}

/** Whether a part counts as fitted at the factory. */
export const partStanding = (part: CountedPart): Standing => standing[part.state]

const seen = (part: CountedPart): boolean => part.state !== 'not seen'

/** Parts as fitted at the factory, by count: all of them, then group by group, where a group has any to count. */
export function judgeParts(parts: readonly CountedPart[]): readonly ShareRange[] {
  if (parts.length === 0) return []
  const counted = parts.filter((part) => part.leftOut === null)
  const groups = [...new Map(counted.map((part) => [part.group, part.groupLabel]))]
  return [
    judge('parts', 'All parts', parts),
    ...groups.map(([group, label]) =>
      judge(
        `parts/${group}`,
        label,
        parts.filter((part) => part.group === group),
      ),
    ),
  ]
}

function judge(id: string, label: string, parts: readonly CountedPart[]): ShareRange {
  const counted = parts.filter((part) => part.leftOut === null)
  const looked = counted.filter(seen)
  return shareRange(
    counted.map((part) => ({ weight: 1, standing: partStanding(part) })),
    {
      id,
      label,
      basis: `${looked.length} of ${counted.length} parts seen`,
      because: [
        ...looked.map(partLine),
        ...unseenLine(counted),
        ...parts.filter((part) => part.leftOut !== null && seen(part)).map(leftOutLine),
      ],
    },
  )
}

function partLine(part: CountedPart): Because {
  return {
    text: `${part.label}: ${part.state}.`,
    sort: part.state === 'not determined' ? 'not determined' : (part.learned ?? 'seen'),
    references: [
      { kind: 'part', key: part.id },
      ...part.exhibits.map((number) => ({ kind: 'exhibit', key: String(number) }) as const),
    ],
    source: null,
  }
}

const leftOutLine = (part: CountedPart): Because => ({
  ...partLine(part),
  text: `${part.label}: ${part.state}; ${part.leftOut}, so not counted.`,
})

function unseenLine(parts: readonly CountedPart[]): readonly Because[] {
  const unseen = parts.filter((part) => !seen(part))
  if (unseen.length === 0) return []
  const names = unseen.map((part) => part.label).join(', ')
  return [{ text: `Not seen: ${names}.`, sort: 'not inspected', references: [], source: null }]
}
