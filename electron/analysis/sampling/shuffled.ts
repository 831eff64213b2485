import type { Draw } from './seeded-draws.ts'

/** The same numbers in an order drawn at random, every order equally likely (Durstenfeld, Communications of the ACM 7 (1964) 420). */
export function shuffled(values: Float64Array, draw: Draw): Float64Array {
  const mixed = values.slice()
  for (let at = mixed.length - 1; at > 0; at -= 1) {
    const other = Math.floor(draw() * (at + 1))
    const kept = mixed[at] as number
    mixed[at] = mixed[other] as number
    mixed[other] = kept
  }
  return mixed
}
