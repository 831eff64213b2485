import { heldTogether } from '../../parts-of-page/held-together.ts'

/** One line of what was computed, said in words: what it is about, and the words. */
export function Said({ head, children }: { readonly head: string; readonly children: string }) {
  return (
    <div className="map-said">
      <dt>{head}</dt>
      <dd>{heldTogether(children)}</dd>
    </div>
  )
}
