import { assignedValue, checkCharacter, PLACE_WEIGHTS, UNREADABLE } from './check-digit.ts'

interface Completions {
  readonly list: readonly string[]
  readonly count: bigint
}

/**
 * Numbers that fill the unreadable places with the characters each place allows. With `checked`, only those whose check
 * digit is right. Counted exactly by the remainders that can still be reached from each place; listed in order of the
 * alphabet, at most `most`.
 */
export function completionsOf(number: string, allowed: readonly string[], checked: boolean, most: number): Completions {
  const choices = [...number].map((character, place) => (character === UNREADABLE ? (allowed[place] ?? '') : character))
  const checkPlaces = checked ? [...(choices[8] ?? '')] : ['']
  const runs = checkPlaces.map((check) => {
    const filled = choices.map((choice, place) => (checked && place === 8 ? check : choice))
    return { filled, ways: waysFrom(filled, checked ? '0123456789X'.indexOf(check) : null) }
  })
  const list: string[] = []
  for (const { filled, ways } of runs) listFrom(filled, ways, checked, most, list)
  return { list: list.sort(), count: runs.reduce((sum, { ways }) => sum + (ways[0]?.[0] ?? 0n), 0n) }
}

/** `ways[place][remainder]`: how many fillings of the places from there on bring that remainder to the wanted one. */
function waysFrom(filled: readonly string[], wanted: number | null): bigint[][] {
  const ways: bigint[][] = Array.from({ length: filled.length + 1 }, () => Array<bigint>(11).fill(0n))
  ways[filled.length] = Array.from({ length: 11 }, (_, remainder) =>
    wanted === null || remainder === wanted ? 1n : 0n,
  )
  for (let place = filled.length - 1; place >= 0; place -= 1) {
    for (let remainder = 0; remainder < 11; remainder += 1) {
      let sum = 0n
      for (const character of filled[place] ?? '') sum += ways[place + 1]?.[moved(remainder, place, character)] ?? 0n
      const row = ways[place]
      if (row !== undefined) row[remainder] = sum
    }
  }
  return ways
}

const moved = (remainder: number, place: number, character: string): number =>
  place === 8 ? remainder : (remainder + (PLACE_WEIGHTS[place] ?? 0) * assignedValue(character)) % 11

function listFrom(
  filled: readonly string[],
  ways: readonly bigint[][],
  checked: boolean,
  most: number,
  into: string[],
) {
  const walk = (place: number, remainder: number, before: string): void => {
    if (into.length >= most || (ways[place]?.[remainder] ?? 0n) === 0n) return
    if (place === filled.length) {
      if (!checked || checkCharacter(remainder) === before[8]) into.push(before)
      return
    }
    for (const character of filled[place] ?? '') walk(place + 1, moved(remainder, place, character), before + character)
  }
  walk(0, 0, '')
}
