import type { FasteningCompared, FasteningFound } from '../../../shared-types/fastening.ts'
import { fasteningParts } from '../../../shared-types/fastening.ts'

const plain = (words: string): string => words.trim().replace(/\s+/g, ' ').toLowerCase()

const standing = (expected: string, found: string): FasteningCompared['parts'][number]['standing'] => {
  if (plain(found) === '') return 'not seen'
  if (plain(expected) === '') return 'nothing expected'
  return plain(expected) === plain(found) ? 'agrees' : 'differs'
}

const witnessWords: { readonly [W in FasteningFound['witness']]: string } = {
  'not looked at': 'Whether it was ever undone was not looked at.',
  undisturbed: 'Its witness marks are undisturbed: nothing shows that it was undone since they settled.',
  disturbed: 'Its witness marks are disturbed: it was undone, which says nothing of what it held.',
  'none to see': 'No witness marks are to be seen; that says neither that it was undone nor that it was not.',
}

/**
 * A fastening expected against found, part by part. What was not seen is not fine, and undisturbed marks are no proof that a
 * fastening is the first one (common practice, no source).
 */
export function compareFastening({ expected, expectedBy, found, witness }: FasteningFound): FasteningCompared {
  const parts = fasteningParts.map((part) => ({
    part,
    expected: expected[part].trim(),
    found: found[part].trim(),
    standing: standing(expected[part], found[part]),
  }))
  const named = (which: (typeof parts)[number]['standing']) =>
    parts.filter((each) => each.standing === which).map(({ part }) => part)
  const line = (which: (typeof parts)[number]['standing'], words: string) =>
    named(which).length === 0 ? [] : [`${words}: ${named(which).join(', ')}.`]
  const differs = parts
    .filter((each) => each.standing === 'differs')
    .map(({ part, expected: wanted, found: own }) => `${part} ${own}, expected ${wanted}`)
  return {
    parts,
    differs: differs.length,
    words: [
      ...(differs.length === 0 ? [] : [`Differs: ${differs.join('; ')}.`]),
      ...line('agrees', 'Agrees'),
      ...line('not seen', 'Not seen'),
      ...line('nothing expected', 'Nothing expected'),
      witnessWords[witness],
      ...(named('agrees').length + differs.length > 0 && expectedBy.trim() !== ''
        ? [`Expected by: ${expectedBy.trim()}.`]
        : []),
    ].join(' '),
  }
}
