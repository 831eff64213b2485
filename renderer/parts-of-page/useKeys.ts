import { useLayoutEffect, useRef } from 'react'
import { addScope, type KeyBinding } from './key-registry.ts'

/**
 * Registers the keys of a place, a section or an open sheet while it is on screen.
 * Later scopes win over earlier ones; `covers` keeps plain keys from reaching scopes below.
 * Registered before the page is painted: a key pressed the moment the sheet is seen must not go unheard.
 */
export function useKeys(name: string, bindings: readonly KeyBinding[], covers = false): void {
  const latest = useRef(bindings)
  useLayoutEffect(() => {
    latest.current = bindings
  })
  useLayoutEffect(() => addScope({ name, covers, bindings: () => latest.current }), [name, covers])
}
