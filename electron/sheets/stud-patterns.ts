import { z } from 'zod'
import { once, readList } from './list-file.ts'

const patternFile = z.strictObject({
  about: z.string(),
  patterns: z
    .array(
      z.strictObject({
        label: z.string().min(1),
        studs: z.number().int().min(3).max(20),
        diameterMm: z.number().positive(),
        source: z.string().min(1),
      }),
    )
    .min(1),
})

/** Stud patterns met on cars, with where each is from; common practice, of no one car. */
export const studPatterns = once(() => readList('stud-patterns.json', patternFile).patterns)
