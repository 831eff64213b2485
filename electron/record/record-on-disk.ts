import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Acknowledgement, RecordView, UndoState } from '../../shared-types/record.ts'
import { acknowledgement, answerAgain, undoStateAfter } from './acknowledging.ts'
import { RecordBytes } from './byte-store.ts'
import { canonical } from './canonical.ts'
import type { ByteStore, CarRecord, Command } from './car-record.ts'
import { type Connection, StorageFault } from './connection.ts'
import { copyRecord } from './copy-record.ts'
import {
  type JournalContent,
  type JournalRow,
  journalPage,
  REDO,
  rowByCommand,
  rowByNumber,
  seal,
  UNDO,
  verifyChain,
} from './journal.ts'
import { inverse, journalled, stepsOf } from './journalled-changes.ts'
import { type Counters, NumberGiver } from './number-counters.ts'
import type { RecordImage } from './record-image.ts'
import { asProblem, withProblems } from './storage-problems.ts'
import { afterCommand, afterRedo, afterUndo, type Stacks } from './undo-stacks.ts'
import { WriterQueue } from './writer-queue.ts'

/** What an open record stands on; put together by `open-record.ts`. */
export interface Footing {
  readonly path: string
  readonly readOnly: boolean
  readonly writer: Connection | null
  readonly reader: Connection
  readonly image: RecordImage
  readonly counters: Counters
  readonly head: JournalRow
  /** Closes the connections and gives the right to write back. */
  readonly leave: () => Promise<void>
}

type Sender = Pick<Command, 'commandId' | 'who' | 'at'>
/** What a journal row says beside who sent it, and where the stacks stand after it. */
type Deed = Pick<JournalContent, 'changes' | 'label' | 'given' | 'taken' | 'undoes'> & {
  readonly stacks: (number: number) => Stacks
}

/** The car record over its SQLite file. Commands, undo and redo all end in `#once`. */
export class RecordOnDisk implements CarRecord {
  readonly path: string
  readonly readOnly: boolean
  readonly bytes: ByteStore
  readonly #footing: Footing
  readonly #queue: WriterQueue
  #image: RecordImage
  #counters: Counters
  #head: JournalRow
  #view: RecordView
  #closing: Promise<void> | null = null

  private constructor(footing: Footing, undoState: UndoState) {
    this.path = footing.path
    this.readOnly = footing.readOnly
    this.#footing = footing
    this.#queue = new WriterQueue(footing.path, footing.writer)
    this.bytes = new RecordBytes(footing.path, this.#queue, footing.reader)
    this.#image = footing.image
    this.#counters = footing.counters
    this.#head = footing.head
    this.#view = this.#viewWith(undoState)
  }

  static async on(footing: Footing): Promise<RecordOnDisk> {
    return new RecordOnDisk(footing, await undoStateAfter(footing.reader, footing.head.content))
  }

  view(): RecordView {
    return this.#view
  }

  commit(command: Command): Promise<Acknowledgement> {
    return this.#once(command, command.name, command.input, async () => {
      const numbers = new NumberGiver(this.#counters)
      const outcome = command.decide({ now: this.#view, take: (register) => numbers.take(register) })
      return {
        changes: journalled(this.#image, outcome.changes),
        label: outcome.label,
        given: outcome.number,
        taken: numbers.taken(),
        undoes: null,
        stacks: (number) => afterCommand(this.#head.content, number, outcome.undoable),
      }
    })
  }

  undo(sender: Sender): Promise<Acknowledgement> {
    return this.#once(sender, UNDO, {}, async (writer) => {
      const row = await this.#top(writer, this.#head.content.undoTop, 'There is nothing left to undo.')
      return this.#turnBack(row, (number) => afterUndo(this.#head.content, number, row))
    })
  }

  redo(sender: Sender): Promise<Acknowledgement> {
    return this.#once(sender, REDO, {}, async (writer) => {
      const row = await this.#top(writer, this.#head.content.redoTop, 'There is nothing to do again.')
      return this.#turnBack(row, (number) => afterRedo(this.#head.content, number, row))
    })
  }

  journal(before: number | null, limit: number) {
    return this.#reading((reader) => journalPage(reader, before, limit))
  }

  verify() {
    const { content, hash } = this.#head
    return this.#reading((reader) => verifyChain(reader, { number: content.number, hash }))
  }

  async backup(target: string): Promise<void> {
    try {
      await copyRecord(this.path, target)
    } catch (fault) {
      // Damage is the record's; a full or closed disk is the copy's.
      throw asProblem(fault instanceof StorageFault && fault.kind === 'damaged' ? this.path : target, fault)
    }
  }

  close(): Promise<void> {
    this.#closing ??= this.#queue.end().then(() => withProblems(this.path, this.#footing.leave))
    return this.#closing
  }

  #reading<Result>(work: (reader: Connection) => Promise<Result>): Promise<Result> {
    return withProblems(this.path, () => work(this.#footing.reader))
  }

  #viewWith(undoState: UndoState): RecordView {
    const { path, readOnly } = this
    const { content, hash } = this.#head
    return this.#image.view({ path, readOnly, journalNumber: content.number, journalHash: hash, undoState })
  }

  async #top(writer: Connection, number: number | null, nothing: string): Promise<JournalContent> {
    const row = number === null ? null : await rowByNumber(writer, number)
    if (!row) throw new ProblemError('nothing-to-undo', nothing)
    return row.content
  }

  /** The deed that takes a row's changes back, if the rows still stand as that row left them. */
  #turnBack(row: JournalContent, stacks: Deed['stacks']): Deed {
    for (const [index, { register, key, after }] of row.changes.entries()) {
      const changedLater = row.changes
        .slice(index + 1)
        .some((later) => later.register === register && later.key === key)
      if (!changedLater && canonical(this.#image.row(register, key)) !== canonical(after)) {
        throw new ProblemError(
          'nothing-to-undo',
          `“${row.label}” cannot be taken back or done again: what it changed was changed later by something that is ` +
            'final. Amend the row itself instead.',
        )
      }
    }
    return { changes: inverse(row.changes), label: row.label, given: null, taken: {}, undoes: row.number, stacks }
  }

  /** Does a command once: decides it, writes tables and journal in one transaction, and only then shows and answers it. */
  #once(
    sender: Sender,
    command: string,
    input: unknown,
    decide: (writer: Connection) => Promise<Deed>,
  ): Promise<Acknowledgement> {
    return this.#queue.write(async (writer) => {
      const earlier = await rowByCommand(writer, sender.commandId)
      if (earlier) return answerAgain(writer, earlier.content, command, input)
      const { stacks, ...deed } = await decide(writer)
      const number = this.#head.content.number + 1
      const { commandId, at, who } = sender
      const row = seal({ ...deed, number, commandId, at, who, command, input, ...stacks(number) }, this.#head.hash)
      const undoState = await undoStateAfter(writer, row.content)
      await writer.transaction(stepsOf(row))
      this.#head = row
      this.#image = this.#image.with(row.content.changes)
      this.#counters = { ...this.#counters, ...row.content.taken }
      this.#view = this.#viewWith(undoState)
      return acknowledgement(row.content, undoState)
    })
  }
}
