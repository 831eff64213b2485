import type { PartEntry } from '../../../shared-types/part.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import type { UnreadDate } from '../../../shared-types/time-line-view.ts'
import { intervalWords } from '../../analysis/dating/interval-words.ts'
import { partDefinition, typicalLeadDays } from '../../sheets/parts-list.ts'
import {
  BUILT,
  type DatedFact,
  type DatedThings,
  fittedFact,
  givenUp,
  leavesForBuilding,
  type OrderRule,
  type PartLead,
  REGISTERED,
  references,
  together,
} from './dated-things.ts'
import { codeSource, type PartDateReading, readPartDate } from './read-part-date.ts'

const LEAD_RECALLED = 'parts list of the program, recalled, wide on purpose'
const plainId = (partId: string) => partId.replace(/\.([LR]|[1-9][0-9]?)$/, '')

/** Name of a part as printed, with its side or number. */
export function partWords(partId: string, view: RecordView): string {
  const name = partDefinition(partId)?.[view.commission.names] ?? partId
  const which = partId.slice(plainId(partId).length + 1)
  if (which === '') return name
  return `${name}, ${which === 'L' ? 'left' : which === 'R' ? 'right' : `no. ${which}`}`
}

export const lastVisitDay = (view: RecordView): string | null =>
  view.visits
    .map(({ beganAt }) => beganAt.slice(0, 10))
    .sort()
    .at(-1) ?? null

/** Every part with a date on it, and the papers among the parts list. */
export function datedParts(view: RecordView, sheets: readonly ReferenceSheet[]): DatedThings {
  const notAfter = lastVisitDay(view)
  return together(view.parts.flatMap((entry) => datedPart(entry, view, sheets, notAfter)))
}

interface Written {
  readonly where: 'date' | 'marks' | 'number'
  readonly text: string
}

/** Where a date may stand on a part: in its own field, or, with a date code for the part, among marks and numbers. */
function writtenOn(entry: PartEntry, hasCode: boolean): readonly Written[] {
  if (entry.dateAsRead.trim() !== '') return [{ where: 'date', text: entry.dateAsRead }]
  if (!hasCode) return []
  return [
    { where: 'marks' as const, text: entry.marks },
    { where: 'number' as const, text: entry.numberAsRead },
  ].filter(({ text }) => text.trim() !== '')
}

function datedPart(
  entry: PartEntry,
  view: RecordView,
  sheets: readonly ReferenceSheet[],
  notAfter: string | null,
): Partial<DatedThings>[] {
  const codes = sheets.flatMap((sheet) =>
    sheet.dateCodes.filter(({ part }) => part === plainId(entry.partId)).map((code) => ({ code, sheet })),
  )
  const isTyre = plainId(entry.partId) === 'tyres'
  const tried = writtenOn(entry, codes.length > 0).map((written) => ({
    ...written,
    reading: readPartDate(written.text, codes, isTyre, notAfter),
  }))
  const read = tried.find(({ reading }) => reading.readings.length > 0)
  if (read !== undefined) return [thingsOf(entry, view, read, read.reading)]
  // Marks and numbers that hold no date are no failure: only what was written down as a date is missed.
  return tried
    .filter(({ where }) => where === 'date')
    .map(({ text, reading }) => ({ unread: [unreadDate(entry, view, text, reading.why)] }))
}

const unreadDate = (entry: PartEntry, view: RecordView, asRead: string, why: string): UnreadDate => ({
  label: partWords(entry.partId, view),
  asRead,
  why,
  references: [...references('part', [entry.partId]), ...references('exhibit', entry.exhibits)],
})

