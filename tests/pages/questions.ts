import type { Page, Request } from 'playwright'

/** Longest pause of a place before it asks for something, ms, with room for a slow machine. */
const PAUSE_MS = 600

/**
 * Listens from now on to what a page asks the program. The answer waits until nothing is unanswered and nothing was asked
 * for a while by the page's own clock, which a busy machine holds up as it holds up what the page does.
 */
export function heedQuestions(page: Page): (pauseMs?: number) => Promise<void> {
  let asked = 0
  const open = new Set<Request>()
  page.on('request', (request) => {
    if (!request.url().includes('/ask/')) return
    asked += 1
    open.add(request)
  })
  page.on('requestfinished', (request) => open.delete(request))
  page.on('requestfailed', (request) => open.delete(request))
  return async (pauseMs = PAUSE_MS) => {
    for (let turn = 0; turn < 50; turn++) {
      const before = asked
      await page.evaluate((pause) => new Promise((done) => setTimeout(done, pause)), pauseMs)
      if (open.size === 0 && asked === before) return
    }
    throw new Error(`The page still asks: ${open.size} questions are open.`)
  }
}
