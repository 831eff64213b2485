import type { DateConflict } from '../../../../shared-types/time-line-view.ts'
import { Section } from '../../../parts-of-page/Section.tsx'
import { Chain } from '../../judgement/Chain.tsx'

/** A conflict as one short argument: what cannot all be, with sources; what else says the same; the ways out. */
export function ConflictArgument({ conflict }: { readonly conflict: DateConflict }) {
  const { number, title, cannotAllBe, by, alsoAgainst, travelWithIt, waysOut } = conflict
  return (
    <div className="date-conflict">
      <Section head={`Conflict ${number}`} beside="these cannot all be so">
        <p className="strong">
          {title}
          {by === null ? '' : `: ${by} or more apart`}
        </p>
        <Chain because={cannotAllBe} />
        {travelWithIt.length === 0 ? null : (
          <p className="note">{`${travelWithIt.join(', ')}: such parts travel together, so this is no further witness.`}</p>
        )}
        {alsoAgainst.length === 0 ? null : (
          <details className="also-against">
            <summary>{`The same follows from each of ${alsoAgainst.length} more grounds in place of the last`}</summary>
            <Chain because={alsoAgainst} />
          </details>
        )}
        <p className="caps quiet">ways out</p>
        <ul className="ways-out">
          {waysOut.map((way) => (
            <li key={way}>{way}</li>
          ))}
        </ul>
      </Section>
    </div>
  )
}
