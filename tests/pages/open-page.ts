import type { Browser, BrowserContextOptions, Page } from 'playwright'
import { openBrowser, watch } from './browser.ts'
import { Keyboard } from './keyboard.ts'
import type { StartedProgram } from './started-program.ts'

let standing: Promise<Browser> | null = null

/** The browser of this process, started for the first test that asks; it ends with the process. */
export function browserOfWorker(): Promise<Browser> {
  standing ??= openBrowser()
  return standing
}

/** The program with its page open in a browser that knows nothing of other tests. */
export interface OpenPage {
  readonly program: StartedProgram
  readonly page: Page
  readonly keyboard: Keyboard
  /** What must never happen on a page, as far as it did. */
  readonly faults: readonly string[]
  /** Closes the page and ends the program with its folder. */
  close(): Promise<void>
}

interface Asked extends BrowserContextOptions {
  /** What a mouse would do is then a fault of the test. */
  readonly byKeyboard?: boolean
  /** How long the test waits for anything on the page, ms. */
  readonly timeoutMs?: number
  /** Done to the page before it is filled. */
  readonly before?: (page: Page) => Promise<void> | void
}

/** Starts a program and opens its page, 1440 by 900 unless asked otherwise; waits until its places are there. */
export async function openPage(start: () => Promise<StartedProgram>, asked: Asked = {}): Promise<OpenPage> {
  const { byKeyboard = false, timeoutMs, before, ...look } = asked
  const program = await start()
  try {
    const context = await (await browserOfWorker()).newContext({ viewport: { width: 1440, height: 900 }, ...look })
    const page = await context.newPage()
    if (byKeyboard) page.mouse.click = () => Promise.reject(new Error('This is done without a mouse.'))
    if (timeoutMs !== undefined) page.setDefaultTimeout(timeoutMs)
    const { faults } = watch(page)
    await before?.(page)
    await page.goto(program.address)
    await page.getByRole('navigation', { name: 'Places' }).waitFor()
    const close = async () => {
      await context.close()
      await program.stop()
    }
    return { program, page, keyboard: new Keyboard(page), faults, close }
  } catch (fault) {
    await program.stop()
    throw fault
  }
}
