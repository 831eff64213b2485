import { randomUUID } from 'node:crypto'
import type { z } from 'zod'
import { type RequestInput, type RequestName, requests } from '../../shared-types/contract.ts'
import { ProblemError } from '../../shared-types/problem.ts'
import type { Program, UseCase, UseCases } from '../use-cases/program.ts'
import type { Answer } from './behind-the-door.ts'
import { checkInputBounds } from './input-bounds.ts'

const isRequestName = (name: string): name is RequestName => Object.hasOwn(requests, name)

/** Turns the first thing a schema objects to into words, with the path of the field. */
function refusal(error: z.ZodError): ProblemError {
  const issue = error.issues[0]
  if (issue === undefined) return new ProblemError('input-refused', 'The request was refused. Check it and send again.')
  const unknown = issue.code === 'unrecognized_keys' ? (issue.keys[0] ?? '') : null
  const field = [...issue.path.map(String), ...(unknown === null ? [] : [unknown])].join('.')
  const shown = field.slice(0, 200)
  const message =
    unknown === null
      ? `${shown === '' ? 'The request' : `"${shown}"`} was refused: ${issue.message.slice(0, 300)}. Correct it and try again.`
      : `"${shown}" is not part of this request. Leave it out and try again.`
  return new ProblemError('input-refused', message, { field: shown === '' ? undefined : shown })
}

/** Says what went wrong in words for the user; what only a developer can read goes to the error stream. */
function problemOf(thrown: unknown, name: string): Answer {
  if (thrown instanceof ProblemError) return { problem: thrown.problem }
  const reference = randomUUID().slice(0, 8)
  process.stderr.write(
    `[${reference}] ${name}: ${thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown)}\n`,
  )
  return {
    problem: {
      code: 'internal',
      message:
        'The program failed at this step. Everything it confirmed before is kept. Try again; if it fails again, ' +
        `close the record and open it once more. The program's error output has the details under ${reference}.`,
    },
  }
}

/**
 * Answers one request of the contract: finds it, checks its input, runs its use case. Never throws, and answers nothing
 * but a value or a typed problem.
 */
export async function answer(program: Program, useCases: UseCases, name: string, rawInput: unknown): Promise<Answer> {
  if (!isRequestName(name)) {
    return { problem: { code: 'not-found', message: `The program knows no request "${name.slice(0, 80)}".` } }
  }
  try {
    checkInputBounds(rawInput)
    const checked = requests[name].input.safeParse(rawInput)
    if (!checked.success) throw refusal(checked.error)
    const act = useCases[name] as UseCase<RequestName>
    const value: unknown = await act(program, checked.data as RequestInput<RequestName>)
    return { value: value ?? null }
  } catch (thrown) {
    return problemOf(thrown, name)
  }
}
