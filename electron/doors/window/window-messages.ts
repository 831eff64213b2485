import type { IpcMain, IpcMainInvokeEvent, WebContents } from 'electron'
import type { Answer, BehindTheDoor } from '../behind-the-door.ts'
import { WINDOW_ORIGIN, windowMessages } from './window-names.ts'

type Asker = Pick<IpcMainInvokeEvent, 'senderFrame' | 'sender'>

/** True for the main frame of this very window showing our own page; a frame within it or a strange page is refused. */
function isOurs(asker: Asker, contents: Pick<WebContents, 'id' | 'mainFrame'>): boolean {
  const frame = asker.senderFrame
  return (
    frame !== null &&
    asker.sender.id === contents.id &&
    frame === contents.mainFrame &&
    frame.url.startsWith(`${WINDOW_ORIGIN}/`)
  )
}

/** Answers the window's requests and tells it every event. */
export function answerWindow(
  ipcMain: Pick<IpcMain, 'handle' | 'removeHandler'>,
  contents: Pick<WebContents, 'id' | 'mainFrame' | 'send' | 'isDestroyed' | 'once'>,
  behind: BehindTheDoor,
): void {
  ipcMain.handle(windowMessages.ask, async (asker, name: unknown, input: unknown): Promise<Answer> => {
    if (!isOurs(asker, contents) || typeof name !== 'string') {
      return { problem: { code: 'not-allowed-here', message: 'Only the window of the program itself may ask.' } }
    }
    return behind.ask(name, input)
  })
  const deaf = behind.listen((event) => {
    if (!contents.isDestroyed()) contents.send(windowMessages.event, event)
  })
  contents.once('destroyed', () => {
    deaf()
    ipcMain.removeHandler(windowMessages.ask)
  })
}
