import { request as httpRequest, type IncomingHttpHeaders, type OutgoingHttpHeaders } from 'node:http'
import { connect } from 'node:net'
import { text } from 'node:stream/consumers'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { EntryTokens, TOKEN_LIFETIME_MS } from '../../electron/doors/page/entry-tokens.ts'
import { openPageServer, type PageServer } from '../../electron/doors/page/page-server.ts'
import { bodyBounds } from '../../electron/doors/serving/body.ts'
import { builtPage, type StandIn, standIn } from './stand-in.ts'

interface Got {
  readonly status: number
  readonly headers: IncomingHttpHeaders
  readonly body: string
}

let page: PageServer
let behind: StandIn
let built: ReturnType<typeof builtPage>
let clock = 0
let cookie = ''

/** Asks below the level of a browser, so that host, origin and path can be anything. */
function ask(method: string, path: string, headers: OutgoingHttpHeaders = {}, body?: string | Buffer): Promise<Got> {
  return new Promise((done, fail) => {
    const asked = httpRequest({ host: '127.0.0.1', port: page.port, method, path, headers }, async (got) =>
      done({ status: got.statusCode ?? 0, headers: got.headers, body: await text(got) }),
    )
    asked.on('error', fail)
    asked.end(body)
  })
}

const origin = () => `http://127.0.0.1:${page.port}`
const inside = (more: OutgoingHttpHeaders = {}) => ({
  cookie,
  origin: origin(),
  'content-type': 'application/json',
  ...more,
})
const pathOf = (address: string) => new URL(address).pathname

beforeEach(async () => {
  built = builtPage()
  behind = standIn()
  clock = 0
  page = await openPageServer({ behind, pageFolder: built.pageFolder }, new EntryTokens(() => clock))
  const entered = await ask('GET', pathOf(page.freshAddress()))
  cookie = entered.headers['set-cookie']?.[0]?.split(';')[0] ?? ''
})
afterEach(async () => {
  await page.close()
  built.remove()
})

describe('the token in the address', () => {
  it('is exchanged for a cookie no script and no other site gets at', async () => {
    const entered = await ask('GET', pathOf(page.freshAddress()))
    expect(entered.status).toBe(200)
    expect(entered.headers['set-cookie']?.[0]).toMatch(
      new RegExp(`^witnessmark-${page.port}=[\\w-]{43}; HttpOnly; SameSite=Strict; Path=/$`),
    )
    expect(entered.body).not.toContain('<script')
    expect((await ask('GET', '/', { cookie })).status).toBe(200)
  })

  it('opens once', async () => {
    const path = pathOf(page.freshAddress())
    expect((await ask('GET', path)).status).toBe(200)
    const again = await ask('GET', path, { cookie })
    expect(again.status).toBe(403)
    expect(again.headers['set-cookie']).toBeUndefined()
  })

  it('opens within two minutes and no later', async () => {
    const [early, late] = [pathOf(page.freshAddress()), pathOf(page.freshAddress())]
    clock = TOKEN_LIFETIME_MS
    expect((await ask('GET', early)).status).toBe(200)
    clock = TOKEN_LIFETIME_MS + 1
    expect((await ask('GET', late)).status).toBe(403)
  })

  it('cannot be guessed, and is not used up by another method', async () => {
    expect((await ask('GET', '/open/guess')).status).toBe(403)
    const path = pathOf(page.freshAddress())
    expect((await ask('POST', path, { origin: origin() })).status).toBe(403)
    expect((await ask('GET', path)).status).toBe(200)
  })
})

