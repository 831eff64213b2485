import { capital } from '../../../shared-types/capital.ts'
import type { PanelDefinition, PanelState } from '../../../shared-types/panel.ts'
import type { Composer } from '../layout/composer.ts'
import type { Rich } from '../layout/line-breaking.ts'
import { styles } from '../layout/text-style.ts'
import { place } from '../wording/references.ts'
import { panelStateWords } from '../wording/sentences.ts'

export interface PanelWithout {
  readonly panel: PanelDefinition
  readonly state: PanelState
}

const NAME_MM = 56

/** What was done on a panel without findings: looked at and said to be clear of them, or looked at and not said so. */
export const withoutWords = (state: PanelState | undefined): string =>
  state?.nothingFound === true ? 'Inspected, nothing found.' : 'Inspected; no finding is recorded.'

/** What else was seen of a panel. */
export const seenWords = ({ backSeen, magnetVoid }: PanelState): readonly string[] => [
  ...(backSeen ? ['back seen'] : []),
  ...(magnetVoid ? ['magnet void'] : []),
]

/** Panels that follow one another in the walk without a finding, one beneath the other: what each is, and what was noted. */
export function composePanelsWithout(composer: Composer, panels: readonly PanelWithout[]): void {
  const [first, last] = [panels[0], panels.at(-1)]
  if (first === undefined || last === undefined) return
  const title = `${first.panel.stop} to ${last.panel.stop}`
  composer.block({ title, note: 'without a finding' }, (owner) =>
    panels.flatMap(({ panel, state }) => {
      const name: Rich = [
        composer.linked(`${panel.stop}`, styles.cellReference, place.planRow(panel.id)),
        { text: `  ${composer.panelName(panel.id)}`, style: styles.cellStrong },
      ]
      const about = [panelStateWords(state), ...seenWords(state)].join('; ')
      const words: Rich = [
        { text: `${withoutWords(state)} `, style: styles.text },
        { text: `${capital(about)}.`, style: styles.soft },
        ...(state.note === '' ? [] : [{ text: ` ${state.note}`, style: styles.text }]),
      ]
      const lines = composer.anchored(place.panel(panel.id), composer.labelled(owner, name, words, NAME_MM))
      return lines.map((line, index) => ({ ...line, keep: index < lines.length - 1 }))
    }),
  )
}
