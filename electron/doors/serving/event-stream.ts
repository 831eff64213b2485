import type { BehindTheDoor } from '../behind-the-door.ts'
import { headersFor } from './headers.ts'

/** A line now and then keeps the connection from being taken for dead. */
const HEARTBEAT_MS = 20_000

/** Events of the program as a server-sent stream, until the listener goes away. */
export function serveEvents(behind: BehindTheDoor): Response {
  let stop = () => {}
  const stream = new ReadableStream<Uint8Array>({
    start(controller) {
      const encoder = new TextEncoder()
      const send = (text: string) => controller.enqueue(encoder.encode(text))
      send(': listening\n\n')
      const deaf = behind.listen((event) => send(`data: ${JSON.stringify(event)}\n\n`))
      const heartbeat = setInterval(() => send(': still here\n\n'), HEARTBEAT_MS)
      stop = () => {
        clearInterval(heartbeat)
        deaf()
      }
    },
    cancel() {
      stop()
    },
  })
  return new Response(stream, { headers: headersFor('bytes', { 'content-type': 'text/event-stream' }) })
}
