import { type Browser, chromium, type Page } from 'playwright'

/** The browser the tests drive: the one the test configuration found, else the one playwright keeps for itself. */
export async function openBrowser(): Promise<Browser> {
  const installed = process.env.WITNESSMARK_TEST_BROWSER
  return chromium.launch({
    ...(installed === undefined || installed === '' ? {} : { executablePath: installed }),
    args: [
      ...['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--force-color-profile=srgb'],
      // Letters are then as wide with and without windows.
      '--font-render-hinting=none',
    ],
  })
}

/** Which browser draws: its version, and whether as the one without windows, whose edges of letters differ by a shade. */
export function nameOf(browser: Browser | null): string {
  const file = process.env.WITNESSMARK_TEST_BROWSER || chromium.executablePath()
  return `${browser?.version()}${/headless.?shell/.test(file) ? ', without windows' : ''}`
}

/** Collects what must never happen on any page: script errors, dialogs, and requests that leave this machine. */
export function watch(page: Page): { readonly faults: string[] } {
  const faults: string[] = []
  page.on('pageerror', (fault) => faults.push(`script error: ${fault.message}`))
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(`console: ${message.text()} ${message.location().url}`)
  })
  page.on('dialog', (dialog) => {
    faults.push(`dialog: ${dialog.message()}`)
    void dialog.dismiss()
  })
  page.on('request', (request) => {
    const { protocol, hostname } = new URL(request.url())
    if (['http:', 'https:', 'ws:', 'wss:'].includes(protocol) && hostname !== '127.0.0.1') {
      faults.push(`request to ${request.url()}`)
    }
  })
  return { faults }
}

/** Waits until nothing on the page says it is busy, its picture is drawn, and it has nothing left to do before a key. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null)
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        requestAnimationFrame(() =>
          requestAnimationFrame(() => requestIdleCallback(() => setTimeout(done, 20), { timeout: 500 })),
        )
      }),
  )
}

/** Goes to a place with its key, and waits until the place itself stands there and hears its own keys. */
export async function goToPlace(page: Page, figure: string, name: string): Promise<void> {
  await page.keyboard.press(`Alt+${figure}`)
  await page.waitForFunction((title) => {
    const heads = [...document.querySelectorAll<HTMLElement>('#working-area > h1')]
    return heads.some((head) => head.textContent === title && head.nextElementSibling !== null)
  }, name)
  await settled(page)
}
