import { PlacePage } from '../../parts-of-page/PlacePage.tsx'

/** Replaced by the place itself. */
export function Records() {
  return <PlacePage name="Records">{null}</PlacePage>
}
