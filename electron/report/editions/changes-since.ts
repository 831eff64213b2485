import type { JournalEntry, RegisterName } from '../../../shared-types/record.ts'
import { registerLetters } from '../../../shared-types/record.ts'
import { numbered } from '../wording/references.ts'

const registerNames: Readonly<Record<RegisterName, string>> = {
  particulars: 'Particulars of the car',
  commission: 'Commission',
  visits: 'Examination',
  consents: 'Leave for',
  carNumbers: 'Number',
  panels: 'Panel',
  findings: 'Finding',
  spots: 'Spot',
  gauges: 'Gauge',
  gaugeChecks: 'Check of a gauge',
  parts: 'Part',
  weights: 'Weight of',
  claims: 'Claim',
  sheets: 'Reference sheet',
  observations: 'Observation of',
  corrections: 'Correction',
  exhibits: 'Exhibit',
  editions: 'Edition',
}

interface NetChange {
  readonly register: RegisterName
  readonly key: string
  readonly before: unknown
  after: unknown
}

/**
 * What is different now from the journal entry an edition was made from, one sentence for each row of the record that
 * differs; what was changed and changed back is left out. `entries` are those since, oldest first.
 */
export function changesSince(entries: readonly JournalEntry[], nameOfPanel: (id: string) => string): string[] {
  const net = new Map<string, NetChange>()
  for (const entry of entries) {
    for (const { register, key, before, after } of entry.changes) {
      if (register === 'editions') continue
      const known = net.get(`${register} ${key}`)
      if (known === undefined) net.set(`${register} ${key}`, { register, key, before, after })
      else known.after = after
    }
  }
  return [...net.values()].flatMap((change) => sentence(change, nameOfPanel))
}

function sentence({ register, key, before, after }: NetChange, nameOfPanel: (id: string) => string): string[] {
  if (JSON.stringify(before) === JSON.stringify(after)) return []
  const letter = register in registerLetters ? registerLetters[register as keyof typeof registerLetters] : null
  const single = register === 'particulars' || register === 'commission'
  const own = single
    ? ''
    : ` ${letter !== null ? numbered(letter, Number(key)) : register === 'panels' ? nameOfPanel(key) : key}`
  const subject = `${registerNames[register]}${own}`
  if (before === null || before === undefined) return [`${subject}: entered.`]
  if (after === null || after === undefined) return [`${subject}: withdrawn.`]
  const fields = differences(before as Record<string, unknown>, after as Record<string, unknown>)
  return [`${subject}: ${fields.join('; ')}.`]
}

const MOST_SHOWN = 80

function differences(before: Readonly<Record<string, unknown>>, after: Readonly<Record<string, unknown>>): string[] {
  const names = [...new Set([...Object.keys(before), ...Object.keys(after)])].filter((name) => name !== 'changedAt')
  return names
    .filter((name) => JSON.stringify(before[name]) !== JSON.stringify(after[name]))
    .map((name) => `${words(name)} ${shown(before[name])} → ${shown(after[name])}`)
}

/** `sizeUncertaintyMm` as "size uncertainty, mm". */
const words = (name: string): string =>
  name
    .replace(/Mm$/, ', mm')
    .replace(/Um$/, ', µm')
    .replace(/([a-z])([A-Z])/g, (_, low: string, high: string) => `${low} ${high.toLowerCase()}`)

function shown(value: unknown): string {
  if (value === null || value === undefined || value === '') return 'nothing'
  if (typeof value === 'string') return `“${value.length > MOST_SHOWN ? `${value.slice(0, MOST_SHOWN)} …` : value}”`
  if (typeof value === 'number') return String(value)
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (Array.isArray(value) && value.every((entry) => typeof entry === 'number')) {
    return value.length === 0 ? 'nothing' : value.join(', ')
  }
  return 'other values'
}
