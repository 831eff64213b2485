import type { TellView } from '../../../shared-types/identity-view.ts'
import { type PanelDefinition, panelName } from '../../../shared-types/panel.ts'
import type { NameChoice } from '../../../shared-types/words.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { change } from '../../store/ask.ts'
import { TellAnswer } from '../identity/TellAnswer.tsx'
import { act } from './act.ts'
import { leaveEntry } from './walk-store.ts'

interface TellEntryProps {
  readonly tell: TellView
  readonly panel: PanelDefinition
  readonly names: NameChoice
}

/** A tell answered on the walk; what the car can still be follows in Identity. */
export function TellEntry({ tell, panel, names }: TellEntryProps) {
  useKeys('Tell', [{ keys: 'Escape', does: 'leave', run: leaveEntry, whileTyping: true }], true)
  return (
    <section className="edit-sheet" aria-label={tell.name}>
      <div className="sheet-over">
        <span>
          {panel.stop}, {panelName(panel, names)}
        </span>
        <ActionKey keys="Escape" label="leave" onAct={leaveEntry} />
      </div>
      <h2 className="sheet-title">{tell.name}</h2>
      <TellAnswer
        key={tell.key}
        tell={tell}
        panelNames=""
        trying={false}
        cameByItself={false}
        focused={1}
        onSay={async (observation) => {
          await change('observation.set', { observation })
          leaveEntry()
        }}
        onTakeBack={
          tell.observation === null
            ? null
            : () => {
                act('observation.withdraw', { tell: tell.key })
                leaveEntry()
              }
        }
        onLeave={leaveEntry}
      />
    </section>
  )
}
