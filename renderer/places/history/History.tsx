import { PlacePage } from '../../parts-of-page/PlacePage.tsx'

/** Replaced by the place itself. */
export function History() {
  return <PlacePage name="History">{null}</PlacePage>
}
