/** One key or key sequence of a scope. Written `M`, `[`, `ArrowDown`, `Alt+1`, `Ctrl+Z`, `L 1`. */
export interface KeyBinding {
  readonly keys: string
  /** What it does, as the list of keys prints it. */
  readonly does: string
  readonly run: () => void
  /** Also works while the caret is in a text field. */
  readonly whileTyping?: boolean
  /** Left out of the list of keys, where another line already tells it. */
  readonly unlisted?: boolean
  /** Done once for each press: while the key is held down and repeats, it does nothing. */
  readonly once?: boolean
}

/** Keys that belong together, such as those of a place or of an open sheet. */
export interface KeyScope {
  readonly name: string
  /** While it stands, plain keys of scopes below it do not work; keys with Alt or Ctrl still do. */
  readonly covers: boolean
  readonly bindings: () => readonly KeyBinding[]
}

let scopes: readonly KeyScope[] = []
const hearers = new Set<() => void>()
let begun: string | null = null

function tellHearers(): void {
  for (const hear of hearers) hear()
}

/** Adds a scope above the others; the answer takes it away again. */
export function addScope(scope: KeyScope): () => void {
  if (scopes.length === 0) {
    window.addEventListener('keydown', hearModified, true)
    window.addEventListener('keydown', hearKey)
  }
  scopes = [...scopes, scope]
  tellHearers()
  return () => {
    scopes = scopes.filter((standing) => standing !== scope)
    if (scopes.length === 0) {
      window.removeEventListener('keydown', hearModified, true)
      window.removeEventListener('keydown', hearKey)
    }
    tellHearers()
  }
}

/** For `useSyncExternalStore`: the scopes that stand now, lowest first. */
export const keyScopes = {
  subscribe(hear: () => void): () => void {
    hearers.add(hear)
    return () => hearers.delete(hear)
  },
  now: (): readonly KeyScope[] => scopes,
}

/** Name of the pressed key in the form the bindings use, or null for a modifier alone. */
export function pressedKey(event: KeyboardEvent): string | null {
  if (['Shift', 'Control', 'Alt', 'Meta', 'AltGraph', 'Dead', 'Process'].includes(event.key)) return null
  const figure = /^(?:Digit|Numpad)(\d)$/.exec(event.code)?.[1]
  const key = event.altKey && figure !== undefined ? figure : event.key === ' ' ? 'Space' : event.key
  const name = key.length === 1 ? key.toUpperCase() : key
  const held = [
    event.ctrlKey || event.metaKey ? 'Ctrl' : '',
    event.altKey ? 'Alt' : '',
    event.shiftKey && (key.length > 1 || /[a-z]/i.test(key)) ? 'Shift' : '',
  ].filter((word) => word !== '')
  return [...held, name].join('+')
}

/** True where typed letters are text. */
export function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false
  if (target instanceof HTMLInputElement) return !['radio', 'checkbox', 'button', 'file'].includes(target.type)
  return target instanceof HTMLTextAreaElement || target.isContentEditable
}

function bindingFor(keys: string, typing: boolean): { binding: KeyBinding | null; begins: boolean } {
  const modified = keys.includes('Ctrl+') || keys.includes('Alt+')
  let begins = false
  for (const scope of [...scopes].reverse()) {
    for (const binding of scope.bindings()) {
      if (typing && binding.whileTyping !== true) continue
      if (binding.keys === keys) return { binding, begins }
      if (binding.keys.startsWith(`${keys} `)) begins = true
    }
    if (begins || (scope.covers && !modified)) break
  }
  return { binding: null, begins }
}

function hearKey(event: KeyboardEvent): void {
  if (event.defaultPrevented || event.isComposing) return
  const pressed = pressedKey(event)
  if (pressed === null) return
  const sequence = begun === null ? pressed : `${begun} ${pressed}`
  begun = null
  const { binding, begins } = bindingFor(sequence, isTyping(event.target))
  if (begins) {
    begun = sequence
    event.preventDefault()
  } else if (binding !== null) {
    event.preventDefault()
    if (event.repeat && binding.once === true) return
    binding.run()
  }
}

/** Keys held with Ctrl or Alt are heard before the control that has the focus, which would press itself on Ctrl Enter. */
function hearModified(event: KeyboardEvent): void {
  if (!event.ctrlKey && !event.altKey && !event.metaKey) return
  hearKey(event)
  if (event.defaultPrevented) event.stopPropagation()
}
