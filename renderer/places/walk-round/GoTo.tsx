import { useState } from 'react'
import { type PanelDefinition, panelName } from '../../../shared-types/panel.ts'
import { type NameChoice, walkLayerWords } from '../../../shared-types/words.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { leaveEntry } from './walk-store.ts'
import { panelsTyped } from './walking.ts'

interface GoToProps {
  readonly panels: readonly PanelDefinition[]
  readonly names: NameChoice
  readonly onGo: (panelId: string) => void
}

/** Goes to a panel by its number or its name; Enter takes the first that answers. */
export function GoTo({ panels, names, onGo }: GoToProps) {
  const [typed, setTyped] = useState('')
  const found = panelsTyped(panels, names, typed)
  const first = found[0]
  const go = (panelId: string) => {
    onGo(panelId)
    leaveEntry()
  }
  useKeys(
    'Go to a panel',
    [
      { keys: 'Enter', does: 'go to the first', run: () => first !== undefined && go(first.id), whileTyping: true },
      { keys: 'Escape', does: 'leave', run: leaveEntry, whileTyping: true },
    ],
    true,
  )
  return (
    <section className="edit-sheet" aria-label="Go to a panel">
      <div className="sheet-over">
        <span>{found.length === 1 ? 'one panel answers' : `${found.length} panels answer`}</span>
        <ActionKey keys="Escape" label="leave" onAct={leaveEntry} />
      </div>
      <h2 className="sheet-title">Go to a panel</h2>
      <TextField label="Number or name" value={typed} onChange={setTyped} autoFocus />
      <ul className="go-to-list">
        {found.slice(0, 40).map((panel, index) => (
          <li key={panel.id}>
            <button type="button" className="go-to-row" onClick={() => go(panel.id)}>
              <span className="figures">{panel.stop}</span>
              <span className={index === 0 ? 'strong' : undefined}>{panelName(panel, names)}</span>
              <span className="quiet">{panel.walked ? walkLayerWords[panel.layer] : 'beyond this inspection'}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
