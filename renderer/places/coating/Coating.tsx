import { PlacePage } from '../../parts-of-page/PlacePage.tsx'

/** Replaced by the place itself. */
export function Coating() {
  return <PlacePage name="Coating">{null}</PlacePage>
}
