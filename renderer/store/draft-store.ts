import { create } from 'zustand'

const STORED = 'witnessmark.drafts'

function storedDrafts(): Readonly<Record<string, unknown>> {
  try {
    return JSON.parse(sessionStorage.getItem(STORED) ?? '{}') as Record<string, unknown>
  } catch {
    return {}
  }
}

/** Entries begun and not yet kept, by the name of the entry. They outlive leaving a sheet, a place, and a reload. */
export const useDraftStore = create<{ readonly drafts: Readonly<Record<string, unknown>> }>()(() => ({
  drafts: storedDrafts(),
}))

/** Remembers an entry as typed so far. */
export function rememberDraft(name: string, draft: unknown): void {
  useDraftStore.setState((state) => ({ drafts: { ...state.drafts, [name]: draft } }))
}

/** Forgets an entry once it is kept or thrown away on purpose. */
export function forgetDraft(name: string): void {
  useDraftStore.setState((state) => {
    const { [name]: _kept, ...drafts } = state.drafts
    return { drafts }
  })
}

window.addEventListener('pagehide', () => {
  sessionStorage.setItem(STORED, JSON.stringify(useDraftStore.getState().drafts))
})
