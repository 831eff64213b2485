import type { BrowserWindow, BrowserWindowConstructorOptions, IpcMain, Protocol, Session, WebContents } from 'electron'
import type { Serving } from '../serving/serve.ts'
import { serveWindow } from './window-content.ts'
import { answerWindow } from './window-messages.ts'
import { WINDOW_ORIGIN } from './window-names.ts'

/** The parts of Electron a window needs; tests hand in stand-ins. */
export interface DesktopParts {
  readonly BrowserWindow: new (
    options: BrowserWindowConstructorOptions,
  ) => Pick<BrowserWindow, 'loadURL' | 'once' | 'show'> & {
    readonly webContents: WebContents
  }
  readonly ipcMain: Pick<IpcMain, 'handle' | 'removeHandler'>
  readonly session: Session
  readonly protocol: Pick<Protocol, 'handle'>
}

/** How the page is confined: no Node.js in it, its own world for the preload, the operating system's sandbox. */
export const windowOptions = (preload: string): BrowserWindowConstructorOptions => ({
  width: 1440,
  height: 900,
  minWidth: 1000,
  minHeight: 700,
  show: false,
  autoHideMenuBar: true,
  title: 'Witnessmark',
  webPreferences: {
    preload,
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    experimentalFeatures: false,
    webviewTag: false,
    navigateOnDragDrop: false,
    spellcheck: false,
  },
})

/** Nothing of the outside: no permission, no network but our own scheme, no download without the user's say. */
function confineSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, decide) => decide(false))
  session.setPermissionCheckHandler(() => false)
  session.setDevicePermissionHandler(() => false)
  session.webRequest.onBeforeRequest((details, decide) => {
    const isOwn = [`${WINDOW_ORIGIN}/`, `blob:${WINDOW_ORIGIN}/`, 'data:', 'devtools:'].some((start) =>
      details.url.startsWith(start),
    )
    decide({ cancel: !isOwn })
  })
}

/** The window stays on its page and opens no other. */
export function confineContents(contents: Pick<WebContents, 'on' | 'setWindowOpenHandler'>): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }))
  contents.on('will-navigate', (event) => event.preventDefault())
  contents.on('will-redirect', (event) => event.preventDefault())
  contents.on('will-attach-webview', (event) => event.preventDefault())
}

/** Opens the one window of the program, on its own page. */
export async function openDesktopWindow(parts: DesktopParts, serving: Serving, preload: string): Promise<void> {
  confineSession(parts.session)
  serveWindow(parts.protocol, serving)
  const window = new parts.BrowserWindow(windowOptions(preload))
  confineContents(window.webContents)
  answerWindow(parts.ipcMain, window.webContents, serving.behind)
  window.once('ready-to-show', () => window.show())
  await window.loadURL(`${WINDOW_ORIGIN}/`)
}
