import type { IdentityView } from '../../../shared-types/identity-view.ts'
import type { Because } from '../../../shared-types/judgement.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { datesInWords, datesOfPaper, type WrittenDate } from '../../analysis/dating/dates-in-words.ts'
import { intervalWords } from '../../analysis/dating/interval-words.ts'
import { stretchesOf } from '../../analysis/dating/number-stretches.ts'
import { groupedBy } from '../../analysis/statistics/grouped-by.ts'
import { sourceText } from '../../sheets/reference/model-draft.ts'
import { rowMark, shortened } from '../row-marks.ts'
import {
  BUILT,
  COMMON_PRACTICE,
  type DatedFact,
  type DatedThings,
  givenUp,
  REGISTERED,
  references,
} from './dated-things.ts'

/** The building and the first registration, and what of the record says when they were. */
export function carDates(
  view: RecordView,
  sheets: readonly ReferenceSheet[],
  identity: IdentityView | null,
): Partial<DatedThings> {
  const registered = registrations(view)
  const event = (id: string, label: string) => ({ id, kind: 'car' as const, label, asRead: '', state: '' })
  return {
    events: [event(BUILT, 'Car built'), event(REGISTERED, 'First registered')],
    facts: [...inferred(sheets, identity), ...stated(view), ...byNumber(view, sheets), ...registered],
    rules: [
      {
        id: 'built before registered',
        before: BUILT,
        after: REGISTERED,
        minDays: 0,
        maxDays: null,
        step: {
          text: 'A car is built before it is first registered.',
          sort: 'inferred',
          references: [],
          source: COMMON_PRACTICE,
        },
        ifNot: 'the car was registered before it was finished',
        givenUp: givenUp.order,
        onTrial: false,
      },
    ],
  }
}

/** What the reference sheets leave of the day of building, from everything observed: days with nine tenths of the weight. */
function inferred(sheets: readonly ReferenceSheet[], identity: IdentityView | null): readonly DatedFact[] {
  const ofBuilding = new Set(
    sheets.flatMap(({ sheetId, variables }) =>
      variables
        .filter(({ kind, basis }) => kind === 'dates' && (basis === null || basis === 'manufacture'))
        .map(({ id }) => `${sheetId}/${id}`),
    ),
  )
  return (identity?.variables ?? []).flatMap(({ key, name, span }) => {
    if (span === null || !ofBuilding.has(key)) return []
    return [
      {
        id: `inferred ${key}`,
        event: BUILT,
        readings: [span],
        step: {
          text: `${name} ${intervalWords(span)}, with nine tenths of the weight, by what was observed against the reference sheets.`,
          sort: 'computed' as const,
          references: [],
          source: (identity?.sheets ?? []).map(({ title, edition }) => `${title}, edition ${edition}`).join('; '),
        },
        ifNot: 'what was observed on the car is not of this car, or lies in the tenth left out',
        givenUp: givenUp.window,
        onTrial: false,
      },
    ]
  })
}

function stated({ particulars }: RecordView): readonly DatedFact[] {
  const { builtFrom: from, builtTo: to, builtGrounds } = particulars
  if (from === null && to === null) return []
  const cited = [...builtGrounds.matchAll(/\bE\s?([0-9]+)/g)].map(([, number = '']) => number)
  return [
    {
      id: 'particulars',
      event: BUILT,
      readings: [{ from, to }],
      step: {
        text: `The particulars give ${intervalWords({ from, to })}.${builtGrounds === '' ? ' No ground is stated.' : ` ${shortened(builtGrounds, 160)}`}`,
        sort: 'inferred',
        references: references('exhibit', [...new Set(cited)]),
        source: null,
      },
      ifNot: 'the interval stated under the particulars is wrong',
      givenUp: givenUp.particulars,
      onTrial: false,
    },
  ]
}

/** Numbers the car was built with, where a sheet says when such numbers were given out. */
function byNumber(view: RecordView, sheets: readonly ReferenceSheet[]): readonly DatedFact[] {
  return sheets.flatMap((sheet) =>
    sheet.numbers.flatMap((number) => {
      const entry = view.parts.find(({ partId, state }) => partId === number.part && state === 'factory fitted')
      const readings = entry === undefined ? [] : stretchesOf(entry.numberAsRead, number)
      if (entry === undefined || readings.length === 0) return []
      const numbered = view.carNumbers.filter(({ asRead }) => asRead === entry.numberAsRead)
      return [
        {
          id: `number ${sheet.sheetId}/${number.id}`,
          event: BUILT,
          readings,
          step: {
            text: `${number.name} ${entry.numberAsRead} was given out ${readings.map(intervalWords).join(', or ')}.`,
            sort: entry.learned,
            references: [
              ...references('part', [entry.partId]),
              ...references(
                'carNumber',
                numbered.map((row) => row.number),
              ),
              ...references('exhibit', entry.exhibits),
            ],
            source: sourceText(sheet.sources.find(({ id }) => id === number.source) ?? null),
          },
          ifNot: `${number.name.toLowerCase()} ${entry.numberAsRead} is not the one this car was built with`,
          givenUp: givenUp.number,
          onTrial: false,
        },
      ]
    }),
  )
}

/** Every day of first registration the record speaks of; the same day from several papers is one fact with all of them. */
function registrations(view: RecordView): readonly DatedFact[] {
  const said: { readonly date: WrittenDate; readonly cites: Because['references'] }[] = []
  const add = (date: WrittenDate | null | undefined, cites: Because['references']) => {
    if (date != null) said.push({ date, cites })
  }
  for (const row of view.exhibits) add(datesOfPaper(row.caption).firstRegistered, references('exhibit', [row.number]))
  for (const row of view.carNumbers) {
    const cites = [...references('carNumber', [row.number]), ...references('exhibit', row.exhibits)]
    add(datesOfPaper(row.note).firstRegistered, cites)
    if (/first regist/i.test(row.kind)) add(datesInWords(`${row.asRead} ${row.onPaper}`)[0], cites)
  }
  add(datesOfPaper(view.particulars.builtGrounds).firstRegistered, [])
  add(datesOfPaper(view.particulars.history).firstRegistered, [])
  const byDays = groupedBy(said, ({ date }) => `${date.interval.from} ${date.interval.to}`)
  return [...byDays].flatMap(([days, same]) => {
    const [first] = same
    if (first === undefined) return []
    const cites = new Map(same.flatMap(({ cites }) => cites).map((each) => [`${each.kind} ${each.key}`, each]))
    const words = intervalWords(first.date.interval)
    return [
      {
        id: `registered ${days}`,
        event: REGISTERED,
        readings: [first.date.interval],
        step: {
          text: `First registered ${words}${cites.size === 0 ? ', as the particulars say' : ''}.`,
          sort: 'told' as const,
          references: [...cites.values()],
          source: null,
        },
        ifNot: `${words} is not the day this car was first registered${cites.size === 0 ? '' : `, whatever ${[...cites.values()].map(markOf).join(' and ')} says`}`,
        givenUp: givenUp.registration,
        onTrial: false,
      },
    ]
  })
}

const markOf = ({ kind, key }: Because['references'][number]): string =>
  rowMark(kind === 'carNumber' ? 'carNumbers' : 'exhibits', Number(key))
