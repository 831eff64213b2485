import type { z } from 'zod'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { randomSample } from '../../../shared-types/sampling.ts'
import { type Draw, seededDraw } from './seeded-draws.ts'

/**
 * Draws without repetition, every choice equally likely (Fisher-Yates, stopped early), in the order drawn.
 * @throws ProblemError when more are wanted than there are.
 */
export function drawSample<Item>(from: readonly Item[], wanted: number, draw: Draw): Item[] {
  if (wanted > from.length)
    throw new ProblemError('input-refused', `There are only ${from.length} to draw from: draw fewer.`, {
      field: 'draw',
    })
  const left = [...from]
  return Array.from({ length: wanted }, () => left.splice(Math.floor(draw() * left.length), 1)).flat()
}

/** A sample that can be drawn again from its seed, so that nobody can say it was picked. */
export function seededSample({
  from,
  draw,
  seed,
}: z.infer<typeof randomSample.input>): z.infer<typeof randomSample.output> {
  return {
    drawn: drawSample(from, draw, seededDraw(seed)),
    seed,
    method: 'Fisher-Yates with xoshiro128** numbers from the seed',
  }
}
