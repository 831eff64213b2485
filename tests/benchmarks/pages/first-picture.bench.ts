import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { build } from 'esbuild'
import type { Browser } from 'playwright'
import { openBrowser } from '../../pages/browser.ts'
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

/**
 * Milliseconds from the start of a visit to its first picture with content (W3C Paint Timing), in a fresh browser context.
 * `entry` is visited before and not measured: it exchanges the token for the cookie, and leads to the page.
 */
async function firstPicture(browser: Browser, entry: string): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
  try {
    const page = await context.newPage()
    await page.goto(entry)
    await page.locator('nav, p').first().waitFor()
    await page.goto(new URL('/', entry).href)
    await page.locator('nav, p').first().waitFor()
    return await page.evaluate(
      () =>
        new Promise<number>((done) => {
          new PerformanceObserver((list) => {
            const [seen] = list.getEntriesByName('first-contentful-paint')
            if (seen !== undefined) done(seen.startTime)
          }).observe({ type: 'paint', buffered: true })
        }),
    )
  } finally {
    await context.close()
  }
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN

/** First picture of the program's page with a record open, against an empty React page; paired, the first pair not counted. */
export async function firstPictureOfPage() {
  const program = await startOnDemonstration()
  const empty = await serveEmptyPage()
  const browser = await openBrowser()
  try {
    const ours: number[] = []
    const theirs: number[] = []
    for (let round = 0; round <= ROUNDS; round++) {
      const [a, b] = [
        await firstPicture(browser, await program.freshAddress()),
        await firstPicture(browser, empty.address),
      ]
      if (round === 0) continue
      ours.push(a)
      theirs.push(b)
    }
    return [
      {
        what: `first picture of the page, median of ${ROUNDS} pairs`,
        ours: `${median(ours).toFixed(0)} ms`,
        reference: `${median(theirs).toFixed(0)} ms, empty React page`,
        ratio: median(ours) / median(theirs),
        aim: 2,
      },
    ]
  } finally {
    await browser.close()
    empty.stop()
    await program.stop()
  }
}
