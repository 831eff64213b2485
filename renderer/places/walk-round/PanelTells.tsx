import { memo } from 'react'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useShownUnits } from '../../store/shown-units.ts'
import { saidWords } from '../identity/said-words.ts'
import { enter, useWalkStore } from './walk-store.ts'

/** Tells of the record's sheets that are looked for on the panel in hand: a line each, answered without leaving the walk. */
export const PanelTells = memo(function PanelTells({ panelId }: { readonly panelId: string }) {
  const units = useShownUnits()
  const known = useWalkStore((state) => state.tells)
  const tells = known.filter(({ panels }) => panels.includes(panelId))
  if (tells.length === 0) return null
  return (
    <Section head="Tells to look at here">
      {tells.map((tell, at) => {
        const said = saidWords(tell, units)
        return (
          <p key={tell.key} className="panel-tell">
            <span>
              {tell.name}
              <span className="quiet"> {said === '' ? 'not looked at' : said}</span>
            </span>
            <ActionKey
              keys={at < 9 ? `I ${at + 1}` : ''}
              label={at < 9 ? '' : 'answer'}
              name={`Answer: ${tell.name}`}
              onAct={() => enter({ kind: 'tell', tell: tell.key })}
            />
          </p>
        )
      })}
    </Section>
  )
})
