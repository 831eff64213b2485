import type { SheetDraft } from '../../../../shared-types/sheet-desk.ts'

/** A draft with every one before it and every one taken back. */
export interface DraftHistory {
  readonly now: SheetDraft
  readonly past: readonly SheetDraft[]
  readonly future: readonly SheetDraft[]
  /** What the last edit was about; one of the same goes on with it. */
  readonly about: string | null
}

/** Steps that can be taken back. */
const MOST_STEPS = 500

export const begunWith = (draft: SheetDraft): DraftHistory => ({ now: draft, past: [], future: [], about: null })

/** One edit more. Letters typed into one cell are one edit: `about` names the cell, null never goes on with the one before. */
export function edited(history: DraftHistory, draft: SheetDraft, about: string | null): DraftHistory {
  if (draft === history.now) return history
  const goesOn = about !== null && about === history.about
  const past = goesOn ? history.past : [...history.past, history.now].slice(-MOST_STEPS)
  return { now: draft, past, future: [], about }
}

/** Ends what was being typed: the next letter is an edit of its own. */
export const ended = (history: DraftHistory): DraftHistory =>
  history.about === null ? history : { ...history, about: null }

export function undone(history: DraftHistory): DraftHistory {
  const before = history.past.at(-1)
  if (before === undefined) return history
  return { now: before, past: history.past.slice(0, -1), future: [history.now, ...history.future], about: null }
}

export function redone(history: DraftHistory): DraftHistory {
  const [next, ...future] = history.future
  if (next === undefined) return history
  return { now: next, past: [...history.past, history.now], future, about: null }
}
