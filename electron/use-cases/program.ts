import type { ProgramEvent, RequestInput, RequestName, RequestOutput } from '../../shared-types/contract.ts'
import type { CarRecord } from '../record/car-record.ts'

/** What every use case may reach. One program has at most one record open. */
export interface Program {
  /** The open record; throws the problem `no-record-open`. */
  record(): CarRecord
  /** Replaces the open record, closing the one before; null closes only. */
  hold(record: CarRecord | null): Promise<void>
  /** Now, UTC with milliseconds; handed in so that the same record and clock give the same bytes. */
  now(): string
  /** A new id for a command the program sends of its own accord; handed in, as the clock is. */
  newCommandId(): string
  /** Folder where new records are made. */
  readonly recordsFolder: string
  /** Folder for what can be thrown away: uploads, previews. */
  readonly scratchFolder: string
  /** Tells every open window. */
  tell(event: ProgramEvent): void
  /** Path of an upload handed in through a door; throws `not-found`. Serves once. */
  upload(id: string): Promise<{ readonly path: string; readonly fileName: string }>
  /** Signal that is aborted when `task.cancel` names this task. */
  task(taskId: string): AbortSignal
  /** Aborts the signal of a running task; one that has ended already is left alone. */
  cancelTask(taskId: string): void
}

/** A use case: one request of the contract, done. */
export type UseCase<N extends RequestName> = (program: Program, input: RequestInput<N>) => Promise<RequestOutput<N>>
export type UseCases = { readonly [N in RequestName]: UseCase<N> }
