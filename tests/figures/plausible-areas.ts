import { readFileSync } from 'node:fs'
import { resourcePath } from '../../electron/places-on-disk.ts'
import type { BodyStyle } from '../../shared-types/words.ts'

interface Entry {
  readonly id: string
  readonly areaM2: Partial<Readonly<Record<BodyStyle, readonly [number, number]>>>
}
const list = JSON.parse(readFileSync(resourcePath('lists', 'panels.json'), 'utf8')) as { panels: Entry[] }

/** Plausible developed areas of a body's panels, m², from the panel list of the program's resources. */
export const plausibleAreas = (body: BodyStyle): Readonly<Record<string, readonly [number, number]>> =>
  Object.fromEntries(
    list.panels.flatMap(({ id, areaM2 }) => {
      const range = areaM2[body]
      return range ? [[id, range] as const] : []
    }),
  )
