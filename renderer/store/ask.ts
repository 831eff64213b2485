import type { RequestInput, RequestName, RequestOutput } from '../../shared-types/contract.ts'
import type { Problem } from '../../shared-types/problem.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Acknowledgement } from '../../shared-types/record.ts'
import { door } from './door.ts'
import { acknowledge, useRecordStore } from './record-store.ts'

export type ChangingName = { [N in RequestName]: RequestOutput<N> extends Acknowledgement ? N : never }[RequestName]
export type ChangeInput<N extends ChangingName> = Omit<RequestInput<N>, 'commandId'>

/** Asks the main process; throws a `ProblemError` the caller shows where it arose. */
export async function ask<N extends RequestName>(name: N, input: RequestInput<N>): Promise<RequestOutput<N>> {
  const reply = await door().ask(name, input)
  if ('problem' in reply) throw new ProblemError(reply.problem.code, reply.problem.message, reply.problem)
  return reply.value
}

/** Sends one change of the record and waits until it is durable. Sent once more when the answer was lost: the id makes that safe. */
export async function change<N extends ChangingName>(name: N, input: ChangeInput<N>): Promise<Acknowledgement> {
  const withId = { ...input, commandId: crypto.randomUUID() } as RequestInput<N>
  let reply = await door().ask<N>(name, withId)
  if ('problem' in reply && reply.problem.code === 'internal') reply = await door().ask<N>(name, withId)
  if ('problem' in reply) throw new ProblemError(reply.problem.code, reply.problem.message, reply.problem)
  const acknowledgement = reply.value as Acknowledgement
  acknowledge(acknowledgement)
  return acknowledgement
}

/** Loads the open record with its panels and parts; call after opening, and when the panel list could have changed. */
export async function loadRecord(): Promise<void> {
  const record = await ask('record.view', {})
  const [panelList, partList, cautions] = await Promise.all([
    ask('lists.panels', {
      body: record.particulars.body,
      level: record.commission.level,
      conditions: record.particulars.conditions,
    }),
    ask('lists.parts', {}),
    ask('lists.cautions', {}),
  ])
  useRecordStore.setState({ record, panelList, partList, cautions, problem: null })
}

/** Turns whatever was thrown into a problem with a message a user can act on. */
export function problemOf(thrown: unknown): Problem {
  if (thrown instanceof ProblemError) return thrown.problem
  return { code: 'internal', message: thrown instanceof Error ? thrown.message : String(thrown) }
}
