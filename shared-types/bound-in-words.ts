import type { z } from 'zod'
import { thousands } from './thousands.ts'

/** A bound that was overstepped, said for a person, without a full stop; undefined where it is no bound, or the schema has words of its own. */
export function boundInWords(issue: z.core.$ZodRawIssue): string | undefined {
  if (issue.code !== 'too_small' && issue.code !== 'too_big') return undefined
  const least = issue.code === 'too_small'
  const bound = Number(least ? issue.minimum : issue.maximum)
  const figure = thousands(String(bound))
  const atTheBound = `at ${least ? 'least' : 'most'} ${figure}`
  if (issue.origin === 'string')
    return least && bound === 1 ? 'This cannot be left empty' : `Write ${atTheBound} characters`
  if (issue.origin === 'array') return `Give ${atTheBound}`
  if (issue.inclusive === false) return `This must be ${least ? 'more' : 'less'} than ${figure}`
  return `This must be ${figure} or ${least ? 'more' : 'less'}`
}
