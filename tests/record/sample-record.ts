import { randomUUID } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Command, CommandOutcome, Draft } from '../../electron/record/car-record.ts'
import type { Beginning } from '../../electron/record/open-record.ts'
import type { Commission, Particulars, VisitDraft } from '../../shared-types/car.ts'
import type { FindingDraft } from '../../shared-types/finding.ts'

export const AT = '2026-05-14T09:42:07.000Z'
export const WHO = 'Ada Quill'

const particulars: Particulars = {
  title: 'Sedge coupé, 1960',
  maker: 'Brackwater Motors of Nethercott',
  line: 'Sedge',
  body: 'coupe',
  steering: 'right',
  marketOfFirstSale: 'home',
  colourNow: 'green',
  construction: '',
  builtFrom: '1960-01-01',
  builtTo: null,
  builtGrounds: '',
  history: '',
  conditions: ['pillared'],
  dimensions: {},
}

const commission: Commission = {
  recordNumber: 'T-1',
  examiner: WHO,
  examinerRole: '',
  examinerContact: '',
  examinerCompetence: '',
  client: '',
  otherUsers: '',
  notForReliance: '',
  intendedUse: 'purchase',
  question: '',
  titleAsTold: '',
  titleVerified: false,
  effectiveDate: null,
  independence: '',
  helpers: '',
  review: '',
  retentionYears: 10,
  assumptions: '',
  currency: 'GBP',
  names: 'uk',
  lengthUnit: 'mm',
  coatingUnit: 'µm',
  level: 'with openings',
  positionsInReports: false,
}

const visit: VisitDraft = {
  beganAt: AT,
  endedAt: null,
  place: 'a barn near Nethercott',
  light: 'daylight',
  weather: '',
  surface: 'dry',
  support: 'on the ground',
  temperatureC: 11.5,
  present: '',
  odometer: '',
  stateOnArrival: '',
}

export const beginning: Beginning = {
  commandId: '5b7d2c1e-90a4-4f36-8d1b-6c2e7a3f9b04',
  particulars,
  commission,
  visit,
  who: WHO,
  at: AT,
}

export const findingDraft: FindingDraft = {
  panelId: 'front-side.L',
  kind: 'filler',
  layer: 'skin',
  extent: { view: 'left', shape: 'area', points: [{ u: 1, v: 2.5 }] },
  lengthMm: 120,
  widthMm: null,
  depthMm: null,
  sizeUncertaintyMm: 2,
  severity: 'marked',
  urgency: 'later',
  action: 'watch',
  learned: 'measured',
  learnedFrom: '',
  grade: { standard: 'ISO 4628-2', quantity: 2, size: 3 },
  suspectedCause: '',
  dangerous: false,
  exhibits: [1, 4],
  note: 'Magnet in cloth holds only at the edge.',
}

/** A command of the given name; ids are fresh unless one is handed in. */
export function command(
  name: string,
  input: unknown,
  decide: (draft: Draft) => Partial<CommandOutcome> & Pick<CommandOutcome, 'changes'>,
  commandId: string = randomUUID(),
): Command {
  const whole = (draft: Draft): CommandOutcome => ({ label: name, number: null, undoable: true, ...decide(draft) })
  return { commandId, name, who: WHO, at: AT, input, decide: whole }
}

export const addFinding = (note: string, commandId?: string): Command =>
  command(
    'finding.add',
    { draft: { ...findingDraft, note } },
    ({ take }) => {
      const number = take('findings')
      const after = { ...findingDraft, note, number }
      return {
        changes: [{ register: 'findings', key: String(number), after }],
        number,
        label: `Finding F ${number} added`,
      }
    },
    commandId,
  )

export const amendFinding = (number: number, note: string): Command =>
  command('finding.amend', { number, note }, () => ({
    changes: [{ register: 'findings', key: String(number), after: { ...findingDraft, note, number } }],
    label: `Finding F ${number} amended`,
  }))

export const withdrawFinding = (number: number): Command =>
  command('finding.withdraw', { number }, () => ({
    changes: [{ register: 'findings', key: String(number), after: null }],
    label: `Finding F ${number} withdrawn`,
  }))

/** Sender of an undo or a redo. */
export const sender = () => ({ commandId: randomUUID(), who: WHO, at: AT })

/** A folder of its own, and the act that takes it away. */
export function scratchFolder(): { readonly folder: string; readonly file: (name: string) => string; remove(): void } {
  const folder = mkdtempSync(join(tmpdir(), 'witnessmark-record-'))
  return { folder, file: (name) => join(folder, name), remove: () => rmSync(folder, { recursive: true, force: true }) }
}
