import { PlacePage } from '../../parts-of-page/PlacePage.tsx'

/** Replaced by the place itself. */
export function PuttingRight() {
  return <PlacePage name="PuttingRight">{null}</PlacePage>
}