describe('who is refused', () => {
  it.each(['/', '/assets/page.js', '/exhibit/1/thumbnail', '/document/abc', '/edition/1', '/events'])(
    'nobody reads %s without the cookie',
    async (path) => {
      expect((await ask('GET', path)).status).toBe(401)
      expect((await ask('GET', path, { cookie: `witnessmark-${page.port}=guess` })).status).toBe(401)
    },
  )

  it('nobody asks without the cookie', async () => {
    expect((await ask('POST', '/ask/record.view', inside({ cookie: '' }), '{}')).status).toBe(401)
    expect((await ask('PUT', '/upload?name=a.jpg', inside({ cookie: '' }), 'bytes')).status).toBe(401)
    expect(behind.uploads).toEqual([])
  })

  it.each(['localhost', 'rebound.example', '127.0.0.1', '127.0.0.1.example', '[::1]'])(
    'a foreign host: %s',
    async (name) => {
      for (const host of [name, `${name}:${page.port}`].filter((one) => one !== `127.0.0.1:${page.port}`)) {
        expect((await ask('GET', '/', { cookie, host })).status, host).toBe(421)
      }
    },
  )

  it('a foreign host is refused even a good token, which stays good', async () => {
    const path = pathOf(page.freshAddress())
    expect((await ask('GET', path, { host: `rebound.example:${page.port}` })).status).toBe(421)
    expect((await ask('GET', path)).status).toBe(200)
  })

  it.each(['http://rebound.example', 'null', 'http://127.0.0.1:1', 'https://127.0.0.1', 'file://', ''])(
    'a foreign origin: %s',
    async (foreign) => {
      expect((await ask('POST', '/ask/record.view', inside({ origin: foreign }), '{}')).status).toBe(403)
      expect((await ask('GET', '/exhibit/1/report', { cookie, origin: foreign })).status).toBe(403)
    },
  )

  it('a change that names no origin', async () => {
    expect((await ask('POST', '/ask/record.view', { cookie, 'content-type': 'application/json' }, '{}')).status).toBe(
      403,
    )
  })

  it.each(['cross-site', 'same-site'])('a browser that says the request comes %s', async (site) => {
    expect((await ask('GET', '/exhibit/1/report', { cookie, 'sec-fetch-site': site })).status).toBe(403)
  })

  it.each(['DELETE', 'PATCH', 'OPTIONS', 'TRACE', 'PROPFIND'])('the method %s', async (method) => {
    expect((await ask(method, '/', inside())).status).toBe(405)
  })

  it.each([
    ['GET', '/ask/record.view'],
    ['POST', '/'],
    ['PUT', '/ask/record.view'],
    ['POST', '/exhibit/1/report'],
    ['GET', '/upload'],
    ['POST', '/events'],
  ])('%s where it does not belong: %s', async (method, path) => {
    expect((await ask(method, path, inside())).status).toBe(405)
  })
})

describe('paths', () => {
  it.each([
    '/../secret.js',
    '/assets/../../secret.js',
    '/..%2fsecret.js',
    '/%2e%2e/secret.js',
    '/assets/..%2f..%2fsecret.js',
    '/assets/%2e%2e%2f%2e%2e%2fsecret.js',
    '/..%5csecret.js',
    '/%252e%252e/secret.js',
    '/assets/page.js%00.js',
    '/%ff',
    '/assets',
    '/assets/notes.txt',
    '/secret.js',
  ])('lead nowhere but into the page: %s', async (path) => {
    const got = await ask('GET', path, { cookie })
    expect(got.status).toBe(404)
    expect(got.body).not.toContain('secret')
  })

  it.each(['//127.0.0.1/', 'http://127.0.0.1/', '*'])('are refused when they are no path of ours: %s', async (path) => {
    expect((await ask('GET', path, { cookie })).status).toBe(400)
  })

  it('survive a request that is no HTTP at all', async () => {
    await new Promise<void>((done) => {
      const socket = connect(page.port, '127.0.0.1', () => socket.end('\u0000\u0001 nonsense\r\n\r\n'))
      socket
        .on('close', () => done())
        .on('error', () => done())
        .resume()
    })
    expect((await ask('GET', '/', { cookie })).status).toBe(200)
  })
})

describe('what comes back', () => {
  it('is the page under a policy without inline script, with a fresh nonce for its one style element', async () => {
    const [one, two] = [await ask('GET', '/', { cookie }), await ask('GET', '/', { cookie })]
    const policy = String(one.headers['content-security-policy'])
    expect(policy).toContain("default-src 'none'")
    expect(policy).toContain("script-src 'self';")
    expect(policy).not.toMatch(/unsafe|\*|https?:/)
    const nonce = /'nonce-([\w-]{22})'/.exec(policy)?.[1]
    expect(one.body).toContain(`<meta property="csp-nonce" nonce="${nonce}" />`)
    expect(two.headers['content-security-policy']).not.toBe(policy)
  })

  it.each(['/', '/assets/page.js', '/exhibit/1/thumbnail', '/nothing', '/document/abc'])(
    'is never stored, guessed at or told onwards: %s',
    async (path) => {
      const { headers } = await ask('GET', path, { cookie })
      expect(headers).toMatchObject({
        'cache-control': 'no-store',
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'no-referrer',
        'cross-origin-opener-policy': 'same-origin',
        'cross-origin-resource-policy': 'same-origin',
      })
      expect(headers['content-security-policy']).toContain("default-src 'none'")
      expect(headers['access-control-allow-origin']).toBeUndefined()
    },
  )

  it('is the answer of the program, value or problem', async () => {
    const value = await ask('POST', '/ask/record.view', inside(), '{}')
    expect([value.status, JSON.parse(value.body)]).toEqual([200, { value: { name: 'record.view', input: {} } }])
    const refused = await ask('POST', '/ask/record.view', inside(), '{"__proto__":{"a":1}}')
    expect(JSON.parse(refused.body)).toMatchObject({ problem: { code: 'input-refused', field: '__proto__' } })
  })

  it('is a problem when the body is no JSON, of another kind, or too large', async () => {
    const bodies: [OutgoingHttpHeaders, string][] = [
      [inside(), '{'],
      [inside({ 'content-type': 'text/plain' }), '{}'],
      [inside({ 'content-type': '' }), '{}'],
      [inside(), `"${'x'.repeat(bodyBounds.json)}"`],
    ]
    for (const [headers, body] of bodies) {
      const got = await ask('POST', '/ask/record.view', headers, body)
      expect(got.status).toBeGreaterThanOrEqual(400)
      expect(JSON.parse(got.body)).toMatchObject({ problem: { code: 'input-refused' } })
    }
  })

  it('is the same whatever is sent where a size is not declared', async () => {
    const got = await ask(
      'POST',
      '/ask/record.view',
      inside({ 'transfer-encoding': 'chunked' }),
      `"${'x'.repeat(bodyBounds.json)}"`,
    )
    expect(JSON.parse(got.body)).toMatchObject({ problem: { code: 'input-refused' } })
  })

  it('is HEAD without a body', async () => {
    const got = await ask('HEAD', '/assets/page.js', { cookie })
    expect([got.status, got.body, got.headers['content-type']]).toEqual([200, '', 'text/javascript; charset=utf-8'])
  })
})

