import { partBase } from '../../shared-types/part.ts'
import type {
  InterchangeRow,
  PartExpectation,
  PartExpectations,
  PartGroup,
  PartReason,
  PartsReported,
} from '../../shared-types/part-expectation.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import type { CarRecord } from '../record/car-record.ts'
import { partSuffix } from '../report/wording/references.ts'
import { partDefinition } from '../sheets/parts-list.ts'
import { identityEvidence, notedBy } from './identity-evidence.ts'
import { SUPPORT_SCALE, shelfOf } from './identity-view.ts'
import { type AskedShares, askShares, readBySet } from './parts-expected/asked-shares.ts'
import { knownInterchange } from './parts-expected/carriers.ts'
import { interchangeReasons, interchangeRows } from './parts-expected/interchange-rows.ts'
import { datesOfPart } from './parts-expected/part-dates.ts'
import { factsOnParts } from './parts-expected/part-facts.ts'
import { expectedWords, reasonsFor, speaks, suggestedState } from './parts-expected/suggestion.ts'
import { ownSet, type TravelSet, travelSets } from './parts-expected/travel-sets.ts'
import { supportTogether, type WeighedFact, weighFacts } from './parts-expected/weighed-facts.ts'
import type { UseCases } from './program.ts'
import { type SheetsOfRecord, sheetsOfRecord } from './sheets-of-record.ts'

const NO_SHEET =
  'No reference sheet is in this record: nothing is known of what its parts should be. Take one in under Identity.'
const IMPOSSIBLE =
  'What was seen is impossible together by the sheets, so no part can be weighed. See the contradictions under Identity.'

const NOTES = [
  'Support is for what was found under one proposition against the other: fitted at the factory, or come from other cars, other years or spares. It is no probability that a part is original.',
  'What was read on a part and on those that travel with it is left out of what is expected of it.',
  'A number read on the car tells what the parts beside it should be, once with the marks it is read off.',
  'Under each proposition the least probable fact of a group stands for the whole group.',
  'A range runs over everything that is not known of the pool; a pool is as complete as the sheets.',
] as const

const nothing = (problem: string): PartsReported => ({
  problem,
  parts: [],
  scale: SUPPORT_SCALE,
  notes: NOTES,
  interchange: [],
})

/** Name of a part as printed in this record. */
const nameIn =
  ({ commission }: RecordView) =>
  (partId: string): string =>
    `${partDefinition(partId)?.[commission.names] ?? partId}${partSuffix(partId)}`

/** The last answer, by the hash of the journal row it was computed from: screen, interchange and report share it. */
let last: { readonly hash: string; readonly judged: Promise<PartsReported> } | null = null

/** Each part of the car against what the sheets expect of this very car; computed once for each state of a record. */
export function partsJudged(record: CarRecord, shelf: string | null = null): Promise<PartsReported> {
  const { journalHash } = record.view()
  if (last?.hash === journalHash) return last.judged
  const computed = judgedAfresh(record, shelf)
  last = { hash: journalHash, judged: computed }
  // A fault is not kept: the next to ask computes anew.
  computed.catch(() => {
    if (last?.judged === computed) last = null
  })
  return computed
}

async function judgedAfresh(record: CarRecord, shelf: string | null): Promise<PartsReported> {
  const view = record.view()
  if (view.sheets.length === 0) return nothing(NO_SHEET)
  const own = await sheetsOfRecord(record)
  if (own.compiled === null || own.compiled.model === null || own.problem !== null)
    return nothing(own.problem ?? NO_SHEET)
  try {
    return await judged(view, own, own.compiled.model, shelf)
  } catch (fault) {
    if (fault instanceof ProblemError) return nothing(fault.message)
    throw fault
  }
}

async function judged(
  view: RecordView,
  own: SheetsOfRecord,
  model: Parameters<typeof askShares>[0],
  shelf: string | null,
): Promise<PartsReported> {
  if (own.compiled === null) return nothing(NO_SHEET)
  const { observations, claims } = view
  // What was seen of a part is weighed whether or not a number stands for it; a number tells what the other parts should be.
  const { facts, names } = factsOnParts(own, identityEvidence({ observations, numbers: [] }, claims, own.compiled))
  const noted = notedBy(view, own.compiled)
  const evidence = { ...identityEvidence(noted, claims, own.compiled), certain: [] }
  const setOf = travelSets(facts, names, view.parts)
  const known = knownInterchange(own.sheets, names)
  const read = { evidence, bySet: readBySet(facts, noted.numbers, setOf) }
  const asked = await askShares(model, read, facts, known, names, { key: own.key, shelf })
  const nameOf = nameIn(view)
  const interchange = interchangeRows(known, facts, asked, setOf, nameOf)
  if (asked === null) return { ...nothing(IMPOSSIBLE), interchange }
  const numberRead = (part: string) =>
    view.parts.find(({ partId, numberAsRead }) => partBase(partId) === part && numberAsRead !== '')?.numberAsRead ?? ''
  const weighed = weighFacts(facts, numberRead, asked, setOf, known, names)
  const groupOf = groupsOf(weighed, nameOf)
  const listed = new Set([...view.parts.map(({ partId }) => partId)])
  const unlisted = [...new Set(weighed.map(({ part }) => part))].filter(
    (part) => ![...listed].some((partId) => partBase(partId) === part),
  )
  const parts = [...listed, ...unlisted].map((partId) =>
    expectationOf(partId, view, own, weighed, groupOf, asked, interchange, names, nameOf),
  )
  return { problem: null, parts, scale: SUPPORT_SCALE, notes: NOTES, interchange }
}

