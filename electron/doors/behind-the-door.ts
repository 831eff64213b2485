import type { Readable } from 'node:stream'
import type { ProgramEvent } from '../../shared-types/contract.ts'
import type { Problem } from '../../shared-types/problem.ts'

/** What crosses a door: a value, or a problem a user can act on. */
export type Answer = { readonly value: unknown } | { readonly problem: Problem }

/** A picture or document on its way out. */
export interface Served {
  readonly bytes: Readable
  readonly mediaType: string
  /** Name offered when it is saved; plain or hostile, it is encoded before it reaches a header. */
  readonly fileName: string
  /** Bytes as somebody handed them in: saved, never shown as a page of ours. */
  readonly asHandedIn: boolean
}

export type PictureKind = 'thumbnail' | 'report' | 'original'

/** All a door knows of the program behind it; window, page and tests are handed the same. */
export interface BehindTheDoor {
  /** Checks the input and answers one request of the contract; never throws. */
  ask(name: string, input: unknown): Promise<Answer>
  /** Hears every event until the returned function is called. */
  listen(hear: (event: ProgramEvent) => void): () => void
  /** Keeps a file handed in and answers the id under which it serves once. */
  keepUpload(fileName: string, bytes: Readable): Promise<string>
  /** Bytes of an exhibit; throws the problem `not-found` or `no-record-open`. */
  exhibit(number: number, kind: PictureKind): Promise<Served>
  /** A document made for looking at, by the id its request answered. */
  document(id: string): Promise<Served>
  /** An issued report. */
  edition(number: number): Promise<Served>
}
