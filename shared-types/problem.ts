import { z } from 'zod'

/** Every way a request can fail. The message says what the user can do next. */
export const problemCode = z.enum([
  'input-refused',
  'no-record-open',
  'record-in-use',
  'record-foreign',
  'record-newer',
  'record-damaged',
  'record-missing',
  'record-exists',
  'record-unreadable',
  'record-read-only',
  'disk-full',
  'not-found',
  'not-allowed-here',
  'rule-of-the-trade',
  'nothing-to-undo',
  'photograph-refused',
  'cancelled',
  'command-reused',
  'internal',
])
export type ProblemCode = z.infer<typeof problemCode>

/** What crosses a door instead of a value when a request fails. */
export const problem = z.strictObject({
  code: problemCode,
  message: z.string(),
  field: z.string().optional(),
  /** What the user may do instead, as choices the page can offer. */
  instead: z.array(z.string()).optional(),
})
export type Problem = z.infer<typeof problem>
