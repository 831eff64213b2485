import { Readable, Transform } from 'node:stream'
import type { ReadableStream as NodeReadableStream } from 'node:stream/web'
import { ProblemError } from '../../../shared-types/problem-error.ts'

/** Most bytes of one request's JSON, and of one file handed in. */
export const bodyBounds = { json: 16_000_000, upload: 400_000_000 } as const

const tooLarge = (bound: number) =>
  new ProblemError(
    'input-refused',
    `That is larger than the ${Math.round(bound / 1_000_000)} MB this may be. Send it in smaller parts or make the file smaller.`,
  )

/** The body as a stream that fails with `input-refused` once it exceeds its bound, before or while it is read. */
export function boundedBody(request: Request, bound: number): Readable {
  const declared = Number(request.headers.get('content-length') ?? 0)
  if (declared > bound) throw tooLarge(bound)
  if (request.body === null) return Readable.from([])
  let taken = 0
  const counter = new Transform({
    transform(bytes: Buffer, _encoding, done) {
      taken += bytes.byteLength
      if (taken > bound) done(tooLarge(bound))
      else done(null, bytes)
    },
  })
  const source = Readable.fromWeb(request.body as NodeReadableStream<Uint8Array>)
  source.on('error', (fault) => counter.destroy(fault))
  return source.pipe(counter)
}

/** Reads the whole body as JSON; throws `input-refused` when it is too large or no JSON. */
export async function jsonBody(request: Request): Promise<unknown> {
  const parts: Buffer[] = []
  for await (const part of boundedBody(request, bodyBounds.json)) parts.push(part as Buffer)
  try {
    return JSON.parse(Buffer.concat(parts).toString('utf8'))
  } catch {
    throw new ProblemError(
      'input-refused',
      'The request is not JSON. Send the fields of the request as one JSON object.',
    )
  }
}
