import { useSyncExternalStore } from 'react'

/** Room for a drawing in the right-hand sheet, px: the sheet is narrower below 1200 px, as in the style sheets. */
const WIDE_PX = 284
const NARROW_PX = 255
const narrow = () => window.matchMedia('(max-width: 1199px)')

function follow(changed: () => void): () => void {
  const query = narrow()
  query.addEventListener('change', changed)
  return () => query.removeEventListener('change', changed)
}

/** Width of a drawing that fills the right-hand sheet, px; follows the window. */
export function useSheetWidth(): number {
  return useSyncExternalStore(follow, () => (narrow().matches ? NARROW_PX : WIDE_PX))
}
