import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import type { ReadableStream as NodeReadableStream } from 'node:stream/web'
import { refuse } from '../serving/answers.ts'
import { type Serving, serve } from '../serving/serve.ts'
import { EntryTokens } from './entry-tokens.ts'
import { gate } from './gate.ts'

export interface PageServer {
  readonly port: number
  /** An address that opens the page once, within two minutes. */
  freshAddress(): string
  close(): Promise<void>
}

/** The request as the web platform has it, so that window and page share one way of serving. */
function webRequest(incoming: IncomingMessage, port: number): Request {
  const headers = new Headers()
  for (const [name, value] of Object.entries(incoming.headers)) {
    if (typeof value === 'string') headers.set(name, value)
  }
  const method = incoming.method ?? 'GET'
  const hasBody = method === 'POST' || method === 'PUT'
  return new Request(new URL(incoming.url ?? '/', `http://127.0.0.1:${port}`), {
    method,
    headers,
    ...(hasBody ? { body: Readable.toWeb(incoming) as ReadableStream<Uint8Array>, duplex: 'half' } : {}),
  } as RequestInit)
}

async function send(answered: Response, outgoing: ServerResponse): Promise<void> {
  outgoing.writeHead(answered.status, Object.fromEntries(answered.headers))
  if (answered.body === null) {
    outgoing.end()
    return
  }
  await pipeline(Readable.fromWeb(answered.body as NodeReadableStream<Uint8Array>), outgoing)
}

/** A path and nothing else: an absolute address or a star belongs to proxies. */
const isPath = (url: string): boolean => url.startsWith('/') && !url.startsWith('//') && url.length < 8192

async function handle(
  serving: Serving,
  tokens: EntryTokens,
  port: number,
  incoming: IncomingMessage,
): Promise<Response> {
  const url = incoming.url ?? '/'
  if (!isPath(url)) return refuse(400, 'That is no address of this page.')
  const [path = '/'] = url.split('?', 1)
  const refused = gate(tokens, port, { method: incoming.method ?? '', path, headers: incoming.headers })
  return refused ?? (await serve(serving, webRequest(incoming, port)))
}

/** Serves the page on the loopback address, at a port the system chooses, to holders of a token and nobody else. */
export async function openPageServer(serving: Serving, tokens: EntryTokens = new EntryTokens()): Promise<PageServer> {
  const server = createServer({ headersTimeout: 10_000, maxHeaderSize: 16_384 }, (incoming, outgoing) => {
    const { port } = server.address() as AddressInfo
    handle(serving, tokens, port, incoming)
      .catch(() => refuse(400, 'The request could not be read.'))
      .then((answered) => {
        if (!incoming.complete) outgoing.setHeader('connection', 'close')
        return send(answered, outgoing)
      })
      .catch(() => outgoing.destroy())
  })
  await new Promise<void>((done, fail) => {
    server.once('error', fail)
    server.listen(0, '127.0.0.1', done)
  })
  const { port } = server.address() as AddressInfo
  return {
    port,
    freshAddress: () => `http://127.0.0.1:${port}/open/${tokens.issue()}`,
    close: () =>
      new Promise((done) => {
        server.close(() => done())
        server.closeAllConnections()
      }),
  }
}
