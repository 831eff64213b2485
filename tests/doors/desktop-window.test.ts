import { readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import type { BrowserWindowConstructorOptions } from 'electron'
import { build } from 'esbuild'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { type DesktopParts, openDesktopWindow } from '../../electron/doors/window/desktop-window.ts'
import { declareScheme } from '../../electron/doors/window/window-content.ts'
import { windowMessages } from '../../electron/doors/window/window-names.ts'
import { builtPage, type StandIn, standIn } from './stand-in.ts'

type Hear = (...said: never[]) => unknown
interface Frame {
  readonly url: string
}

/** Stands in for Electron: notes what it is told, and lets a test play the window, the user and a stranger. */
function electronStandIn() {
  const noted = {
    options: null as BrowserWindowConstructorOptions | null,
    loaded: [] as string[],
    shown: 0,
    sent: [] as unknown[][],
    onContents: new Map<string, Hear>(),
    onWindow: new Map<string, Hear>(),
    handlers: new Map<string, Hear>(),
    openHandler: null as Hear | null,
    serve: null as ((request: Request) => Promise<Response>) | null,
    permission: null as Hear | null,
    permissionCheck: null as Hear | null,
    device: null as Hear | null,
    beforeRequest: null as Hear | null,
  }
  const mainFrame: Frame = { url: 'witnessmark://app/' }
  const contents = {
    id: 7,
    mainFrame,
    isDestroyed: () => false,
    send: (...said: unknown[]) => noted.sent.push(said),
    once: (name: string, hear: Hear) => noted.onContents.set(name, hear),
    on: (name: string, hear: Hear) => noted.onContents.set(name, hear),
    setWindowOpenHandler: (handler: Hear) => {
      noted.openHandler = handler
    },
  }
  const parts = {
    BrowserWindow: class {
      readonly webContents = contents
      constructor(options: BrowserWindowConstructorOptions) {
        noted.options = options
      }
      async loadURL(address: string) {
        noted.loaded.push(address)
      }
      once(name: string, hear: Hear) {
        noted.onWindow.set(name, hear)
      }
      show() {
        noted.shown += 1
      }
    },
    ipcMain: {
      handle: (name: string, handler: Hear) => noted.handlers.set(name, handler),
      removeHandler: (name: string) => noted.handlers.delete(name),
    },
    protocol: {
      handle: (scheme: string, handler: (request: Request) => Promise<Response>) => {
        expect(scheme).toBe('witnessmark')
        noted.serve = handler
      },
    },
    session: {
      setPermissionRequestHandler: (handler: Hear) => {
        noted.permission = handler
      },
      setPermissionCheckHandler: (handler: Hear) => {
        noted.permissionCheck = handler
      },
      setDevicePermissionHandler: (handler: Hear) => {
        noted.device = handler
      },
      webRequest: {
        onBeforeRequest: (handler: Hear) => {
          noted.beforeRequest = handler
        },
      },
    },
  }
  return { noted, contents, mainFrame, parts: parts as unknown as DesktopParts }
}

let stage: ReturnType<typeof electronStandIn>
let behind: StandIn
let built: ReturnType<typeof builtPage>

beforeEach(async () => {
  built = builtPage()
  behind = standIn()
  stage = electronStandIn()
  await openDesktopWindow(stage.parts, { behind, pageFolder: built.pageFolder }, '/preload.cjs')
})
afterEach(() => built.remove())

const call = (hear: Hear | null | undefined, ...said: unknown[]) =>
  (hear as ((...said: unknown[]) => unknown) | null)?.(...said)
const serve = (path: string, init?: RequestInit) => stage.noted.serve?.(new Request(path, init))
const askFrom = (sender: { id: number }, senderFrame: Frame | null, ...said: unknown[]) =>
  call(stage.noted.handlers.get(windowMessages.ask), { sender, senderFrame }, ...said)

describe('the desktop window', () => {
  it('confines its page: own world, sandbox, no Node.js, web security', () => {
    expect(stage.noted.options?.webPreferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      preload: '/preload.cjs',
    })
    expect(stage.noted.options?.webPreferences?.enableBlinkFeatures).toBeUndefined()
  })

  it('loads its own page and shows it when it is drawn', () => {
    expect(stage.noted.loaded).toEqual(['witnessmark://app/'])
    expect(stage.noted.shown).toBe(0)
    call(stage.noted.onWindow.get('ready-to-show'))
    expect(stage.noted.shown).toBe(1)
  })

  it.each(['will-navigate', 'will-redirect', 'will-attach-webview'])('forbids %s', (name) => {
    const event = { preventDefault: vi.fn() }
    call(stage.noted.onContents.get(name), event)
    expect(event.preventDefault).toHaveBeenCalledOnce()
  })

  it('opens no other window', () => {
    expect(call(stage.noted.openHandler, { url: 'https://rebound.example' })).toEqual({ action: 'deny' })
  })

  it('grants no permission and no device', () => {
    const decide = vi.fn()
    call(stage.noted.permission, stage.contents, 'geolocation', decide)
    expect(decide).toHaveBeenCalledWith(false)
    expect(call(stage.noted.permissionCheck)).toBe(false)
    expect(call(stage.noted.device)).toBe(false)
  })

  it.each([
    ['witnessmark://app/assets/page.js', false],
    ['blob:witnessmark://app/0f1e', false],
    ['https://rebound.example/', true],
    ['http://127.0.0.1:1/', true],
    ['file:///etc/passwd', true],
    ['witnessmark://application/', true],
  ])('reaches nothing outside: %s cancelled %s', (url, cancel) => {
    const decide = vi.fn()
    call(stage.noted.beforeRequest, { url }, decide)
    expect(decide).toHaveBeenCalledWith({ cancel })
  })

  it('declares its scheme as one with an origin of its own, and gives it no way around the policy', () => {
    const declared: unknown[] = []
    declareScheme({ registerSchemesAsPrivileged: (schemes) => declared.push(...schemes) })
    expect(declared).toEqual([
      { scheme: 'witnessmark', privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
    ])
  })
})

describe('messages of the window', () => {
  it('from its main frame are answered', async () => {
    expect(await askFrom(stage.contents, stage.mainFrame, 'record.view', {})).toEqual({
      value: { name: 'record.view', input: {} },
    })
  })

  it.each<[string, { id: number }, Frame | null]>([
    ['a frame within it', { id: 7 }, { url: 'witnessmark://app/' }],
    ['another window', { id: 8 }, null],
    ['a frame that is gone', { id: 7 }, null],
  ])('from %s are refused', async (_who, sender, frame) => {
    expect(await askFrom(sender, frame, 'record.view', {})).toMatchObject({ problem: { code: 'not-allowed-here' } })
  })

  it('from its main frame are refused once that shows a strange page', async () => {
    for (const url of ['https://rebound.example/', 'witnessmark://app.rebound.example/', 'file:///a.html', '']) {
      Object.assign(stage.mainFrame, { url })
      expect(await askFrom(stage.contents, stage.mainFrame, 'record.view', {})).toMatchObject({
        problem: { code: 'not-allowed-here' },
      })
    }
  })

  it.each([undefined, 7, {}, ['record.view']])('whose name is no text are refused: %s', async (name) => {
    expect(await askFrom(stage.contents, stage.mainFrame, name, {})).toMatchObject({ problem: {} })
  })

  it('carry every event to the window until it is gone', () => {
    behind.tell({ event: 'record.closed' })
    expect(stage.noted.sent).toEqual([[windowMessages.event, { event: 'record.closed' }]])
    call(stage.noted.onContents.get('destroyed'))
    behind.tell({ event: 'record.closed' })
    expect(stage.noted.sent).toHaveLength(1)
    expect(stage.noted.handlers.size).toBe(0)
  })
})

describe('addresses of the window', () => {
  it('serve the page under the same policy as on the web', async () => {
    const page = await serve('witnessmark://app/')
    expect(page?.status).toBe(200)
    expect(page?.headers.get('content-security-policy')).toContain("script-src 'self';")
    expect(await page?.text()).toContain('the page')
    expect((await serve('witnessmark://app/exhibit/1/thumbnail'))?.status).toBe(200)
  })

  it('take files', async () => {
    const init = { method: 'PUT', body: 'bytes', headers: { origin: 'witnessmark://app' } }
    const taken = await serve('witnessmark://app/upload?name=a.jpg', init)
    expect(await taken?.json()).toEqual({ upload: expect.any(String) })
    expect(behind.uploads[0]?.bytes.toString()).toBe('bytes')
  })

  it.each([
    ['witnessmark://other/', 404],
    ['witnessmark://app/../secret.js', 404],
    ['witnessmark://app/ask/record.view', 404],
    ['witnessmark://app/events', 404],
  ])('beyond that there are none: %s', async (address, status) => {
    expect((await serve(address))?.status).toBe(status)
  })

  it('refuse a foreign origin', async () => {
    const init = { method: 'PUT', body: 'bytes', headers: { origin: 'https://rebound.example' } }
    expect((await serve('witnessmark://app/upload?name=a.jpg', init))?.status).toBe(403)
    expect(behind.uploads).toEqual([])
  })
})

describe('the preload', () => {
  const top = resolve(import.meta.dirname, '..', '..')

  it('hands the page the contract and nothing else, and asks for no part of Node.js', async () => {
    const bundled = await build({
      entryPoints: [join(top, 'electron', 'preload.ts')],
      bundle: true,
      write: false,
      format: 'cjs',
      platform: 'node',
      packages: 'external',
    })
    const text = bundled.outputFiles[0]?.text ?? ''
    const exposed: [string, Record<string, (...given: unknown[]) => unknown>][] = []
    const invoked: unknown[][] = []
    const required: string[] = []
    const electron = {
      contextBridge: { exposeInMainWorld: (name: string, what: never) => exposed.push([name, what]) },
      ipcRenderer: {
        invoke: async (...said: unknown[]) => invoked.push(said),
        on: (...said: unknown[]) => invoked.push(said),
        off: (...said: unknown[]) => invoked.push(said),
      },
    }
    const require = (name: string) => {
      required.push(name)
      return electron
    }
    new Function('require', 'module', 'exports', text)(require, { exports: {} }, {})
    expect(required).toEqual(['electron'])
    const [name, door] = exposed[0] ?? ['', {}]
    expect([exposed.length, name, Object.keys(door).sort()]).toEqual([
      1,
      'witnessmark',
      ['address', 'ask', 'listen', 'upload'],
    ])
    await door.ask?.('record.view', {})
    expect(invoked[0]).toEqual([windowMessages.ask, 'record.view', {}])
    expect(door.address?.('edition/1')).toBe('/edition/1')
    const deaf = door.listen?.(() => undefined) as () => void
    deaf()
    expect(invoked.slice(1).map(([channel]) => channel)).toEqual([windowMessages.event, windowMessages.event])
    expect(invoked[1]?.[1]).toBe(invoked[2]?.[1])
  })

  it('is what the main process loads, and the main process sandboxes every page from the start', () => {
    const main = readFileSync(join(top, 'electron', 'main.ts'), 'utf8')
    expect(main).toContain('app.enableSandbox()')
    expect(main).toContain("builtPath('preload.cjs')")
    expect(main).not.toMatch(/no-sandbox|disable-web-security|openExternal|remote/)
  })
})
