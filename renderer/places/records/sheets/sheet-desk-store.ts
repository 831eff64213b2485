import { create } from 'zustand'
import type { Problem } from '../../../../shared-types/problem.ts'
import type { SheetDraft } from '../../../../shared-types/sheet-desk.ts'
import { ask, problemOf } from '../../../store/ask.ts'
import { forgetDraft, rememberDraft, useDraftStore } from '../../../store/draft-store.ts'
import { begunWith, type DraftHistory, edited, ended, redone, undone } from './draft-history.ts'

/** The sheet that is open on the desk; it stays open, with its undo, while one looks at other places. */
export interface OpenSheet {
  readonly name: string
  readonly path: string
  readonly byHand: boolean
  readonly history: DraftHistory
  /** As last kept; named when the next draft is kept. */
  readonly basis: string
  readonly kept: SheetDraft
  readonly keptAt: string | null
}

interface DeskState {
  readonly shown: boolean
  readonly open: OpenSheet | null
  readonly problem: Problem | null
  readonly keeping: boolean
}

/** Desk on which reference sheets are written. */
export const useSheetDesk = create<DeskState>()(() => ({ shown: false, open: null, problem: null, keeping: false }))

/** A draft the page remembers until it is kept, with what it was written on. */
interface RememberedDraft {
  readonly draft: SheetDraft
  readonly basis: string
}
const memoryOf = (name: string): string => `sheet ${name}`

export function showDesk(shown: boolean): void {
  useSheetDesk.setState({ shown, problem: null })
}

/** Opens a sheet; a draft that a closed page had not kept yet is taken up again. */
export async function openSheet(name: string): Promise<void> {
  try {
    const { draft, basis, path, byHand } = await ask('sheets.read', { name })
    const remembered = useDraftStore.getState().drafts[memoryOf(name)] as RememberedDraft | undefined
    const begun = begunWith(draft)
    const history = remembered === undefined ? begun : edited(begun, remembered.draft, null)
    const from = remembered?.basis ?? basis
    useSheetDesk.setState({
      open: { name, path, byHand, history, basis: from, kept: draft, keptAt: null },
      problem: null,
    })
    if (remembered !== undefined) keepSoon()
  } catch (thrown) {
    useSheetDesk.setState({ problem: problemOf(thrown) })
  }
}

/** Keeps what is not kept yet, then puts the sheet off the desk. */
export async function closeSheet(): Promise<void> {
  await keepNow()
  if (useSheetDesk.getState().problem === null) useSheetDesk.setState({ open: null })
}

function change(turn: (history: DraftHistory) => DraftHistory): void {
  const { open } = useSheetDesk.getState()
  if (open === null) return
  const history = turn(open.history)
  if (history === open.history) return
  useSheetDesk.setState({ open: { ...open, history } })
  if (history.now === open.history.now) return
  rememberDraft(memoryOf(open.name), { draft: history.now, basis: open.basis } satisfies RememberedDraft)
  keepSoon()
}

/** One edit of the open sheet; `about` as in `edited`. */
export const editSheet = (draft: SheetDraft, about: string | null): void =>
  change((history) => edited(history, draft, about))
export const endEdit = (): void => change(ended)
export const undoEdit = (): void => change(undone)
export const redoEdit = (): void => change(redone)

const KEEP_AFTER_MS = 500
let soon: ReturnType<typeof setTimeout> | null = null
let running: Promise<void> = Promise.resolve()

function keepSoon(): void {
  if (soon !== null) clearTimeout(soon)
  soon = setTimeout(() => void keepNow(), KEEP_AFTER_MS)
}

/** Keeps the draft as it stands; one after another, so that each names the one before as its basis. */
export function keepNow(): Promise<void> {
  if (soon !== null) clearTimeout(soon)
  soon = null
  running = running.then(keep)
  return running
}

async function keep(): Promise<void> {
  const { open } = useSheetDesk.getState()
  if (open === null || open.history.now === open.kept) return
  const draft = open.history.now
  useSheetDesk.setState({ keeping: true })
  try {
    const { basis, keptAt } = await ask('sheets.keep', { name: open.name, draft, basis: open.basis })
    const now = useSheetDesk.getState().open
    if (now?.name === open.name) {
      const kept = { ...now, basis, kept: draft, keptAt, byHand: now.byHand && draft.written === 'as text' }
      useSheetDesk.setState({ open: kept, problem: null })
      if (now.history.now === draft) forgetDraft(memoryOf(open.name))
      else rememberDraft(memoryOf(open.name), { draft: now.history.now, basis } satisfies RememberedDraft)
    } else forgetDraft(memoryOf(open.name))
  } catch (thrown) {
    useSheetDesk.setState({ problem: problemOf(thrown) })
  } finally {
    useSheetDesk.setState({ keeping: false })
  }
}
