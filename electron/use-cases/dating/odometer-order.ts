import type { Because } from '../../../shared-types/judgement.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { DateConflict } from '../../../shared-types/time-line-view.ts'
import { datesOfPaper, distanceInWords } from '../../analysis/dating/dates-in-words.ts'
import { intervalWords } from '../../analysis/dating/interval-words.ts'
import { odometerOrder } from '../../analysis/dating/odometer.ts'
import { rowMark } from '../row-marks.ts'
import { COMMON_PRACTICE, references } from './dated-things.ts'

type Reading = Parameters<typeof odometerOrder>[0]['readings'][number]
interface Placed {
  readonly reading: Reading
  readonly row: string
  readonly references: Because['references']
}

/** Readings of the odometer: at visits, and in the captions of dated papers. */
function readingsOf(view: RecordView): readonly Placed[] {
  const atVisits = view.visits.flatMap(({ number, beganAt, odometer }): Placed[] => {
    const distance = distanceInWords(odometer)
    const day = beganAt.slice(0, 10)
    if (distance === null) return []
    const label = `Visit ${rowMark('visits', number)}`
    return [
      {
        reading: { id: label, when: { from: day, to: day }, ...distance, label },
        row: `visit:${number}`,
        references: [],
      },
    ]
  })
  const onPapers = view.exhibits.flatMap(({ number, kind, caption }): Placed[] => {
    const made = kind === 'document' ? datesOfPaper(caption).made : null
    const distance = distanceInWords(caption)
    if (made === null || distance === null) return []
    const label = rowMark('exhibits', number)
    return [
      {
        reading: { id: label, when: made.interval, ...distance, label },
        row: `paper:E${number}`,
        references: references('exhibit', [number]),
      },
    ]
  })
  return [...onPapers, ...atVisits]
}

/** The odometer in order of time: a sentence, and each pair that runs back as a conflict of its own. */
export function odometerInWords(
  view: RecordView,
  firstNumber: number,
): { readonly words: string; readonly conflicts: readonly DateConflict[] } {
  const placed = readingsOf(view)
  if (placed.length === 0) return { words: 'No odometer reading with a day is in the record.', conflicts: [] }
  if (placed.length === 1)
    return { words: 'One odometer reading with a day: nothing to compare it with.', conflicts: [] }
  // How many figures the counter has is not in the record, so rolling over stays open.
  const order = odometerOrder({ readings: placed.map(({ reading }) => reading), figures: null })
  const find = (id: string) => placed.find(({ reading }) => reading.id === id)
  const conflicts = order.runsBack.flatMap(({ earlier, later, byDistance, unit, explanations }, at): DateConflict[] => {
    const pair = [find(earlier), find(later)].filter((each) => each !== undefined)
    return [
      {
        number: firstNumber + at,
        title: `The odometer runs back by ${Math.round(byDistance)} ${unit === 'mile' ? 'miles' : 'km'}`,
        cannotAllBe: [
          ...pair.map(
            ({ reading, references: cites }): Because => ({
              text: `${reading.label}: ${reading.value} ${reading.unit === 'mile' ? 'miles' : 'km'}, ${intervalWords(reading.when)}.`,
              sort: 'seen',
              references: cites,
              source: null,
            }),
          ),
          { text: 'An odometer does not run back.', sort: 'inferred', references: [], source: COMMON_PRACTICE },
        ],
        by: null,
        alsoAgainst: [],
        travelWithIt: [],
        waysOut: explanations,
        rows: pair.map(({ row }) => row),
      },
    ]
  })
  return { words: `${placed.length} odometer readings with a day. ${order.words}`, conflicts }
}
