import { create } from 'zustand'
import { useRecordStore } from './record-store.ts'

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

/** Under what name an entry of a record is remembered: what was typed about one car must never appear for another. */
const nameWithin = (recordPath: string | undefined, name: string): string =>
  recordPath === undefined ? name : `${recordPath} ${name}`

/** The name of an entry of the open record, as it is remembered now. */
export const nameInRecord = (name: string): string => nameWithin(useRecordStore.getState().record?.path, name)

/** As `nameInRecord`, for what is drawn: another record, another name. */
export function useNameInRecord(name: string): string {
  return nameWithin(
    useRecordStore((state) => state.record?.path),
    name,
  )
}

/** How many entries of the open record were begun and not kept; what is only tried is none. */
export function useEntriesBegun(): number {
  const own = useNameInRecord('')
  return useDraftStore(
    ({ drafts }) =>
      Object.keys(drafts).filter((name) => name.startsWith(own) && !name.startsWith(`${own}tried `)).length,
  )
}

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
