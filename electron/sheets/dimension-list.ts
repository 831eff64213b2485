import { z } from 'zod'
import {
  type BodyDimensionName,
  type BodyDimensions,
  bodyDimensions,
  type DimensionChoice,
  type DimensionList,
  type OwnDimensions,
} from '../../shared-types/body-dimensions.ts'
import { type BodyStyle, bodyStyle } from '../../shared-types/words.ts'
import { once, readList } from './list-file.ts'

const dimensionName = bodyDimensions.keyof()
const words = z.strictObject({
  quantity: z.enum(['length', 'angle']),
  us: z.string().min(1),
  uk: z.string().min(1),
  howUs: z.string().min(1),
  howUk: z.string().min(1),
})
const accepted = z
  .strictObject({ usual: z.number(), least: z.number(), greatest: z.number() })
  .refine(({ usual, least, greatest }) => least < usual && usual < greatest, 'the usual value lies outside its range')

const dimensionFile = z.strictObject({
  title: z.string(),
  sourceStatus: z.string(),
  rangeNote: z.string(),
  words: z.record(dimensionName, words),
  bodies: z.record(bodyStyle, z.record(dimensionName, accepted)),
})

const read = once(() => {
  const file = readList('dimensions.json', dimensionFile, 'body-plans')
  const lists = bodyStyle.options.map((body): [BodyStyle, readonly DimensionChoice[]] => [
    body,
    dimensionName.options.map((name) => ({ name, ...file.words[name], ...file.bodies[body][name] })),
  ])
  return new Map(lists)
})

/** Every dimension of a body: its usual value, the range that is accepted, and how it is taken. mm or degrees. */
export function dimensionList(body: BodyStyle): DimensionList {
  return { body, dimensions: read().get(body) ?? [] }
}

/** One dimension of a body. */
export function dimensionChoice(body: BodyStyle, name: BodyDimensionName): DimensionChoice {
  const found = dimensionList(body).dimensions.find((choice) => choice.name === name)
  if (found === undefined) throw new Error(`The list of dimensions does not hold ${name} of a ${body}.`)
  return found
}

/** Every dimension a car is drawn from: its own where it has been measured, else what is usual for its body. */
export function dimensionsOf(body: BodyStyle, own: OwnDimensions): BodyDimensions {
  const drawn = dimensionList(body).dimensions.map(({ name, usual }) => [name, own[name] ?? usual])
  return Object.fromEntries(drawn) as BodyDimensions
}
