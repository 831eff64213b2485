import { randomUUID } from 'node:crypto'
import { type RequestInput, type RequestName, requests } from '../../shared-types/contract.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Program, UseCase, UseCases } from '../use-cases/program.ts'
import type { Answer } from './behind-the-door.ts'
import { checkedBy } from './checked-input.ts'

const isRequestName = (name: string): name is RequestName => Object.hasOwn(requests, name)

/** Says what went wrong in words for the user; what only a developer can read goes to the error stream. */
function problemOf(thrown: unknown, name: string): Answer {
  if (thrown instanceof ProblemError) return { problem: thrown.problem }
  const reference = randomUUID().slice(0, 8)
  const details = thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown)
  process.stderr.write(`[${reference}] ${name}: ${details}\n`)
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
    const input = checkedBy(requests[name].input, rawInput) as RequestInput<RequestName>
    const act = useCases[name] as UseCase<RequestName>
    const value: unknown = await act(program, input)
    return { value: value ?? null }
  } catch (thrown) {
    return problemOf(thrown, name)
  }
}
