import { type PartEntry, partBase } from '../../../shared-types/part.ts'
import { partDefinition } from '../../sheets/parts-list.ts'
import type { SheetNames } from '../../sheets/reference/sheet-names.ts'
import { citedSource, type FactOnPart, noComplaint } from './part-facts.ts'

/** Parts that come off a car together, and who says so. */
export interface TravelSet {
  readonly key: string
  readonly words: string
  readonly source: string
}

/** What the parts list says of which parts travel together has this source; it stands at its head. */
const PARTS_LIST = 'parts list of the program: trade knowledge, recalled, no source'

function setOfPart(part: string): TravelSet {
  const travels = partDefinition(part)?.travelsWith ?? null
  return travels === null
    ? { key: `part ${part}`, words: 'it counts alone', source: PARTS_LIST }
    : { ...setOf(travels), source: PARTS_LIST }
}

const setOf = (set: string) => ({ key: `set ${set}`, words: `parts of the set “${set.replaceAll('-', ' ')}”` })

/** The set a part is counted with by the surveyor's word; null where it is counted as listed. */
export function ownSet(entries: readonly PartEntry[], part: string): TravelSet | null {
  const own = entries.find(({ partId, countsWith }) => partBase(partId) === part && countsWith !== null)?.countsWith
  if (own == null) return null
  const source = `the surveyor: ${own.reason}`
  return own.set === null
    ? { key: `part ${part}`, words: 'it counts alone, by the surveyor’s word', source }
    : { ...setOf(own.set), words: `${setOf(own.set).words}, by the surveyor’s word`, source }
}

/**
 * The set each fact belongs to: what the surveyor says of its part, else that of its donor where the sheet
 * names one, else that of the parts list. A donor is the
 * set of the part its first tell is looked at on, so that the engine of a sheet and the engine of the list are one.
 */
export function travelSets(
  facts: readonly FactOnPart[],
  names: SheetNames,
  entries: readonly PartEntry[],
): (fact: FactOnPart) => TravelSet {
  const donors = new Map<string, TravelSet>()
  const donorOf = (fact: FactOnPart) =>
    fact.kind === 'tell' && fact.tell.tell.travelsWith !== null
      ? names.resolve(fact.sheet, fact.tell.tell.travelsWith, 'donor', [], noComplaint)
      : null
  for (const fact of facts) {
    const donor = donorOf(fact)
    if (donor === null || donors.has(donor.key)) continue
    const own = donor.sheet.donors.find(({ id }) => id === donor.id)
    donors.set(donor.key, {
      key: setOfPart(fact.part).key,
      words: own?.name ?? donor.id,
      source: citedSource(donor.sheet, own?.source ?? null),
    })
  }
  return (fact) => {
    const own = ownSet(entries, partBase(fact.part))
    if (own !== null) return own
    const donor = donorOf(fact)
    return (donor === null ? null : donors.get(donor.key)) ?? setOfPart(partBase(fact.part))
  }
}
