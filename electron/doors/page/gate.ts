import { refuse } from '../serving/answers.ts'
import { headersFor } from '../serving/headers.ts'
import type { EntryTokens } from './entry-tokens.ts'

/** What the gate looks at; header names in lower case. */
export interface AtTheGate {
  readonly method: string
  readonly path: string
  readonly headers: { readonly [name: string]: string | string[] | undefined }
}

const methods = new Set(['GET', 'HEAD', 'POST', 'PUT'])
const opening = /^\/open\/(?<token>[\w-]{1,200})$/

const only = (value: string | string[] | undefined): string => (typeof value === 'string' ? value : '')

/** Cookies do not tell ports apart, so the name does. */
export const cookieName = (port: number): string => `witnessmark-${port}`

function secretOf(cookies: string, name: string): string {
  for (const cookie of cookies.split(';')) {
    const [key = '', value = ''] = cookie.trim().split('=', 2)
    if (key === name) return value
  }
  return ''
}

/**
 * The page that follows a used token. It goes on by itself: a redirect would still count as coming from the file or
 * program that held the address, and the strict cookie would not be sent with it.
 */
function welcome(secret: string, port: number): Response {
  return new Response(
    '<!doctype html><meta http-equiv="refresh" content="0;url=/"><link rel="icon" href="data:,"><title>Witnessmark</title>',
    {
      headers: headersFor('document', {
        'content-type': 'text/html; charset=utf-8',
        'set-cookie': `${cookieName(port)}=${secret}; HttpOnly; SameSite=Strict; Path=/`,
      }),
    },
  )
}

/**
 * Decides who comes in, before anything else is looked at: a refusal, the answer to a token, or null when the request
 * may go on. Host and Origin must be this very page's, so that no other site and no rebound name reaches the program.
 */
export function gate(tokens: EntryTokens, port: number, { method, path, headers }: AtTheGate): Response | null {
  const host = `127.0.0.1:${port}`
  if (only(headers.host) !== host) return refuse(421, 'This page answers only under its own address.')
  if (!methods.has(method)) return refuse(405, 'This page takes no such method.')
  const token = opening.exec(path)?.groups?.token
  if (token !== undefined) {
    const secret = method === 'GET' ? tokens.exchange(token) : null
    if (secret !== null) return welcome(secret, port)
    return refuse(403, 'This address was used already or is too old. Ask the program for a fresh one.')
  }
  const origin = headers.origin
  const mustNameOrigin = method === 'POST' || method === 'PUT'
  if ((origin !== undefined || mustNameOrigin) && only(origin) !== `http://${host}`) {
    return refuse(403, 'Only the page of the program itself may ask.')
  }
  const site = only(headers['sec-fetch-site'])
  if (site !== '' && site !== 'same-origin' && site !== 'none') {
    return refuse(403, 'Only the page of the program itself may ask.')
  }
  if (!tokens.admits(secretOf(only(headers.cookie), cookieName(port)))) {
    return refuse(401, 'Open the page by the address the program gives; it works once, for two minutes.')
  }
  return null
}
