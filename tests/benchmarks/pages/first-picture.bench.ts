import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { build } from 'esbuild'
import type { Browser, Page } from 'playwright'
import { openBrowser, settled } from '../../pages/browser.ts'
import { startOnDemonstration } from '../../pages/started-program.ts'

const ROUNDS = 9

/** Serves a page that does nothing but mount one word with React, built for production. */
async function serveEmptyPage() {
  const built = await build({
    stdin: {
      contents:
        "import { createRoot } from 'react-dom/client'\nimport { createElement } from 'react'\ncreateRoot(document.getElementById('root')).render(createElement('p', null, 'empty'))",
      resolveDir: process.cwd(),
    },
    bundle: true,
    minify: true,
    write: false,
    format: 'esm',
    define: { 'process.env.NODE_ENV': '"production"' },
  })
  const script = built.outputFiles[0]?.text ?? ''
  const page =
    '<!doctype html><html lang="en"><title>empty</title><div id="root"></div><script type="module" src="/page.js"></script>'
  const server = createServer((asked, answer) => {
    const isScript = asked.url === '/page.js'
    answer.writeHead(200, { 'content-type': isScript ? 'text/javascript' : 'text/html', 'cache-control': 'no-store' })
    answer.end(isScript ? script : page)
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  const { port } = server.address() as AddressInfo
  return { address: `http://127.0.0.1:${port}/`, stop: () => server.close() }
}

/** Milliseconds from the start of a visit. */
interface Visit {
  /** First picture with content (W3C Paint Timing): of the program its frame, the rail and the working area. */
  readonly picture: number
  /** First words that can be read, in their own face (first candidate of W3C Largest Contentful Paint). */
  readonly words: number
  /** First picture in which the page hears its keys and shows the open record and its place; null for a page without. */
  readonly ready: number | null
}

/**
 * In the page, before its own scripts: notes when rail and working area are there, and when the page is at work with the
 * open record and its place.
 */
function noteTimes(): void {
  const hasFrame = () => document.querySelectorAll('.program > nav.rail, .program > .place > main').length === 2
  const isReady = () => {
    const title = document.querySelector('.program:not([inert]) .head-title')?.textContent ?? 'No record is open'
    const place = document.querySelector('#working-area > h1')?.nextElementSibling ?? null
    return title !== 'No record is open' && place !== null
  }
  const watcher = new MutationObserver(() => {
    if (!('frameAt' in window) && hasFrame()) Object.assign(window, { frameAt: performance.now() })
    if (!isReady()) return
    watcher.disconnect()
    requestAnimationFrame(() => {
      const drawn = new MessageChannel()
      drawn.port1.onmessage = () => Object.assign(window, { readyAt: performance.now() })
      // What stands now is drawn in this frame; the message is heard after it was.
      drawn.port2.postMessage(null)
    })
  })
  watcher.observe(document, { childList: true, subtree: true, characterData: true, attributes: true })
}

/** In the page: the times of its first picture and its first words. */
const paintTimes = (): Promise<{ picture: number; words: number }> =>
  new Promise((done) => {
    let picture: number | null = null
    let words: number | null = null
    const observer = new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) {
        if (entry.name === 'first-contentful-paint') picture ??= entry.startTime
        if (entry.entryType === 'largest-contentful-paint') words ??= entry.startTime
      }
      if (picture !== null && words !== null) done({ picture, words })
    })
    observer.observe({ type: 'paint', buffered: true })
    observer.observe({ type: 'largest-contentful-paint', buffered: true })
  })

/** Waits until the page is at work with its record, and answers when its frame stood and when that was. */
async function atWork(page: Page): Promise<{ frameAt: number; readyAt: number }> {
  const noted = await page.waitForFunction(() => {
    const { frameAt, readyAt } = window as unknown as { frameAt?: number; readyAt?: number }
    return frameAt === undefined || readyAt === undefined ? null : { frameAt, readyAt }
  })
  return (await noted.jsonValue()) ?? { frameAt: Number.NaN, readyAt: Number.NaN }
}

/**
 * Visits a page in a fresh browser context. `entry` is visited before and not measured: it exchanges the token for the
 * cookie, and leads to the page, which comes to rest before it is left, so that its own work is not measured with the next.
 */
async function visit(browser: Browser, entry: string, hasRecord: boolean): Promise<Visit> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
  try {
    const page = await context.newPage()
    await page.addInitScript(noteTimes)
    await page.goto(entry)
    if (hasRecord) await atWork(page)
    else await page.getByText('empty').waitFor()
    await settled(page)
    await page.goto(new URL('/', entry).href)
    const times = await page.evaluate(paintTimes)
    if (!hasRecord) return { ...times, ready: null }
    const { frameAt, readyAt } = await atWork(page)
    if (!(frameAt <= times.picture)) throw new Error('The first picture was not the frame of the program.')
    return { ...times, ready: readyAt }
  } finally {
    await context.close()
  }
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN

function row(what: string, ours: readonly number[], theirs: readonly number[], aim: number | string) {
  return {
    what: `${what}, median of ${ROUNDS} pairs`,
    ours: `${median(ours).toFixed(0)} ms`,
    reference: `${median(theirs).toFixed(0)} ms, empty React page`,
    ratio: median(ours) / median(theirs),
    aim,
  }
}

/** First picture of the program's page with a record open, against an empty React page; paired, the first pair not counted. */
export async function firstPictureOfPage() {
  const program = await startOnDemonstration()
  const empty = await serveEmptyPage()
  const browser = await openBrowser()
  try {
    const ours: Visit[] = []
    const theirs: Visit[] = []
    for (let round = 0; round <= ROUNDS; round++) {
      const [a, b] = [
        await visit(browser, await program.freshAddress(), true),
        await visit(browser, empty.address, false),
      ]
      if (round === 0) continue
      ours.push(a)
      theirs.push(b)
    }
    const [pictures, words] = [theirs.map(({ picture }) => picture), theirs.map((one) => one.words)]
    return [
      row(
        'first picture of the page (rail and working area)',
        ours.map(({ picture }) => picture),
        pictures,
        2,
      ),
      row(
        'first words of the page to be read',
        ours.map((one) => one.words),
        words,
        '-',
      ),
      row(
        'keys heard, record and place shown',
        ours.map(({ ready }) => ready ?? Number.NaN),
        pictures,
        '-',
      ),
    ]
  } finally {
    await browser.close()
    empty.stop()
    await program.stop()
  }
}
