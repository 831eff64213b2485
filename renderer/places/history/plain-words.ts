import { measuredField, withShownUnit } from '../../../shared-types/field-units.ts'
import { type RegisterName, registerLetters } from '../../../shared-types/record.ts'
import type { ShownUnits } from '../../../shared-types/units.ts'
import { timeText } from '../identity/day-text.ts'

/** What one row of each register is called in a sentence. */
const rowNames: { readonly [R in RegisterName]: string } = {
  particulars: 'particulars of the car',
  commission: 'commission',
  visits: 'visit',
  consents: 'leave',
  carNumbers: 'number on the car',
  panels: 'panel',
  findings: 'finding',
  spots: 'spot',
  gauges: 'gauge',
  gaugeChecks: 'gauge check',
  parts: 'part',
  weights: 'weight of',
  claims: 'claim',
  sheets: 'reference sheet',
  observations: 'observation of',
  corrections: 'correction',
  exhibits: 'exhibit',
  editions: 'edition',
}

/** "finding F 3", "panel roof-skin", "commission". */
export function rowName(register: RegisterName, key: string): string {
  const name = rowNames[register]
  if (key === 'the') return name
  const letter = (registerLetters as { readonly [R in RegisterName]?: string })[register]
  return letter === undefined ? `${name} ${key}` : `${name} ${letter} ${key}`
}

/** Fields whose name alone would not tell what is meant. */
const fieldNames: Readonly<Record<string, string>> = {
  on: 'on the day',
  by: 'by whom',
  at: 'at',
  learned: 'how learned',
  learnedFrom: 'learned from',
  sha256: 'SHA-256',
  byteLength: 'size, bytes',
  repeats: 'repeats claim',
  temperatureC: 'temperature, °C',
  builtGrounds: 'grounds of the build interval',
}

const units: readonly (readonly [RegExp, string])[] = [
  [/Px$/u, 'pixels'],
  [/Percent$/u, '%'],
  [/Degrees$/u, 'degrees'],
]

const apart = (name: string): string => name.replace(/([a-z0-9])([A-Z])/gu, '$1 $2').toLowerCase()

/** A field name in words: `sizeUncertaintyMm` becomes "size uncertainty, mm", or "in" in a record of inches. */
export function fieldName(field: string, shownIn: ShownUnits): string {
  const measured = measuredField(field, shownIn)
  if (measured !== null) return measured.stem === '' ? measured.unit : `${apart(measured.stem)}, ${measured.unit}`
  const known = fieldNames[field]
  if (known !== undefined) return known
  const unit = units.find(([ending]) => ending.test(field))
  const stem = unit === undefined ? field : field.replace(unit[0], '')
  return unit === undefined ? apart(stem) : `${apart(stem)}, ${unit[1]}`
}

const instantText = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/u

const citedBy: Readonly<Record<string, string>> = {
  exhibits: 'E',
  exhibitsBefore: 'E',
  exhibitsAfter: 'E',
  findings: 'F',
  findingsAfter: 'F',
  gauge: 'G',
  repeats: 'C',
}

/** A value in words. Nothing is ever left blank: null is "not stated", an empty text "blank". */
export function valueWords(value: unknown, field: string, shownIn: ShownUnits): string {
  if (value === null || value === undefined) return 'not stated'
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (value === '') return 'blank'
  if (typeof value === 'number') {
    const letter = citedBy[field]
    if (letter !== undefined) return `${letter} ${value}`
    return measuredField(field, shownIn)?.figure(value) ?? String(value)
  }
  if (Array.isArray(value)) {
    return value.length === 0 ? 'none' : value.map((item) => valueWords(item, field, shownIn)).join(', ')
  }
  if (typeof value === 'object') {
    const said = Object.entries(withShownUnit({ ...value }, shownIn)).map(
      ([name, inner]) => `${fieldName(name, shownIn)} ${valueWords(inner, name, shownIn)}`,
    )
    return said.length === 0 ? 'none' : said.join(', ')
  }
  return typeof value === 'string' && instantText.test(value) ? timeText(value) : String(value)
}

export interface FieldDifference {
  readonly field: string
  readonly before: string
  readonly after: string
}

const fieldsOf = (row: unknown): Readonly<Record<string, unknown>> =>
  typeof row === 'object' && row !== null ? (row as Record<string, unknown>) : {}

const saysNothing = (value: unknown): boolean =>
  value === null ||
  value === undefined ||
  value === '' ||
  (typeof value === 'object' && Object.keys(value).length === 0)

/** Fields that differ between two states of a row, in words; a row that was added or taken out lists what it says. */
export function differencesOf(before: unknown, after: unknown, shownIn: ShownUnits): readonly FieldDifference[] {
  const was = fieldsOf(before)
  const is = fieldsOf(after)
  const fields = [...new Set([...Object.keys(was), ...Object.keys(is)])]
  return fields.flatMap((field) => {
    if (JSON.stringify(was[field]) === JSON.stringify(is[field])) return []
    if ((before === null && saysNothing(is[field])) || (after === null && saysNothing(was[field]))) return []
    return [
      {
        field: fieldName(field, shownIn),
        before: before === null ? 'not there' : valueWords(was[field], field, shownIn),
        after: after === null ? 'gone' : valueWords(is[field], field, shownIn),
      },
    ]
  })
}
