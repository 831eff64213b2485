import { z } from 'zod'
import { type PartDefinition, partId } from '../../shared-types/part.ts'
import { type BodyStyle, bodyStyle } from '../../shared-types/words.ts'
import { cautionsNamed } from './cautions.ts'
import { once, readList } from './list-file.ts'

const partFile = z.strictObject({
  title: z.string(),
  sourceStatus: z.string(),
  countingNote: z.string(),
  dateNote: z.string(),
  travelNote: z.string(),
  groups: z.record(z.string(), z.string()),
  parts: z.array(
    z.strictObject({
      id: partId,
      group: z.string(),
      us: z.string().min(1),
      uk: z.string().min(1),
      identifyBy: z.array(z.string()),
      check: z.string(),
      cautions: z.array(z.string()),
      travelsWith: z.string().nullable(),
      replacedInService: z.enum(['routine', 'often', 'seldom', 'not-a-part']),
      carried: z.enum(['every car', 'some cars']),
      bodies: z.array(bodyStyle).nullable(),
      dateKind: z.enum(['cast', 'stamp', 'label', 'mould', 'print', 'etch', 'plate', 'none']),
      typicalLeadDays: z.tuple([z.number(), z.number()]).nullable(),
    }),
  ),
})

const read = once(() => {
  const file = readList('parts.json', partFile)
  const definitions: PartDefinition[] = file.parts.map(({ dateKind: _, typicalLeadDays: __, ...part }) => ({
    ...part,
    cautions: cautionsNamed(part.cautions),
  }))
  return {
    groups: file.groups,
    definitions,
    byId: new Map(definitions.map((part) => [part.id, part])),
    leads: new Map(file.parts.map(({ id, typicalLeadDays }) => [id, typicalLeadDays])),
  }
})

/** Every part of the list. Ids carry no side or number: an entry adds `.L`, `.R` or `.3` where a car carries several. */
export function partsList(): readonly PartDefinition[] {
  return read().definitions
}

/** The definition behind an entry's id, side or number left off; undefined when the list does not hold it. */
export function partDefinition(id: string): PartDefinition | undefined {
  return read().byId.get(id.replace(/\.([LR]|[1-9][0-9]?)$/, ''))
}

/** Names of the sets of parts that travel together. */
export function travelSetNames(): readonly string[] {
  return [...new Set(read().definitions.flatMap(({ travelsWith }) => travelsWith ?? []))].sort()
}

/**
 * Days from the date on a part to the building of its car, least and most usually met: recalled, wide on purpose. Null
 * where such a part does not date the car.
 */
export function typicalLeadDays(id: string): readonly [number, number] | null {
  return read().leads.get(partDefinition(id)?.id ?? '') ?? null
}

/** Names of the groups of parts as printed: `axle` is "Rear axle". */
export function partGroups(): Readonly<Record<string, string>> {
  return read().groups
}

/** Parts a car of this body carries before anything is entered: documents and what only some cars have left out. */
export function partsOfEveryCar(body: BodyStyle): readonly PartDefinition[] {
  return read().definitions.filter(
    (part) =>
      part.carried === 'every car' &&
      part.replacedInService !== 'not-a-part' &&
      (part.bodies === null || part.bodies.includes(body)),
  )
}
