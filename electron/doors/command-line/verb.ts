import type { ParseArgsConfig } from 'node:util'
import type { RequestInput, RequestName, RequestOutput } from '../../../shared-types/contract.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { BegunProgram } from '../door-to-program.ts'

/** What a verb may touch of the world; tests hand in their own. */
export interface Surroundings {
  /** Folder the user stands in; paths are meant from there. */
  readonly here: string
  /** Folder of the built program. */
  readonly builtFolder: string
  readonly input: NodeJS.ReadableStream
  /** One line, or a whole document, on the output. */
  print(text: string): void
  /** One line on the error stream. */
  say(line: string): void
  /** Starts a program whose new records go into a folder; the user's own when left out. */
  begin(recordsFolder?: string): BegunProgram
  /** Aborted when the program is told to stop. */
  readonly stop: AbortSignal
}

export interface Said {
  readonly words: readonly string[]
  readonly options: { readonly [name: string]: string | boolean | undefined }
}

/** One verb of the command line. */
export interface Verb {
  readonly name: string
  /** What follows it, for the help: `RECORD PHOTOGRAPH...`. */
  readonly follows: string
  readonly does: string
  readonly fewest: number
  readonly most: number
  readonly options: NonNullable<ParseArgsConfig['options']>
  /** Does it and answers the exit code. */
  act(said: Said, around: Surroundings): Promise<number>
}

/** Wrong words on the command line, as against a problem of the work itself. */
export class WrongWords extends Error {}

/** Asks the program as a window would; throws the problem it answers. */
export async function ask<N extends RequestName>(
  { behind }: BegunProgram,
  name: N,
  input: RequestInput<N>,
): Promise<RequestOutput<N>> {
  const answered = await behind.ask(name, input)
  if ('problem' in answered) throw new ProblemError(answered.problem.code, answered.problem.message, answered.problem)
  return answered.value as RequestOutput<N>
}

/** Runs with a program of its own and ends it, whatever happens. */
export async function withProgram<Outcome>(
  around: Surroundings,
  recordsFolder: string | undefined,
  act: (begun: BegunProgram) => Promise<Outcome>,
): Promise<Outcome> {
  const begun = around.begin(recordsFolder)
  try {
    return await act(begun)
  } finally {
    await begun.program.end()
  }
}
