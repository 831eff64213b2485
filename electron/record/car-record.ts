import type { Readable } from 'node:stream'
import type { Acknowledgement, Change, JournalEntry, NumberedRegister, RecordView } from '../../shared-types/record.ts'

/** What a command is about to do to the record, decided inside its transaction. */
export interface Draft {
  /** The registers as they stand, before this command. */
  readonly now: RecordView
  /** Takes the next number of a register; a number is never given twice, also after undo. */
  take(register: NumberedRegister): number
}

export interface CommandOutcome {
  readonly changes: readonly Change[]
  /** In words, for the journal and the undo key: "Finding F 3 added: filler, Left front wing". */
  readonly label: string
  /** Number given to a new row, if any. */
  readonly number: number | null
  /** False for what has gone out into the world (an issued edition) and cannot be taken back. */
  readonly undoable: boolean
}

/** One command: who sends it, what it was told, and how it changes the rows. `decide` is pure and throws `ProblemError` to refuse. */
export interface Command {
  readonly commandId: string
  readonly name: string
  readonly who: string
  /** Time of the command, UTC with milliseconds. */
  readonly at: string
  readonly input: unknown
  decide(draft: Draft): CommandOutcome
}

/** Large byte strings of a record: photographs as imported, renderings, issued reports; kept in 1 MiB chunks under their SHA-256. */
export interface ByteStore {
  /** Stores a stream once; the same bytes stored again cost nothing. */
  put(bytes: Readable): Promise<{ readonly sha256: string; readonly byteLength: number }>
  has(sha256: string): Promise<boolean>
  /** Reads chunk by chunk; throws `not-found`. */
  read(sha256: string): Readable
  /** A rendering made from an original: `thumbnail` or `report`. */
  putRendering(
    original: string,
    kind: RenderingKind,
    bytes: Uint8Array,
    size: { widthPx: number; heightPx: number },
  ): Promise<void>
  rendering(
    original: string,
    kind: RenderingKind,
  ): Promise<{ readonly bytes: Uint8Array; readonly widthPx: number; readonly heightPx: number } | null>
  /** Size of every rendering of a kind, by the SHA-256 of its original, without reading the pictures. */
  renderingSizes(
    kind: RenderingKind,
  ): Promise<ReadonlyMap<string, { readonly widthPx: number; readonly heightPx: number }>>
}
export type RenderingKind = 'thumbnail' | 'report'

/** An open car record. Every method answers only after the change is durable. */
export interface CarRecord {
  readonly path: string
  readonly readOnly: boolean
  /**
   * The registers as they stand; the same object until the next command. A record opened to read shows them as they
   * stood when it was opened, whatever another program writes since.
   */
  view(): RecordView
  commit(command: Command): Promise<Acknowledgement>
  /**
   * Takes back the last command that can be taken back, by a command that does the opposite; `nothing-to-undo` when
   * there is none. What is final (an issued edition) is stepped over; what it changed is not taken back under it.
   */
  undo(command: { readonly commandId: string; readonly who: string; readonly at: string }): Promise<Acknowledgement>
  /** Takes back the last undo, so that the same rows stand again with the same numbers; `nothing-to-undo` when none. */
  redo(command: { readonly commandId: string; readonly who: string; readonly at: string }): Promise<Acknowledgement>
  /** A page of the journal, newest first: rows older than `before`, or the newest when that is null. */
  journal(
    before: number | null,
    limit: number,
  ): Promise<{ readonly entries: readonly JournalEntry[]; readonly more: boolean }>
  /** Recomputes the whole hash chain. */
  verify(): Promise<{ readonly rows: number; readonly sound: boolean; readonly firstBad: number | null }>
  /** Copies the record, side files included, by VACUUM INTO; refuses to overwrite. */
  backup(target: string): Promise<void>
  readonly bytes: ByteStore
  /** Finalises every statement and leaves one file. */
  close(): Promise<void>
}
