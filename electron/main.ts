import { mkdtempSync, rmSync } from 'node:fs'
import { homedir, tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from 'electron'
import { beginProgram } from './doors/door-to-program.ts'
import { openDesktopWindow } from './doors/window/desktop-window.ts'
import { declareScheme } from './doors/window/window-content.ts'
import { builtPath } from './places-on-disk.ts'
import { useCases } from './use-cases/use-cases.ts'

app.enableSandbox()
declareScheme(protocol)
Menu.setApplicationMenu(null)

const { values } = parseArgs({ args: process.argv.slice(2), options: { record: { type: 'string' } }, strict: false })
const scratchFolder = mkdtempSync(join(tmpdir(), 'witnessmark-'))
const { program, behind } = beginProgram({ recordsFolder: join(homedir(), 'Witnessmark'), scratchFolder }, useCases)

app.on('window-all-closed', () => app.quit())
let ended = false
app.on('will-quit', (event) => {
  if (ended) return
  event.preventDefault()
  program.end().finally(() => {
    ended = true
    rmSync(scratchFolder, { recursive: true, force: true })
    app.quit()
  })
})

async function open(): Promise<void> {
  if (typeof values.record === 'string') {
    const opened = await behind.ask('records.open', { path: resolve(values.record), readOnly: false })
    if ('problem' in opened) dialog.showErrorBox('Witnessmark', opened.problem.message)
  }
  await openDesktopWindow(
    { BrowserWindow, ipcMain, protocol, session: session.defaultSession },
    { behind, pageFolder: builtPath('renderer') },
    builtPath('preload.cjs'),
  )
}

// Not awaited here: Electron becomes ready only after this module has run to its end.
app
  .whenReady()
  .then(open)
  .catch((fault: unknown) => {
    process.stderr.write(`${String(fault)}\n`)
    app.exit(1)
  })