function thingsOf(
  entry: PartEntry,
  view: RecordView,
  { where, text }: Written,
  { readings, impossible, code }: PartDateReading,
): Partial<DatedThings> {
  const name = partWords(entry.partId, view)
  const isPaper = partDefinition(entry.partId)?.replacedInService === 'not-a-part'
  const id = `${isPaper ? 'paper' : 'part'}:${entry.partId}`
  const means = readings.map(({ interval }) => intervalWords(interval)).join(', or ')
  const from = where === 'date' ? '' : where === 'marks' ? ' among its marks' : ' in its number'
  const sources = [...new Set(readings.map(({ source }) => source))].join('; ')
  // The same writing entered under the car's numbers, with the same exhibit, is the same reading.
  const numbers = view.carNumbers.filter(
    (row) => row.asRead === text && row.exhibits.some((exhibit) => entry.exhibits.includes(exhibit)),
  )
  const fact: DatedFact = {
    id: `date of ${entry.partId}`,
    event: id,
    readings: readings.map(({ interval }) => interval),
    step: {
      text: `${name}: “${text}”${from}, ${means}${readings.length > 1 ? ': one of them' : ''}.`,
      sort: entry.learned,
      references: [
        ...references('part', [entry.partId]),
        ...references(
          'carNumber',
          numbers.map(({ number }) => number),
        ),
        ...references('exhibit', entry.exhibits),
      ],
      source: sources === 'as written' ? null : sources,
    },
    ifNot: `“${text}” on the ${name.toLowerCase()} is misread, or says something else than when it was made`,
    givenUp: isPaper ? givenUp.paper : givenUp.dateOfPart,
    onTrial: false,
  }
  const lead = isPaper ? null : leadOf(entry, id, code)
  return {
    events: [{ id, kind: isPaper ? 'paper' : 'part', label: name, asRead: text, state: entry.state }],
    facts: [fact, ...factoryFact(entry, name, fact, lead)],
    leads: lead === null ? [] : [lead],
    rules: paperRule(entry, name, id),
    impossible: new Map([[id, impossible]]),
  }
}

function leadOf(entry: PartEntry, event: string, code: PartDateReading['code']): PartLead | null {
  if (code?.code.leadDays != null) {
    const { least, most } = code.code.leadDays
    return { event, partId: entry.partId, minDays: least, maxDays: most, source: codeSource(code) }
  }
  const typical = typicalLeadDays(entry.partId)
  if (typical === null) return null
  return { event, partId: entry.partId, minDays: typical[0], maxDays: typical[1], source: LEAD_RECALLED }
}

/** What it means that a part was fitted when the car was built: it is that much older than the car. */
export const leadWords = ({ minDays, maxDays }: PartLead): string =>
  maxDays === null ? `${minDays} days or more before the car` : `${minDays} to ${maxDays} days before the car`

/**
 * What a part held to be factory fitted says of the building: each reading of its date, moved by the lead time. One fact
 * and not a date and a rule, because what it says is doubted or believed as a whole.
 */
function factoryFact(entry: PartEntry, name: string, date: DatedFact, lead: PartLead | null): readonly DatedFact[] {
  if (entry.state !== 'factory fitted' || lead === null) return []
  const readings = date.readings.map((reading) => leavesForBuilding(reading, lead))
  return [
    {
      id: fittedFact(entry.partId),
      event: BUILT,
      readings,
      step: {
        text: `${date.step.text} Held to be factory fitted, and dated ${leadWords(lead)}: built ${readings.map(intervalWords).join(', or ')}.`,
        sort: 'inferred',
        references: date.step.references,
        source: lead.source,
      },
      ifNot: `the ${name.toLowerCase()} was not fitted when the car was built, or its date is misread`,
      givenUp: givenUp.supposedByRegister,
      onTrial: false,
    },
  ]
}

/** A registration paper is issued on or after the day of first registration. */
function paperRule(entry: PartEntry, name: string, id: string): readonly OrderRule[] {
  if (plainId(entry.partId) !== 'registration-document') return []
  return [
    {
      id: `registered before ${entry.partId}`,
      before: REGISTERED,
      after: id,
      minDays: 0,
      maxDays: null,
      step: {
        text: `${name}: issued on the day of first registration or after it.`,
        sort: 'inferred',
        references: references('part', [entry.partId]),
        source: null,
      },
      ifNot: `the ${name.toLowerCase()} is not of this car`,
      givenUp: givenUp.order,
      onTrial: false,
    },
  ]
}
