import { z } from 'zod'
import type { Caution } from '../../shared-types/caution.ts'
import { once, readList } from './list-file.ts'

const hazardousStep = z.enum([
  'going under the car',
  'opening a drum or clutch',
  'sanding or cutting',
  'near fuel',
  'at the battery',
  'spraying or flatting two-pack paint',
  'handling torn steel',
  'handling glass',
  'opening a lid or door',
  'at a loaded spring',
  'cavities and droppings',
  'luminous dials',
  'charged restraints',
])

const cautionFile = z.strictObject({
  title: z.string(),
  cautions: z.array(
    z.strictObject({
      id: z.string().regex(/^[a-z]+(-[a-z]+)*$/),
      text: z.string().min(1).max(300),
      source: z.string().min(1),
      raisedBy: z.array(hazardousStep).min(1),
    }),
  ),
})

const read = once(() => readList('cautions.json', cautionFile).cautions)

/** Every caution, in the order of the list. */
export function cautions(): readonly Caution[] {
  return read()
}

/** Cautions by id, in the order asked; an id the list does not hold is a damaged list and throws. */
export function cautionsNamed(ids: readonly string[]): readonly Caution[] {
  return ids.map((id) => {
    const found = read().find((caution) => caution.id === id)
    if (found === undefined) throw new Error(`No caution is called ${id}.`)
    return found
  })
}
