import { useSyncExternalStore } from 'react'
import { showKeys } from '../store/screen-store.ts'
import { ActionKey } from './ActionKey.tsx'
import { KeyCap } from './KeyCap.tsx'
import { keyScopes } from './key-registry.ts'
import { useKeys } from './useKeys.ts'

/** The keys that work now, scope by scope, taken from the registry they are heard by. */
export function KeyList() {
  const scopes = useSyncExternalStore(keyScopes.subscribe, keyScopes.now)
  useKeys('List of keys', [
    { keys: 'Escape', does: 'put the list away', run: () => showKeys(false), whileTyping: true },
  ])
  const listed = [...scopes].reverse().filter((scope) => scope.name !== 'List of keys')
  return (
    <section className="key-list" aria-label="Keys that work now">
      <div className="key-list-head">
        <h2>Keys that work now</h2>
        <ActionKey keys="Escape" label="put away" onAct={() => showKeys(false)} />
      </div>
      <div className="key-list-scopes">
        {listed.map((scope) => (
          <section key={scope.name} aria-label={scope.name}>
            <h3>{scope.name}</h3>
            <ul>
              {scope
                .bindings()
                .filter((binding) => binding.unlisted !== true)
                .map((binding) => (
                  <li key={binding.keys}>
                    <KeyCap keys={binding.keys} />
                    <span>{binding.does}</span>
                    <span className="unseen">: {binding.keys}</span>
                  </li>
                ))}
            </ul>
          </section>
        ))}
      </div>
    </section>
  )
}
