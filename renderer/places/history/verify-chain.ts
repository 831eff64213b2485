import { ask } from '../../store/ask.ts'

/** Recomputes the chain of hashes and says in one sentence whether it holds, and what to do when it does not. */
export async function verifyChain(): Promise<string> {
  const { rows, sound, firstBad } = await ask('record.verify', {})
  return sound
    ? `The journal is whole: ${rows} entries, each bound to the one before it by its SHA-256.`
    : `The journal is not whole: entry ${firstBad ?? 'unknown'} does not fit the one before it. Keep this record as it is, and go on from a copy.`
}
