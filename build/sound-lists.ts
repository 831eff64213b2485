import { describedBody } from '../electron/figures/body-shape/body-description.ts'
import { fixedTexts, glossary } from '../electron/report/wording/fixed-texts.ts'
import { cautions } from '../electron/sheets/cautions.ts'
import { classRanges } from '../electron/sheets/coating-lists.ts'
import { dimensionList } from '../electron/sheets/dimension-list.ts'
import { jointList } from '../electron/sheets/joint-list.ts'
import { listsFoundSound } from '../electron/sheets/list-file.ts'
import { panelAreaM2 } from '../electron/sheets/panel-areas.ts'
import { panelConditions } from '../electron/sheets/panel-list.ts'
import { partsList } from '../electron/sheets/parts-list.ts'
import { panelsKnown } from '../electron/sheets/reference/places-to-look.ts'
import { studPatterns } from '../electron/sheets/stud-patterns.ts'
import { bodyStyle } from '../shared-types/words.ts'

/**
 * Reads every list the program starts with and checks it against each schema it is read by; answers their SHA-256 by
 * folder and name. Throws when one is damaged.
 */
export function soundLists(): Readonly<Record<string, string>> {
  const readers = [cautions, classRanges, partsList, panelConditions, panelsKnown, studPatterns, fixedTexts, glossary]
  for (const read of readers) read()
  for (const body of bodyStyle.options) {
    describedBody(body)
    dimensionList(body)
    jointList(body)
  }
  panelAreaM2('coupe', 'front-lid')
  return listsFoundSound()
}
