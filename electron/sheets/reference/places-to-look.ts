import { z } from 'zod'
import { once, readList } from '../list-file.ts'

/** Of the list of panels only the names: drawing and measuring them is no business of a sheet. */
const namesOfPanels = z.object({ panels: z.array(z.object({ id: z.string(), sided: z.boolean() })) })

const everyPanel = once(() => {
  const { panels } = readList('panels.json', namesOfPanels)
  return new Set(panels.flatMap(({ id, sided }) => (sided ? [`${id}.L`, `${id}.R`] : [id])))
})

/** Whether the panel, named with its side, is one of any body's. */
export const isPanelKnown = (id: string): boolean => everyPanel().has(id)
/** Every panel there is, for finding the one that was meant. */
export const panelsKnown = (): Iterable<string> => everyPanel()
