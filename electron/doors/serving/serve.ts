import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { BehindTheDoor, PictureKind } from '../behind-the-door.ts'
import { json, refuse, refuseThrown, serveBytes } from './answers.ts'
import { bodyBounds, boundedBody, jsonBody } from './body.ts'
import { serveEvents } from './event-stream.ts'
import { servePageFile } from './page-files.ts'

export interface Serving {
  readonly behind: BehindTheDoor
  /** Folder of the built page. */
  readonly pageFolder: string
}

/** One address: the methods it takes, the path it matches, and what it does with the named pieces of that path. */
interface Route {
  readonly method: 'GET' | 'POST' | 'PUT'
  readonly path: RegExp
  act(serving: Serving, request: Request, pieces: { readonly [name: string]: string }): Promise<Response>
}

const routes: readonly Route[] = [
  {
    method: 'POST',
    path: /^\/ask\/(?<name>[\w.]{1,80})$/,
    async act({ behind }, request, { name = '' }) {
      const kind = request.headers.get('content-type') ?? ''
      if (kind.split(';')[0]?.trim() !== 'application/json') {
        return refuse(415, 'Requests are sent as application/json.', 'input-refused')
      }
      return json(await behind.ask(name, await jsonBody(request)))
    },
  },
  {
    method: 'PUT',
    path: /^\/upload$/,
    async act({ behind }, request) {
      const name = new URL(request.url).searchParams.get('name') ?? ''
      if (name === '' || name.length > 400) {
        throw new ProblemError('input-refused', 'A file is handed in under a name of 1 to 400 letters.', {
          field: 'name',
        })
      }
      return json({ upload: await behind.keepUpload(name, boundedBody(request, bodyBounds.upload)) })
    },
  },
  { method: 'GET', path: /^\/events$/, act: async ({ behind }) => serveEvents(behind) },
  {
    method: 'GET',
    path: /^\/exhibit\/(?<number>[1-9]\d{0,8})\/(?<kind>thumbnail|report|original)$/,
    act: async ({ behind }, _request, { number, kind }) =>
      serveBytes(await behind.exhibit(Number(number), kind as PictureKind)),
  },
  {
    method: 'GET',
    path: /^\/document\/(?<id>[\w-]{1,80})$/,
    act: async ({ behind }, _request, { id = '' }) => serveBytes(await behind.document(id)),
  },
  {
    method: 'GET',
    path: /^\/edition\/(?<number>[1-9]\d{0,8})$/,
    act: async ({ behind }, _request, { number }) => serveBytes(await behind.edition(Number(number))),
  },
  {
    method: 'GET',
    path: /^\/.*$/,
    act: async ({ pageFolder }, request) =>
      (await servePageFile(pageFolder, new URL(request.url).pathname)) ??
      refuse(404, 'There is nothing at this address.', 'not-found'),
  },
]

/**
 * Answers one request of a window or page, by address: the contract, files handed in, events, pictures, documents, and
 * the page itself. Who may ask is decided before, by the door that was asked.
 */
export async function serve(serving: Serving, request: Request): Promise<Response> {
  const { pathname } = new URL(request.url)
  const method = request.method === 'HEAD' ? 'GET' : request.method
  const fitting = routes.filter((route) => route.path.test(pathname))
  const route = fitting.find((one) => one.method === method)
  if (route === undefined || (fitting[0] !== route && fitting.length > 1)) {
    return refuse(405, `This address does not take ${request.method.slice(0, 20)}.`)
  }
  try {
    const answered = await route.act(serving, request, route.path.exec(pathname)?.groups ?? {})
    if (request.method !== 'HEAD') return answered
    await answered.body?.cancel()
    return new Response(null, { status: answered.status, headers: answered.headers })
  } catch (thrown) {
    return refuseThrown(thrown, `${request.method} ${pathname}`)
  }
}
