import type { Protocol } from 'electron'
import { refuse } from '../serving/answers.ts'
import { type Serving, serve } from '../serving/serve.ts'
import { WINDOW_ORIGIN, WINDOW_SCHEME } from './window-names.ts'

/** Must be said before Electron is ready: the scheme is secure and has an origin, so that the same policy binds as on the web. */
export function declareScheme(protocol: Pick<Protocol, 'registerSchemesAsPrivileged'>): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: WINDOW_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
  ])
}

/** Serves the window by the same routes as the page; a change of the record comes by message only, never by address. */
export function serveWindow(protocol: Pick<Protocol, 'handle'>, serving: Serving): void {
  protocol.handle(WINDOW_SCHEME, async (request) => {
    const { host, pathname } = new URL(request.url)
    if (host !== 'app' || pathname.startsWith('/ask/') || pathname === '/events') {
      return refuse(404, 'There is nothing at this address.', 'not-found')
    }
    const origin = request.headers.get('origin')
    if (origin !== null && origin !== WINDOW_ORIGIN) return refuse(403, 'Only the window of the program may ask.')
    return serve(serving, request)
  })
}
