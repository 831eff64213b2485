import { randomUUID } from 'node:crypto'
import type { Page } from 'playwright'
import type { Reply, RequestInput, RequestName, RequestOutput } from '../../shared-types/contract.ts'
import { requests } from '../../shared-types/contract.ts'

/** Asks the program through the page's own door, with the page's own cookie. Throws with the problem's words. */
export async function askThrough<N extends RequestName>(
  page: Page,
  name: N,
  input: Omit<RequestInput<N>, 'commandId'>,
): Promise<RequestOutput<N>> {
  const whole = requests[name].changes ? { ...input, commandId: randomUUID() } : input
  const reply = await page.evaluate(
    async ([address, body]) => {
      const answer = await fetch(address, { method: 'POST', headers: { 'content-type': 'application/json' }, body })
      return answer.text()
    },
    [`/ask/${name}`, JSON.stringify(whole)] as const,
  )
  const said = JSON.parse(reply) as Reply<N>
  if ('problem' in said) throw new Error(`${name}: ${said.problem.message}`)
  return said.value
}
