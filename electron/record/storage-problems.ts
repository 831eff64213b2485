import { basename } from 'node:path'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { type FaultKind, StorageFault } from './connection.ts'

type Told = (path: string, fault: unknown) => ProblemError
const told =
  (code: ConstructorParameters<typeof ProblemError>[0], words: (name: string) => string): Told =>
  (path, cause) =>
    new ProblemError(code, words(basename(path)), { cause })

export const damaged = told(
  'record-damaged',
  (name) =>
    `“${name}” is damaged and was left as it is. Keep it, and open the newest copy made with “back up”; what the ` +
    'journal of the damaged file still holds can be rebuilt into a new file.',
)
export const foreign = told(
  'record-foreign',
  (name) => `“${name}” is not a car record and was left as it is. Choose a file made by this program (.wmk).`,
)
export const unreadable = told(
  'record-unreadable',
  (name) => `“${name}” may not be read by this user of the machine. Ask its owner for leave, or copy it here first.`,
)
export const readOnly = told(
  'record-read-only',
  (name) =>
    `“${name}” is read-only, so nothing can be written. Open it to read, or copy it to a folder of your own and open ` +
    'the copy.',
)
export const diskFull = told(
  'disk-full',
  (name) =>
    `The disk that holds “${name}” is full. This change was not made; everything before it is kept. Free some ` +
    'space and do it again.',
)
export const inUse = told(
  'record-in-use',
  (name) => `“${name}” is being written by another program. Close it there, or open the record to read.`,
)
const notKept = told(
  'input-refused',
  () =>
    'The change names something this record does not hold, or a value its tables do not allow. Nothing was changed.',
)
const internal = told(
  'internal',
  (name) => `“${name}” could not be read or written. Nothing acknowledged is lost; close the record and open it again.`,
)

const byKind: { readonly [K in FaultKind]: Told } = {
  busy: inUse,
  damaged,
  foreign,
  full: diskFull,
  'read-only': readOnly,
  'cannot-open': unreadable,
  constraint: notKept,
  other: internal,
}

/** What the user is told of a fault; a problem that is already one stays as it is, and so does a fault of the code. */
export function asProblem(path: string, fault: unknown): unknown {
  return fault instanceof StorageFault ? byKind[fault.kind](path, fault) : fault
}

/** Runs storage work on the record at `path` and lets only problems out. */
export async function withProblems<Result>(path: string, work: () => Promise<Result>): Promise<Result> {
  try {
    return await work()
  } catch (fault) {
    throw asProblem(path, fault)
  }
}
