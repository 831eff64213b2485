import { PlacePage } from '../../parts-of-page/PlacePage.tsx'

/** Replaced by the place itself. */
export function WalkRound() {
  return <PlacePage name="WalkRound">{null}</PlacePage>
}
