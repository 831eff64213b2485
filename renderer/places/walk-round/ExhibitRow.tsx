import type { Exhibit } from '../../../shared-types/exhibit.ts'
import { heldTogether } from '../../parts-of-page/held-together.ts'
import { door } from '../../store/door.ts'

/** Exhibits of the panel in hand: thumbnails in one row, their numbers and captions below. */
export function ExhibitRow({ exhibits }: { readonly exhibits: readonly Exhibit[] }) {
  if (exhibits.length === 0) {
    return <p className="note none-yet">none; drop photographs on the panel, or paste them</p>
  }
  return (
    <ul className="exhibit-row">
      {exhibits.map((exhibit) => (
        <li key={exhibit.number}>
          {exhibit.photograph === null ? (
            <span className="exhibit-kind">{exhibit.kind}</span>
          ) : (
            <img src={door().address(`exhibit/${exhibit.number}/thumbnail`)} alt={exhibit.caption} loading="lazy" />
          )}
          <p>
            <span className="figures strong">{`E\u202f${exhibit.number}`}</span> {heldTogether(exhibit.caption)}
          </p>
        </li>
      ))}
    </ul>
  )
}
