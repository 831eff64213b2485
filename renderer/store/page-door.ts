import type { Door, ProgramEvent, Reply, RequestInput, RequestName } from '../../shared-types/contract.ts'

const unreachable =
  'The program does not answer. Your last confirmed change is kept; start the program again and reload this page.'

/** The contract over HTTP on the loopback address; the session cookie was set by the one-time token. */
export function pageDoor(): Door {
  return {
    async ask<N extends RequestName>(name: N, input: RequestInput<N>): Promise<Reply<N>> {
      try {
        const answer = await fetch(`/ask/${name}`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(input),
        })
        return (await answer.json()) as Reply<N>
      } catch {
        return { problem: { code: 'internal', message: unreachable } }
      }
    },
    async upload(file) {
      const answer = await fetch(`/upload?name=${encodeURIComponent(file.name)}`, { method: 'PUT', body: file })
      const said = (await answer.json()) as { upload?: string; problem?: { message: string } }
      if (said.upload === undefined) throw new Error(said.problem?.message ?? unreachable)
      return said.upload
    },
    listen(hear) {
      const source = new EventSource('/events')
      source.onmessage = (message: MessageEvent<string>) => hear(JSON.parse(message.data) as ProgramEvent)
      return () => source.close()
    },
    address: (what) => `/${what}`,
  }
}