/** Parts of one set whose own facts speak the same way; those that speak another way came by themselves. */
function groupsOf(weighed: readonly WeighedFact[], nameOf: (part: string) => string) {
  const ofPart = new Map<string, WeighedFact[]>()
  for (const each of weighed) ofPart.set(each.part, [...(ofPart.get(each.part) ?? []), each])
  const keyOf = (part: string): string | null => {
    const facts = ofPart.get(part) ?? []
    const side = speaks(supportTogether(facts))
    const set = facts.find(({ weighed: found }) => found !== null)?.set
    return set === undefined || side === 'neither' ? null : `${set.key}, ${side}`
  }
  const keys = new Map([...ofPart.keys()].map((part) => [part, keyOf(part)]))
  return (part: string): PartGroup | null => {
    const key = keys.get(part) ?? null
    if (key === null) return null
    const parts = [...keys].flatMap(([other, own]) => (own === key ? [other] : []))
    const facts = parts.flatMap((other) => ofPart.get(other) ?? [])
    const support = supportTogether(facts)
    const set = ofPart.get(part)?.find(({ weighed: found }) => found !== null)?.set
    return support === null || set === undefined
      ? null
      : { words: set.words, source: set.source, parts: parts.map(nameOf), support }
  }
}

/** What the surveyor said of the parts it is counted with, before all that follows from it. */
const movedReason = (own: TravelSet | null): readonly PartReason[] =>
  own === null ? [] : [{ words: `Counted with others or not: ${own.words}.`, source: own.source, speaks: 'neither' }]

function expectationOf(
  partId: string,
  view: RecordView,
  own: SheetsOfRecord,
  weighed: readonly WeighedFact[],
  groupOf: (part: string) => PartGroup | null,
  asked: AskedShares,
  interchange: readonly InterchangeRow[],
  names: Parameters<typeof datesOfPart>[3],
  nameOf: (partId: string) => string,
): PartExpectation {
  const entry = view.parts.find((row) => row.partId === partId) ?? null
  const base = partBase(partId)
  const facts = weighed.filter(({ part }) => part === base)
  const rows = interchange.filter((row) => row.partId === base)
  const answer = asked.without(facts[0]?.set.key ?? '')
  const read = datesOfPart(partId, entry?.dateAsRead ?? '', own.sheets, names, answer)
  const support = supportTogether(facts)
  const group = groupOf(base)
  const shown = facts.map(({ fact }) => fact)
  const suggestion = suggestedState(group?.support ?? support, shown)
  const seen = shown.some(({ found }) => found !== null) || (entry !== null && entry.state !== 'not seen')
  return {
    partId,
    name: nameOf(partId),
    known: facts.length > 0 || rows.length > 0,
    seen,
    expected: shown
      .filter(({ kind }) => kind === 'tell' || shown.every((each) => each.kind === 'number'))
      .map((fact) => expectedWords(fact))
      .filter((words) => words !== '')
      .join('; '),
    facts: shown,
    ...read,
    support,
    group,
    suggestion,
    written: entry?.state ?? 'not seen',
    because: [
      ...movedReason(ownSet(view.parts, base)),
      ...reasonsFor(facts, read.dates, group, interchangeReasons(rows), suggestion),
    ],
    interchange: rows.map(({ id }) => id),
  }
}

/** What the parts of the open record should be. */
export async function partExpectations(record: CarRecord, shelf: string | null = null): Promise<PartExpectations> {
  const { interchange: _, ...expectations } = await partsJudged(record, shelf)
  return expectations
}

export const partExpectationUseCases: Pick<UseCases, 'parts.expectation' | 'parts.interchange'> = {
  'parts.expectation': (program) => partExpectations(program.record(), shelfOf(program)),
  'parts.interchange': async (program, { partId, line }) => {
    const { problem, interchange } = await partsJudged(program.record(), shelfOf(program))
    const wanted = line.trim().toLowerCase()
    const rows = interchange
      .filter((row) => partId === null || row.partId === partBase(partId))
      .filter((row) => wanted === '' || row.carriers.some((carrier) => carrier.line.toLowerCase().includes(wanted)))
    const lines = new Set(interchange.flatMap(({ carriers }) => carriers.map((carrier) => carrier.line)))
    return { problem, rows, lines: [...lines].toSorted((one, other) => one.localeCompare(other)) }
  },
}
