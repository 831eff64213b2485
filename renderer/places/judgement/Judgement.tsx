import { PlacePage } from '../../parts-of-page/PlacePage.tsx'

/** Replaced by the place itself. */
export function Judgement() {
  return <PlacePage name="Judgement">{null}</PlacePage>
}