describe('files', () => {
  it('are handed in under their name, letter for letter, and answered with an id', async () => {
    const bytes = Buffer.from(Array.from({ length: 300_000 }, (_, at) => at % 251))
    const got = await ask('PUT', `/upload?name=${encodeURIComponent('Kotflügel 1/2 <b>.jpg')}`, inside(), bytes)
    expect(JSON.parse(got.body)).toEqual({ upload: expect.stringMatching(/^[0-9a-f-]{36}$/) })
    expect(behind.uploads[0]?.fileName).toBe('Kotflügel 1/2 <b>.jpg')
    expect(behind.uploads[0]?.bytes.equals(bytes)).toBe(true)
  })

  it.each(['/upload', '/upload?name=', `/upload?name=${'x'.repeat(401)}`])(
    'are refused without a fit name',
    async (path) => {
      expect(JSON.parse((await ask('PUT', path, inside(), 'a')).body)).toMatchObject({ problem: { field: 'name' } })
    },
  )

  it('are refused when they say they are too large', async () => {
    const got = await ask('PUT', '/upload?name=a.jpg', inside({ 'content-length': bodyBounds.upload + 1 }))
    expect(JSON.parse(got.body)).toMatchObject({ problem: { code: 'input-refused' } })
  })

  it('as handed in are saved, never shown: whatever they hold runs nothing', async () => {
    const got = await ask('GET', '/exhibit/2/original', { cookie })
    expect(got.headers['content-disposition']).toMatch(
      /^attachment; filename="[\w. -]+"; filename\*=UTF-8''[\w%.~!-]+$/,
    )
    expect(got.headers['content-security-policy']).toContain('sandbox')
    expect(got.headers['set-cookie']).toBeUndefined()
  })

  it('of our own making are shown', async () => {
    expect((await ask('GET', '/exhibit/1/report', { cookie })).body).toBe('picture 1 report')
    expect((await ask('GET', '/document/abc-1', { cookie })).body).toBe('%PDF document abc-1')
    const edition = await ask('GET', '/edition/3', { cookie })
    expect(edition.body).toBe('%PDF edition 3')
    expect(edition.headers['content-disposition']).toMatch(/^inline; /)
  })

  it.each([
    '/exhibit/9/report',
    '/exhibit/0/report',
    '/exhibit/1/huge',
    '/exhibit/1e3/report',
    '/edition/-1',
    '/document/a%2fb',
  ])('that are not there are not found: %s', async (path) => {
    expect((await ask('GET', path, { cookie })).status).toBe(404)
  })
})

describe('events', () => {
  it('are heard as they are told, and the listener is let go when it leaves', async () => {
    const heard = await new Promise<string>((done, fail) => {
      let all = ''
      const asked = httpRequest({ host: '127.0.0.1', port: page.port, path: '/events', headers: { cookie } }, (got) => {
        expect(got.headers['content-type']).toBe('text/event-stream')
        got.on('error', () => {})
        got.on('data', (part: Buffer) => {
          all += part.toString()
          if (all.includes('listening') && !all.includes('data')) behind.tell({ event: 'record.closed' })
          if (!all.includes('data')) return
          asked.destroy()
          done(all)
        })
      })
      asked.on('error', (fault) => (asked.destroyed ? undefined : fail(fault)))
      asked.end()
    })
    expect(heard).toContain('data: {"event":"record.closed"}\n\n')
    await expect.poll(() => behind.hearing.size).toBe(0)
  })
})
