import type { TapeAnswer } from './tape-answer.ts'

/** Caption of the exhibit: the result, its coverage and what it decides, unless the user wrote another. */
export function captionOf(written: string, { headline, coverage, verdict }: TapeAnswer): string {
  if (written.trim() !== '') return written
  return `${headline} (${coverage}).${verdict === '' ? '' : ` ${verdict}`}`
}
