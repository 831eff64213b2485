import { contextBridge, ipcRenderer } from 'electron'
import type { Door, ProgramEvent } from '../shared-types/contract.ts'
import { WINDOW_ORIGIN, windowMessages } from './doors/window/window-names.ts'

/** The contract, and nothing else, handed to the page of the desktop window. */
const door: Door = {
  ask: (name, input) => ipcRenderer.invoke(windowMessages.ask, name, input),
  async upload(file) {
    const answered = await fetch(`${WINDOW_ORIGIN}/upload?name=${encodeURIComponent(file.name)}`, {
      method: 'PUT',
      body: file,
    })
    const said = (await answered.json()) as { upload?: string; problem?: { message: string } }
    if (said.upload === undefined)
      throw new Error(said.problem?.message ?? 'The file could not be handed in. Try again.')
    return said.upload
  },
  listen(hear) {
    const pass = (_event: unknown, said: ProgramEvent) => hear(said)
    ipcRenderer.on(windowMessages.event, pass)
    return () => ipcRenderer.off(windowMessages.event, pass)
  },
  address: (what) => `/${what}`,
}

contextBridge.exposeInMainWorld('witnessmark', door)
