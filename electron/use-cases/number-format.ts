import type { CarNumber, Particulars } from '../../shared-types/car.ts'
import type { NumberChecked, NumberFormat } from '../../shared-types/number-format.ts'
import type { RecordView } from '../../shared-types/record.ts'
import {
  checkIdentificationNumber,
  FIRST_MODEL_YEAR,
  plainIdentificationNumber,
} from '../analysis/dating/identification-number.ts'
import { dayWords } from '../analysis/dating/interval-words.ts'
import type { NumberQuestion } from '../analysis/dating/model-year-code.ts'
import type { UseCases } from './program.ts'

const LENGTH = 17
/** Completions given with a record; the computation alone gives more. */
const MOST_COMPLETIONS = 24

/** Words for a market that say nothing of the country. */
const openMarkets = /^(not known|unknown|home|home market|domestic|export|north america|america)?$/i

/** Market of first sale as the rules tell markets apart; words that name no country leave it open. */
function marketOf({ marketOfFirstSale }: Particulars): NumberQuestion['market'] {
  const words = marketOfFirstSale.trim()
  if (/\b(united states|u\.?s\.?a)\b/i.test(words) || /^u\.?s\.?$/i.test(words)) return 'United States'
  if (/\bcanada\b/i.test(words)) return 'Canada'
  return openMarkets.test(words) ? 'not known' : 'elsewhere'
}

/** What a body weighs is not on record: a car's is within the light class by common practice, a load carrier's may not be. */
const vehicleOf = ({ body }: Particulars): NumberQuestion['vehicle'] =>
  body === 'van' || body === 'pickup' ? 'not known' : 'car or light vehicle up to 4536 kg'

const yearOf = (day: string): number => Number(day.slice(0, 4))

/** A model year may take up to 24 months of making (NHTSA interpretation of 2005): the car is of its own year, or one beside. */
const modelYearsOf = ({ builtFrom, builtTo }: Particulars) => ({
  modelYearFrom: builtFrom === null ? null : yearOf(builtFrom) - 1,
  modelYearTo: builtTo === null ? null : yearOf(builtTo) + 1,
})

function appliesTo(particulars: Particulars): string {
  const { builtFrom, builtTo } = particulars
  const { modelYearFrom, modelYearTo } = modelYearsOf(particulars)
  const asked = `The format of 17 characters is asked for from model year ${FIRST_MODEL_YEAR} (43 FR 36448; 49 CFR part 565)`
  if (builtTo !== null && (modelYearTo ?? FIRST_MODEL_YEAR) < FIRST_MODEL_YEAR)
    return `${asked}: it does not apply to a car built by ${dayWords(builtTo)}.`
  if (builtFrom !== null && (modelYearFrom ?? 0) >= FIRST_MODEL_YEAR)
    return `${asked}: it concerns a car built from ${dayWords(builtFrom)} on.`
  return `${asked}: whether it concerns this car is open until its build interval says so.`
}

/** Each number of 17 characters, as read and on paper, once; one that cannot be read in places has all its completions. */
export function numberFormatOf({ carNumbers, particulars }: RecordView): NumberFormat {
  const found = new Map<string, { text: string; from: NumberChecked['from']; rows: number[] }>()
  const take = (row: CarNumber, written: string, from: NumberChecked['from']) => {
    const text = plainIdentificationNumber(written)
    if (text.length !== LENGTH) return
    const known = found.get(text)
    if (known === undefined) found.set(text, { text, from, rows: [row.number] })
    else if (!known.rows.includes(row.number)) known.rows.push(row.number)
  }
  for (const row of carNumbers) take(row, row.asRead, 'as read')
  for (const row of carNumbers) take(row, row.onPaper, 'on paper')
  const question = { market: marketOf(particulars), vehicle: vehicleOf(particulars), ...modelYearsOf(particulars) }
  return {
    applies: appliesTo(particulars),
    numbers: [...found.values()].map(({ text, from, rows }): NumberChecked => {
      const {
        normalised: _,
        bounded: __,
        ...answer
      } = checkIdentificationNumber({
        ...question,
        asRead: text,
        maxCompletions: MOST_COMPLETIONS,
      })
      return { rows, text, from, ...answer }
    }),
  }
}

export const numberFormatUseCases: Pick<UseCases, 'numbers.format'> = {
  'numbers.format': async (program) => numberFormatOf(program.record().view()),
}
