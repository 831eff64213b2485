import type { CountedPart } from '../../../shared-types/computations.ts'
import type { Because, ShareRange } from '../../../shared-types/judgement.ts'
import type { PartState } from '../../../shared-types/words.ts'
import { factorWords, type Weighing, weightSource } from './own-weights.ts'
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

/**
 * Parts as fitted at the factory, by count times the user's weights: all of them, then group by group, where a group has
 * any to count.
 */
export function judgeParts(parts: readonly CountedPart[], weighs: Weighing): readonly ShareRange[] {
  if (parts.length === 0) return []
  const counted = parts.filter((part) => part.leftOut === null)
  const groups = [...new Map(counted.map((part) => [part.group, part.groupLabel]))]
  return [
    judge('parts', 'All parts', parts, weighs),
    ...groups.map(([group, label]) =>
      judge(
        `parts/${group}`,
        label,
        parts.filter((part) => part.group === group),
        weighs,
      ),
    ),
  ]
}

function judge(id: string, label: string, parts: readonly CountedPart[], weighs: Weighing): ShareRange {
  const counted = parts.filter((part) => part.leftOut === null)
  const looked = counted.filter(seen)
  const weighed = counted.some((part) => weighs.part(part).factor !== 1)
  return shareRange(
    counted.map((part) => ({ weight: weighs.part(part).factor, standing: partStanding(part) })),
    {
      id,
      label,
      basis: `${looked.length} of ${counted.length} parts seen${weighed ? ', weighed' : ''}`,
      because: [
        ...looked.map((part) => partLine(part, weighs)),
        ...unseenLine(counted, weighs),
        ...parts.filter((part) => part.leftOut !== null && seen(part)).map((part) => leftOutLine(part, weighs)),
      ],
    },
  )
}

function partLine(part: CountedPart, weighs: Weighing): Because {
  return {
    text: `${timesWeight(part, weighs)}: ${part.state}.`,
    sort: part.state === 'not determined' ? 'not determined' : (part.learned ?? 'seen'),
    references: [
      { kind: 'part', key: part.id },
      ...part.exhibits.map((number) => ({ kind: 'exhibit', key: String(number) }) as const),
    ],
    source: weightSource(weighs.part(part)),
  }
}

/** A part's name, with how many times it counts where that is not once. */
function timesWeight(part: CountedPart, weighs: Weighing): string {
  const { factor } = weighs.part(part)
  return factor === 1 ? part.label : `${part.label} × ${factorWords(factor)}`
}

const leftOutLine = (part: CountedPart, weighs: Weighing): Because => ({
  ...partLine(part, weighs),
  source: null,
  text: `${part.label}: ${part.state}; ${part.leftOut}, so not counted.`,
})

function unseenLine(parts: readonly CountedPart[], weighs: Weighing): readonly Because[] {
  const unseen = parts.filter((part) => !seen(part))
  if (unseen.length === 0) return []
  const names = unseen.map((part) => timesWeight(part, weighs)).join(', ')
  return [{ text: `Not seen: ${names}.`, sort: 'not inspected', references: [], source: null }]
}
