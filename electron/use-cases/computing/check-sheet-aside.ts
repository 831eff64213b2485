import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import type { SheetCheck, SheetDraft } from '../../../shared-types/sheet-desk.ts'
import { AsideThread } from './aside-thread.ts'

/** A draft to be checked, and the other sheets at hand. */
export interface SheetCheckAsked {
  readonly draft: SheetDraft
  readonly known: readonly ReferenceSheet[]
}

const LONGEST_MS = 30_000

const thread = new AsideThread<SheetCheckAsked>(
  'sheet-check-worker.mjs',
  LONGEST_MS,
  `Checking took longer than ${LONGEST_MS / 1000} seconds and was given up. Divide the sheet, or make its rules simpler.`,
)

/** Checks a draft in a thread of its own, so that writing goes on the while. */
export const checkSheetAside = (asked: SheetCheckAsked): Promise<SheetCheck> => thread.ask(asked) as Promise<SheetCheck>
