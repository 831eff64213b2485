import type { Problem, ProblemCode } from './problem.ts'

/**
 * Thrown inside the main process; a door turns it into a `Problem`. Apart from the schema, so that the page's first
 * script carries no schema library.
 */
export class ProblemError extends Error {
  readonly problem: Problem
  constructor(
    code: ProblemCode,
    message: string,
    more: { field?: string | undefined; instead?: string[] | undefined; cause?: unknown } = {},
  ) {
    super(message, { cause: more.cause })
    this.name = 'ProblemError'
    this.problem = {
      code,
      message,
      ...(more.field === undefined ? {} : { field: more.field }),
      ...(more.instead === undefined ? {} : { instead: more.instead }),
    }
  }
}
