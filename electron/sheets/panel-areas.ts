import { z } from 'zod'
import { type PanelId, panelId } from '../../shared-types/panel.ts'
import { type BodyStyle, bodyStyle } from '../../shared-types/words.ts'
import { once, readList } from './list-file.ts'

const areaFile = z.strictObject({
  title: z.string(),
  areasM2: z.record(bodyStyle, z.record(panelId, z.number().positive())),
})

const read = once(() => readList('panel-areas.json', areaFile).areasM2)

/**
 * Developed outer area of a panel in square metres at the usual dimensions of its body; null where no drawing is true
 * to its area, and the middle of the plausible range has to serve.
 */
export function panelAreaM2(body: BodyStyle, id: PanelId): number | null {
  const areas = read()[body]
  return areas[id] ?? areas[id.replace(/\.R$/, '.L')] ?? null
}
