import { PlacePage } from '../../parts-of-page/PlacePage.tsx'

/** Replaced by the place itself. */
export function Identity() {
  return <PlacePage name="Identity">{null}</PlacePage>
}
