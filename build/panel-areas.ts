import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { developedPanelAreasM2 } from '../electron/figures/panel-areas.ts'
import { bodyStyle } from '../shared-types/words.ts'

/** Writes `resources/lists/panel-areas.json` under the top folder of the project. */
export function writePanelAreas(top: string): void {
  const areasM2 = Object.fromEntries(bodyStyle.options.map((body) => [body, developedPanelAreasM2(body)]))
  const list = {
    title:
      'Developed outer area of panels at the usual dimensions of each body, square metres; made from the drawings.',
    areasM2,
  }
  writeFileSync(join(top, 'resources', 'lists', 'panel-areas.json'), `${JSON.stringify(list, null, 1)}\n`)
}
