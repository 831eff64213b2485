import type { Claim } from '../../../shared-types/claim.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { dayNumber } from '../../analysis/dating/calendar.ts'
import { intervalWords, type OpenInterval } from '../../analysis/dating/interval-words.ts'
import { rowMark, shortened } from '../row-marks.ts'
import { leadWords, partWords } from './dated-parts.ts'
import { BUILT, type DatedThings, givenUp, type PartLead, references } from './dated-things.ts'

type Assertion = Claim['asserts'][number]

/**
 * What claims say of time, in the terms of the sheets: a day of building, or that parts a donor could have brought came
 * with the car. They are put to the test and narrow nothing. Parts that travel together count once, by the first of them
 * in the order of the sheet's tells.
 */
export function claimsOnTrial(
  view: RecordView,
  sheets: readonly ReferenceSheet[],
  leads: readonly PartLead[],
): readonly Partial<DatedThings>[] {
  return view.claims.flatMap((claim) =>
    claim.asserts.flatMap((asserted) => {
      const sheet = sheets.find(({ sheetId }) => sheetId === asserted.sheetId)
      if (sheet === undefined) return []
      return [...bornWith(claim, asserted, sheet, leads, view), ...builtThen(claim, asserted, sheet)]
    }),
  )
}

/** The value of a donor that brought nothing: every part of its group came with the car. */
const NO_DONOR = 'none'

function bornWith(
  claim: Claim,
  { variable, values }: Assertion,
  sheet: ReferenceSheet,
  leads: readonly PartLead[],
  view: RecordView,
): readonly Partial<DatedThings>[] {
  if (!sheet.donors.some(({ id }) => id === variable) || values.some((value) => value !== NO_DONOR)) return []
  const group = sheet.tells
    .filter(({ travelsWith }) => travelsWith === variable || travelsWith === `${sheet.sheetId}/${variable}`)
    .flatMap(({ where }) => where.parts)
  const lead = group.flatMap((part) => leads.find(({ partId }) => partId === part) ?? [])[0]
  if (lead === undefined) return []
  const mark = rowMark('claims', claim.number)
  const name = partWords(lead.partId, view)
  return [
    {
      rules: [
        {
          id: `claimed ${claim.number} ${variable}`,
          before: lead.event,
          after: BUILT,
          minDays: lead.minDays,
          maxDays: lead.maxDays,
          step: {
            text: `“${shortened(claim.words, 80)}” (${mark}): then the ${name.toLowerCase()} is dated ${leadWords(lead)}.`,
            sort: 'told',
            references: references('claim', [claim.number]),
            source: lead.source,
          },
          ifNot: `${mark} does not hold: the ${name.toLowerCase()} was not on the car when it was built`,
          givenUp: givenUp.supposedByClaim,
          onTrial: true,
        },
      ],
    },
  ]
}

function builtThen(
  claim: Claim,
  { variable, values }: Assertion,
  sheet: ReferenceSheet,
): readonly Partial<DatedThings>[] {
  const definition = sheet.variables.find(({ id, kind }) => id === variable && kind === 'dates')
  if (definition === undefined) return []
  const named = new Set(values.flatMap((value) => definition.groups.find(({ id }) => id === value)?.values ?? [value]))
  const readings = joined(definition.values.filter(({ id }) => named.has(id)))
  if (readings.length === 0) return []
  const mark = rowMark('claims', claim.number)
  return [
    {
      facts: [
        {
          id: `claimed ${claim.number} built`,
          event: BUILT,
          readings,
          step: {
            text: `“${shortened(claim.words, 80)}” (${mark}): then the car was built ${readings.map(intervalWords).join(', or ')}.`,
            sort: 'told',
            references: references('claim', [claim.number]),
            source: null,
          },
          ifNot: `${mark} does not hold`,
          givenUp: givenUp.claimedDay,
          onTrial: true,
        },
      ],
    },
  ]
}

/** Stretches of days that follow one another as one. */
function joined(values: readonly OpenInterval[]): readonly OpenInterval[] {
  const runs: OpenInterval[] = []
  for (const { from, to } of values) {
    const last = runs.at(-1)
    if (last?.to != null && from !== null && dayNumber(from) - dayNumber(last.to) <= 1)
      runs[runs.length - 1] = { from: last.from, to }
    else runs.push({ from, to })
  }
  return runs
}
