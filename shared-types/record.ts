import type { CarNumber, Commission, Consent, Particulars, Visit } from './car.ts'
import type { Claim } from './claim.ts'
import type { Correction } from './correction.ts'
import type { Edition } from './edition.ts'
import type { Exhibit } from './exhibit.ts'
import type { Finding } from './finding.ts'
import type { Observation } from './observation.ts'
import type { OwnWeight } from './own-weight.ts'
import type { PanelState } from './panel.ts'
import type { PartEntry } from './part.ts'
import type { Gauge, GaugeCheck, Spot } from './reading.ts'
import type { SheetCopy } from './sheet-copy.ts'

/** The row type of each register of a car record. */
export interface RegisterRows {
  particulars: Particulars
  commission: Commission
  visits: Visit
  consents: Consent
  carNumbers: CarNumber
  panels: PanelState
  findings: Finding
  spots: Spot
  gauges: Gauge
  gaugeChecks: GaugeCheck
  parts: PartEntry
  weights: OwnWeight
  claims: Claim
  sheets: SheetCopy
  observations: Observation
  corrections: Correction
  exhibits: Exhibit
  editions: Edition
}
export type RegisterName = keyof RegisterRows

/** Which property of a row is its key; `null` where the register holds exactly one row, keyed `the`. */
export const registerKeys = {
  particulars: null,
  commission: null,
  visits: 'number',
  consents: 'step',
  carNumbers: 'number',
  panels: 'panelId',
  findings: 'number',
  spots: 'number',
  gauges: 'number',
  gaugeChecks: 'number',
  parts: 'partId',
  weights: 'weighs',
  claims: 'number',
  sheets: 'sheetId',
  observations: 'tell',
  corrections: 'number',
  exhibits: 'number',
  editions: 'number',
} as const satisfies { [R in RegisterName]: keyof RegisterRows[R] | null }

/** Letter printed before a stable number: finding F 3, exhibit E 12. */
export const registerLetters = {
  visits: 'V',
  carNumbers: 'N',
  findings: 'F',
  spots: 'R',
  gauges: 'G',
  gaugeChecks: 'H',
  claims: 'C',
  corrections: 'K',
  exhibits: 'E',
} as const satisfies { [R in RegisterName]?: string }
export type NumberedRegister = keyof typeof registerLetters

/** One row as a command left it; `after` is null when the row is gone. `key` is the row's key as text. */
export type Change = {
  [R in RegisterName]: { readonly register: R; readonly key: string; readonly after: RegisterRows[R] | null }
}[RegisterName]

/** What undo and redo would act on now, as the label of the command; null when there is nothing. */
export interface UndoState {
  readonly undo: string | null
  readonly redo: string | null
}

/** Given only after the change is durable. Sending the same command again returns the same acknowledgement. */
export interface Acknowledgement {
  readonly journalNumber: number
  readonly at: string
  readonly command: string
  /** Number given to a new row of a numbered register. */
  readonly number: number | null
  readonly changes: readonly Change[]
  readonly undoState: UndoState
}

/** Every register of an open record, in key order, without photograph bytes. */
export interface RecordView {
  readonly path: string
  readonly readOnly: boolean
  readonly particulars: Particulars
  readonly commission: Commission
  readonly visits: readonly Visit[]
  readonly consents: readonly Consent[]
  readonly carNumbers: readonly CarNumber[]
  readonly panels: readonly PanelState[]
  readonly findings: readonly Finding[]
  readonly spots: readonly Spot[]
  readonly gauges: readonly Gauge[]
  readonly gaugeChecks: readonly GaugeCheck[]
  readonly parts: readonly PartEntry[]
  /** Weights the user set for the shares of originality. */
  readonly weights: readonly OwnWeight[]
  readonly claims: readonly Claim[]
  readonly sheets: readonly SheetCopy[]
  readonly observations: readonly Observation[]
  readonly corrections: readonly Correction[]
  readonly exhibits: readonly Exhibit[]
  readonly editions: readonly Edition[]
  readonly journalNumber: number
  readonly journalHash: string
  readonly undoState: UndoState
}

/** One row of the journal as the History place shows it. */
export interface JournalEntry {
  readonly number: number
  readonly at: string
  readonly who: string
  readonly command: string
  /** In words: "Finding F 3 added: filler, Left front wing". */
  readonly label: string
  readonly hash: string
  readonly undoes: number | null
  readonly changes: readonly {
    readonly register: RegisterName
    readonly key: string
    readonly before: unknown
    readonly after: unknown
  }[]
}

/** A record file the program knows of. */
export interface KnownRecord {
  readonly path: string
  readonly title: string
  readonly recordNumber: string
  readonly changedAt: string
  readonly missing: boolean
}
