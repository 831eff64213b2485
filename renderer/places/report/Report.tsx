import { PlacePage } from '../../parts-of-page/PlacePage.tsx'

/** Replaced by the place itself. */
export function Report() {
  return <PlacePage name="Report">{null}</PlacePage>
}
