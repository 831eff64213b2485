/** Plausible developed areas of the coupé's panels, m², from the panel list of the program's resources. */
import { readFileSync } from 'node:fs'
import { resourcePath } from '../../electron/places-on-disk.ts'

interface Entry {
  readonly id: string
  readonly areaM2: { readonly coupe?: readonly [number, number] }
}

const list = JSON.parse(readFileSync(resourcePath('lists', 'panels.json'), 'utf8')) as { panels: Entry[] }
export const plausibleAreas: Readonly<Record<string, readonly [number, number]>> = Object.fromEntries(
  list.panels.flatMap(({ id, areaM2 }) => (areaM2.coupe ? [[id, areaM2.coupe] as const] : [])),
)
