import type { RecordView } from '../../../shared-types/record.ts'
import { datesOfPaper } from '../../analysis/dating/dates-in-words.ts'
import { dayWords, intervalWords, type OpenInterval } from '../../analysis/dating/interval-words.ts'
import { groupedBy } from '../../analysis/statistics/grouped-by.ts'
import { partDefinition } from '../../sheets/parts-list.ts'
import { rowMark, shortened } from '../row-marks.ts'
import { type DatedEvent, type DatedFact, type DatedThings, givenUp, references } from './dated-things.ts'

const thing = (
  event: DatedEvent,
  when: OpenInterval,
  step: DatedFact['step'],
  ifNot: string,
): Partial<DatedThings> => ({
  events: [event],
  facts: [
    {
      id: `day of ${event.id}`,
      event: event.id,
      readings: [when],
      step,
      ifNot,
      givenUp: givenUp.paper,
      onTrial: false,
    },
  ],
})

/** Letters of a label; a paper is known by its number, so the rest of its caption may go. */
const LABEL = 100

/** Papers, statements, visits and work done, each with its day; they are shown with the rest and say nothing of the building. */
export function papersAndVisits(view: RecordView): readonly Partial<DatedThings>[] {
  return [...papers(view), ...claims(view), ...visits(view), ...works(view)]
}

const papers = (view: RecordView) =>
  view.exhibits.flatMap(({ number, kind, caption }) => {
    const made = kind === 'document' ? datesOfPaper(caption).made : null
    // A paper of the parts list with a date of its own is on the time line already.
    const listed = view.parts.some(
      ({ partId, dateAsRead, exhibits }) =>
        dateAsRead !== '' && exhibits.includes(number) && partDefinition(partId)?.replacedInService === 'not-a-part',
    )
    if (made === null || listed) return []
    const mark = rowMark('exhibits', number)
    return thing(
      {
        id: `paper:E${number}`,
        kind: 'paper',
        label: `${mark} ${shortened(caption, LABEL)}`,
        asRead: made.text,
        state: '',
      },
      made.interval,
      {
        text: `The caption of ${mark} dates the paper ${intervalWords(made.interval)}.`,
        sort: 'told',
        references: references('exhibit', [number]),
        source: null,
      },
      `${mark} is of another day`,
    )
  })

/** Claims of one day are one row: the advertisement they stand in. */
function claims(view: RecordView): readonly Partial<DatedThings>[] {
  const byDay = groupedBy(
    view.claims.filter(({ on }) => on !== null),
    ({ on }) => on ?? '',
  )
  return [...byDay].map(([day, same]) => {
    const marks = same.map(({ number }) => rowMark('claims', number))
    const label = marks.length === 1 ? `Claim ${marks[0]}` : `Claims ${marks[0]} to ${marks.at(-1)}`
    return thing(
      { id: `claim:${day}`, kind: 'claim', label, asRead: '', state: '' },
      { from: day, to: day },
      {
        text: `Made on ${dayWords(day)}: ${same.map(({ words }) => `“${shortened(words, 40)}”`).join(', ')}.`,
        sort: 'told',
        references: references(
          'claim',
          same.map(({ number }) => number),
        ),
        source: null,
      },
      'the day of the claims is wrong',
    )
  })
}

const visits = (view: RecordView) =>
  view.visits.map(({ number, beganAt, place, odometer }) => {
    const day = beganAt.slice(0, 10)
    return thing(
      { id: `visit:${number}`, kind: 'visit', label: `Visit ${rowMark('visits', number)}`, asRead: '', state: '' },
      { from: day, to: day },
      {
        text: `Seen on ${dayWords(day)}${place === '' ? '' : `, ${shortened(place, 60)}`}${odometer === '' ? '' : `; odometer ${odometer}`}.`,
        sort: 'seen',
        references: [],
        source: null,
      },
      'the day of the visit is wrong',
    )
  })

const works = (view: RecordView) =>
  view.corrections.flatMap(({ number, what, doneOn }) => {
    if (doneOn === null) return []
    const mark = rowMark('corrections', number)
    return thing(
      { id: `work:${number}`, kind: 'work', label: `${mark} ${shortened(what, LABEL)}`, asRead: '', state: 'done' },
      { from: doneOn, to: doneOn },
      {
        text: `Done on ${dayWords(doneOn)}.`,
        sort: 'told',
        references: references('correction', [number]),
        source: null,
      },
      `the day of ${mark} is wrong`,
    )
  })
