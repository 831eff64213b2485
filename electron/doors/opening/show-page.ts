import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { TOKEN_LIFETIME_MS } from '../page/entry-tokens.ts'
import type { PageServer } from '../page/page-server.ts'
import { handOver } from './hand-over.ts'

/** A browser that ends sooner than this showed nothing. */
const SHOWN_MS = 3_000

const browserWords = (fileAddress: string, profileFolder: string): string[] => [
  `--app=${fileAddress}`,
  `--user-data-dir=${profileFolder}`,
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-sync',
]

/**
 * Shows the page in a browser's window of its own, with a profile of its own, and waits until it is closed. False when
 * the browser could not show it.
 */
export function showInBrowser(
  browser: string,
  page: PageServer,
  scratchFolder: string,
  stop: AbortSignal,
): Promise<boolean> {
  const paper = handOver(page.freshAddress())
  const began = Date.now()
  const gone = setTimeout(paper.remove, TOKEN_LIFETIME_MS)
  return new Promise((done) => {
    const finish = (shown: boolean) => {
      clearTimeout(gone)
      paper.remove()
      done(shown)
    }
    const child = spawn(browser, browserWords(paper.fileAddress, join(scratchFolder, 'window-profile')), {
      stdio: 'ignore',
    })
    stop.addEventListener('abort', () => child.kill(), { once: true })
    child.on('error', () => finish(false))
    child.on('close', (code) => finish(code === 0 || Date.now() - began > SHOWN_MS))
  })
}

/** Prints an address that opens the page once, and a fresh one at each Enter, until the program is told to stop. */
export async function showAddress(
  page: PageServer,
  say: (line: string) => void,
  keys: NodeJS.ReadableStream,
  stop: AbortSignal,
): Promise<void> {
  const tell = () => say(`Open ${page.freshAddress()}`)
  tell()
  say('It opens once, within two minutes. Enter: a fresh address. Ctrl+C: end.')
  keys.on('data', tell)
  await new Promise<void>((done) => {
    if (stop.aborted) done()
    else stop.addEventListener('abort', () => done(), { once: true })
  })
  keys.off('data', tell)
}
