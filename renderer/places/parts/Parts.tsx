import { PlacePage } from '../../parts-of-page/PlacePage.tsx'

/** Replaced by the place itself. */
export function Parts() {
  return <PlacePage name="Parts">{null}</PlacePage>
}
