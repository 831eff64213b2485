import { PlacePage } from '../../parts-of-page/PlacePage.tsx'

/** Replaced by the place itself. */
export function Measuring() {
  return <PlacePage name="Measuring">{null}</PlacePage>
}
