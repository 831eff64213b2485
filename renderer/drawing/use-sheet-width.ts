import { useSyncExternalStore } from 'react'
import { sheetTypeFactor, windowWidths } from '../../shared-types/tokens.ts'
import { useScreenStore } from '../store/screen-store.ts'

/** What the sheet keeps free at both sides of what stands in it, px. */
const SIDES_PX = 44
const narrow = window.matchMedia(`(max-width: ${windowWidths.narrow.below - 1}px)`)
const wide = window.matchMedia(`(min-width: ${windowWidths.usual.below}px)`)

function follow(changed: () => void): () => void {
  for (const query of [narrow, wide]) query.addEventListener('change', changed)
  return () => {
    for (const query of [narrow, wide]) query.removeEventListener('change', changed)
  }
}

const windowNow = () => (narrow.matches ? windowWidths.narrow : wide.matches ? windowWidths.wide : windowWidths.usual)

/** Width of a drawing that fills the right-hand sheet, px; follows the window. */
export const useSheetWidth = (): number => useSyncExternalStore(follow, windowNow).sheet - SIDES_PX

/** Times their usual size at which letters are set on the sheet and the window in use. */
export function useLetterScale(): number {
  const sheetName = useScreenStore((state) => state.sheetName)
  return useSyncExternalStore(follow, windowNow).type * sheetTypeFactor[sheetName]
}
