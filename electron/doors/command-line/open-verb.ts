import { spawn } from 'node:child_process'
import { join, resolve } from 'node:path'
import { chooseWindow, surroundings, whyNoWindow } from '../opening/choose-window.ts'
import { binaryPlaces } from '../opening/electron-binary.ts'
import { installedBrowser } from '../opening/installed-browser.ts'
import { showAddress, showInBrowser } from '../opening/show-page.ts'
import { openPageServer } from '../page/page-server.ts'
import { ask, type Said, type Surroundings, type Verb, withProgram } from './verb.ts'

/** Runs the desktop window until it is closed; answers its exit code. */
function runWindow(binary: string, record: string | null, { builtFolder, stop }: Surroundings): Promise<number> {
  return new Promise((done, fail) => {
    const words = [join(builtFolder, 'main.mjs'), ...(record === null ? [] : ['--record', record])]
    const child = spawn(binary, words, { stdio: ['ignore', 'inherit', 'inherit'] })
    stop.addEventListener('abort', () => child.kill(), { once: true })
    child.on('error', fail)
    child.on('close', (code) => done(code ?? 0))
  })
}

/** Serves the page until its window is closed or the program is told to stop. */
function runPage(record: string | null, { options }: Said, around: Surroundings): Promise<number> {
  const folder = typeof options.records === 'string' ? resolve(around.here, options.records) : undefined
  return withProgram(around, folder, async (begun) => {
    if (record !== null) await ask(begun, 'records.open', { path: record, readOnly: false })
    const page = await openPageServer({ behind: begun.behind, pageFolder: join(around.builtFolder, 'renderer') })
    try {
      const mayShow = options['no-browser'] !== true && whyNoWindow(surroundings()) === null
      const browser = mayShow ? installedBrowser() : null
      const shown = browser !== null && (await showInBrowser(browser, page, begun.program.scratchFolder, around.stop))
      if (!shown) await showAddress(page, around.print, around.input, around.stop)
    } finally {
      await page.close()
    }
    return 0
  })
}

/** Opens the program: in its desktop window where that can be had, else as a page. */
export const opening: Verb = {
  name: 'open',
  follows: '[RECORD.wmk]',
  does: 'open the program, on a record when one is named',
  fewest: 0,
  most: 1,
  options: {
    page: { type: 'boolean' },
    window: { type: 'boolean' },
    'no-browser': { type: 'boolean' },
    records: { type: 'string' },
  },
  act: async (said, around) => {
    const [named] = said.words
    const record = named === undefined ? null : resolve(around.here, named)
    if (said.options.page === true) return runPage(record, said, around)
    const places = binaryPlaces(around.builtFolder)
    const choice = chooseWindow(surroundings(), places, said.options.window === true, around.say)
    if ('binary' in choice) return runWindow(choice.binary, record, around)
    around.say(`Opening as a page: ${choice.asPageBecause}.`)
    return runPage(record, said, around)
  },
}
