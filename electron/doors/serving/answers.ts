import { Readable } from 'node:stream'
import type { Problem, ProblemCode } from '../../../shared-types/problem.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { Served } from '../behind-the-door.ts'
import { disposition, headersFor } from './headers.ts'

/** JSON of a value or problem. */
export const json = (said: unknown, status = 200): Response =>
  new Response(JSON.stringify(said), { status, headers: headersFor('bytes', { 'content-type': 'application/json' }) })

/** A refusal by the door itself, before the program was asked. */
export const refuse = (status: number, message: string, code: ProblemCode = 'not-allowed-here'): Response =>
  json({ problem: { code, message } satisfies Problem }, status)

/** Turns what a step behind the door threw into an answer. */
export function refuseThrown(thrown: unknown, what: string): Response {
  if (thrown instanceof ProblemError) {
    const missing = thrown.problem.code === 'not-found' || thrown.problem.code === 'no-record-open'
    return json({ problem: thrown.problem }, missing ? 404 : 422)
  }
  process.stderr.write(`${what}: ${thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown)}\n`)
  return refuse(500, 'The program failed at this step. Everything it confirmed before is kept. Try again.', 'internal')
}

/** A picture or document: shown when it is of our own making, saved when it is as somebody handed it in. */
export function serveBytes(served: Served): Response {
  const isDocument = served.mediaType === 'application/pdf' && !served.asHandedIn
  const headers = headersFor(isDocument ? 'document' : 'bytes', {
    'content-type': served.mediaType,
    'content-disposition': disposition(served.asHandedIn ? 'attachment' : 'inline', served.fileName),
  })
  return new Response(Readable.toWeb(served.bytes) as ReadableStream<Uint8Array>, { headers })
}
