import type { PartDefinition, PartEntry } from '../../../shared-types/part.ts'
import type { NameChoice, PartState } from '../../../shared-types/words.ts'

/** One line of the register: the part this car could carry, and what was found of it. */
export interface PartRow {
  readonly definition: PartDefinition
  /** Null while nobody has written anything: not seen. */
  readonly entry: PartEntry | null
  readonly state: PartState
  readonly name: string
  /** What the sheets of the record expect, in a line; empty where none says, or while it is being computed. */
  readonly expected: string
  /** State the facts suggest where it is another than the one written; null otherwise. */
  readonly suggested: PartState | null
}

/** What the table shows of a part's expectation. */
export interface ExpectedShort {
  readonly expected: string
  readonly suggestion: PartState | null
}

export interface PartFilter {
  /** Empty for every group. */
  readonly group: string
  readonly text: string
  readonly state: PartState | 'any'
  /** Only parts that are not seen or not determined. */
  readonly onlyOpen: boolean
}

const isOpen = (row: PartRow): boolean => row.state === 'not seen' || row.state === 'not determined'

/**
 * Joins the parts list with what the record says; a part without an entry is not seen, never fine.
 * A row that is as it was in `before` is the same object, so that a page need not draw it anew.
 */
export function partRows(
  definitions: readonly PartDefinition[],
  entries: readonly PartEntry[],
  names: NameChoice,
  before: readonly PartRow[] = [],
  judged: ReadonlyMap<string, ExpectedShort> = new Map(),
): readonly PartRow[] {
  const found = new Map(entries.map((entry) => [entry.partId, entry]))
  const had = new Map(before.map((row) => [row.definition.id, row]))
  return definitions.map((definition) => {
    const entry = found.get(definition.id) ?? null
    const name = definition[names]
    const same = had.get(definition.id)
    const state = entry?.state ?? 'not seen'
    const { expected, suggestion } = judged.get(definition.id) ?? { expected: '', suggestion: null }
    const suggested = suggestion === state ? null : suggestion
    const asBefore = same?.definition === definition && same.entry === entry && same.name === name
    if (asBefore && same.expected === expected && same.suggested === suggested) return same
    return { definition, entry, state, name, expected, suggested }
  })
}

/** Rows a filter leaves, in the order of the list. Text is looked for in both names, the id and what was read. */
export function filteredRows(rows: readonly PartRow[], filter: PartFilter): readonly PartRow[] {
  const wanted = filter.text.trim().toLowerCase()
  const says = (row: PartRow): string =>
    [row.definition.us, row.definition.uk, row.definition.id, row.entry?.numberAsRead, row.entry?.dateAsRead]
      .join(' ')
      .toLowerCase()
  return rows.filter(
    (row) =>
      (filter.group === '' || row.definition.group === filter.group) &&
      (filter.state === 'any' || row.state === filter.state) &&
      (!filter.onlyOpen || isOpen(row)) &&
      (wanted === '' || says(row).includes(wanted)),
  )
}

export interface GroupCount {
  readonly group: string
  readonly all: number
  readonly seen: number
  readonly notSeen: number
}

/** A group or set of parts in words: `fuel-supply` is "fuel supply". */
export const groupWords = (group: string): string => group.replaceAll('-', ' ')

/** How many parts of each group were seen, in the order the groups appear in the list. */
export function groupCounts(rows: readonly PartRow[]): readonly GroupCount[] {
  const counts = new Map<string, { all: number; seen: number }>()
  for (const row of rows) {
    const count = counts.get(row.definition.group) ?? { all: 0, seen: 0 }
    count.all += 1
    if (row.state !== 'not seen') count.seen += 1
    counts.set(row.definition.group, count)
  }
  return [...counts].map(([group, count]) => ({ group, ...count, notSeen: count.all - count.seen }))
}
