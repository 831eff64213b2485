import type { Correction } from '../../shared-types/correction.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { NumberedRegister, RecordView } from '../../shared-types/record.ts'
import { rowMark } from './row-marks.ts'

interface Citation {
  /** The citing row as printed: "F 3", "part wheels". */
  readonly from: string
  readonly register: NumberedRegister
  readonly number: number
}

const every = (from: string, register: NumberedRegister, numbers: readonly number[]): readonly Citation[] =>
  numbers.map((number) => ({ from, register, number }))
const maybe = (from: string, register: NumberedRegister, number: number | null): readonly Citation[] =>
  number === null ? [] : [{ from, register, number }]

const spotsCited = ({ coating }: Correction): readonly number[] =>
  coating === null ? [] : [...coating.before, ...coating.after].map(({ number }) => number)

/** Every reference from one row of the record to another. */
function citations(now: RecordView): readonly Citation[] {
  return [
    ...now.carNumbers.flatMap((row) => every(rowMark('carNumbers', row.number), 'exhibits', row.exhibits)),
    ...now.findings.flatMap((row) => every(rowMark('findings', row.number), 'exhibits', row.exhibits)),
    ...now.spots.flatMap((row) => [
      ...every(rowMark('spots', row.number), 'exhibits', row.exhibits),
      ...maybe(rowMark('spots', row.number), 'gauges', row.gauge),
    ]),
    ...now.gaugeChecks.flatMap((row) => maybe(rowMark('gaugeChecks', row.number), 'gauges', row.gauge)),
    ...now.parts.flatMap((row) => every(`part ${row.partId}`, 'exhibits', row.exhibits)),
    ...now.claims.flatMap((row) => [
      ...every(rowMark('claims', row.number), 'findings', row.findings),
      ...every(rowMark('claims', row.number), 'exhibits', row.exhibits),
      ...maybe(rowMark('claims', row.number), 'claims', row.repeats),
    ]),
    ...now.observations.flatMap((row) => every(`the observation of ${row.tell}`, 'exhibits', row.exhibits)),
    ...now.exhibits.flatMap((row) =>
      maybe(rowMark('exhibits', row.number), 'exhibits', row.picked?.photograph ?? null),
    ),
    ...now.corrections.flatMap((row) => [
      ...every(rowMark('corrections', row.number), 'findings', [...row.findings, ...row.findingsAfter]),
      ...every(rowMark('corrections', row.number), 'exhibits', [...row.exhibitsBefore, ...row.exhibitsAfter]),
      ...every(rowMark('corrections', row.number), 'spots', spotsCited(row)),
    ]),
  ]
}

/** Marks of the rows that cite a numbered row, each once. */
export function citedBy(now: RecordView, register: NumberedRegister, number: number): readonly string[] {
  const citing = citations(now).filter((citation) => citation.register === register && citation.number === number)
  return [...new Set(citing.map((citation) => citation.from))]
}

const nouns = { exhibits: 'exhibit', findings: 'finding', gauges: 'gauge', claims: 'claim' } as const

/** Throws `not-found`, with the field, when one of the cited numbers is not in the record. */
export function requireCited(
  now: RecordView,
  register: keyof typeof nouns,
  numbers: readonly number[],
  field: string,
): void {
  const rows: readonly { readonly number: number }[] = now[register]
  const missing = numbers.find((number) => !rows.some((row) => row.number === number))
  if (missing === undefined) return
  const message = `There is no ${nouns[register]} ${rowMark(register, missing)} in this record. Choose one that is listed, or add it first.`
  throw new ProblemError('not-found', message, { field })
}
