import { measuredField } from '../../../shared-types/field-units.ts'
import type { JournalEntry, RegisterName } from '../../../shared-types/record.ts'
import { registerLetters } from '../../../shared-types/record.ts'
import type { ShownUnits } from '../../../shared-types/units.ts'
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
export function changesSince(
  entries: readonly JournalEntry[],
  nameOfPanel: (id: string) => string,
  shownIn: ShownUnits,
): string[] {
  const net = new Map<string, NetChange>()
  for (const entry of entries) {
    for (const { register, key, before, after } of entry.changes) {
      if (register === 'editions') continue
      const known = net.get(`${register} ${key}`)
      if (known === undefined) net.set(`${register} ${key}`, { register, key, before, after })
      else known.after = after
    }
  }
  return [...net.values()].flatMap((change) => sentence(change, nameOfPanel, shownIn))
}

function sentence(
  { register, key, before, after }: NetChange,
  nameOfPanel: (id: string) => string,
  shownIn: ShownUnits,
): string[] {
  if (JSON.stringify(before) === JSON.stringify(after)) return []
  const letter = register in registerLetters ? registerLetters[register as keyof typeof registerLetters] : null
  const single = register === 'particulars' || register === 'commission'
  const own = single
    ? ''
    : ` ${letter !== null ? numbered(letter, Number(key)) : register === 'panels' ? nameOfPanel(key) : key}`
  const subject = `${registerNames[register]}${own}`
  if (before === null || before === undefined) return [`${subject}: entered.`]
  if (after === null || after === undefined) return [`${subject}: withdrawn.`]
  const fields = differences(before as Record<string, unknown>, after as Record<string, unknown>, shownIn)
  return [`${subject}: ${fields.join('; ')}.`]
}

const MOST_SHOWN = 80

function differences(
  before: Readonly<Record<string, unknown>>,
  after: Readonly<Record<string, unknown>>,
  shownIn: ShownUnits,
): string[] {
  const names = [...new Set([...Object.keys(before), ...Object.keys(after)])].filter((name) => name !== 'changedAt')
  return names
    .filter((name) => JSON.stringify(before[name]) !== JSON.stringify(after[name]))
    .map((name) => {
      const measured = measuredField(name, shownIn)
      const words = measured === null ? apart(name) : `${apart(measured.stem)}, ${measured.unit}`
      const told = (value: unknown) => shown(value, measured?.figure ?? String)
      return `${words} ${told(before[name])} → ${told(after[name])}`
    })
}

/** `sizeUncertainty` as "size uncertainty". */
const apart = (name: string): string =>
  name.replace(/([a-z])([A-Z])/g, (_, low: string, high: string) => `${low} ${high.toLowerCase()}`)

function shown(value: unknown, figure: (value: number) => string): string {
  if (value === null || value === undefined || value === '') return 'nothing'
  if (typeof value === 'string') return `“${value.length > MOST_SHOWN ? `${value.slice(0, MOST_SHOWN)} …` : value}”`
  if (typeof value === 'number') return figure(value)
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (Array.isArray(value) && value.every((entry) => typeof entry === 'number')) {
    return value.length === 0 ? 'nothing' : value.map(figure).join(', ')
  }
  return 'other values'
}
