import { createHash } from 'node:crypto'
import serialize from 'canonicalize'
import { ProblemError } from '../../shared-types/problem-error.ts'

/**
 * Canonical JSON after RFC 8785. Throws `input-refused` for what that standard cannot write: a number that is not
 * finite, or half of a surrogate pair.
 */
export function canonical(value: unknown): string {
  try {
    const text = serialize(value)
    if (text !== undefined) return text
  } catch (fault) {
    throw new ProblemError(
      'input-refused',
      'The text holds half of a character, or a number is not finite. Type or paste it again.',
      { cause: fault },
    )
  }
  throw new ProblemError('input-refused', 'There is nothing to write down.')
}

/** SHA-256 (FIPS 180-4) of the parts one after the other, text as UTF-8; lower-case hexadecimal. */
export function sha256(...parts: readonly (string | Uint8Array)[]): string {
  const hash = createHash('sha256')
  for (const part of parts) hash.update(part)
  return hash.digest('hex')
}
